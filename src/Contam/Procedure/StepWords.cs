using System.Collections.Immutable;

namespace Contam.Procedure;

/// <summary>A step in words.</summary>
/// <param name="Text">What the technician reads.</param>
/// <param name="Method">The number of the method that it uses, or <c>null</c>.</param>
internal sealed record StepWords(string Text, string? Method);

/// <summary>A method in words.</summary>
/// <param name="Number">M1, M2 and so on, in the order of first use.</param>
/// <param name="Title">Its name.</param>
/// <param name="Text">What is done, until when, and what would make one stop.</param>
/// <param name="Tools">Tools.</param>
/// <param name="Supplies">What is used up, by name.</param>
internal sealed record MethodWords(string Number, string Title, string Text, ImmutableArray<string> Tools, ImmutableArray<string> Supplies);
