namespace Contam.Families.Reading.Sheets;

/// <summary>Modules that come with a program, so that a family may name one without having its file.</summary>
public interface IShippedFiles
{
    /// <summary>The text of the module of this name, without folder or ending; <c>null</c> where there is none.</summary>
    string? TextOf(string name);

    /// <summary>The names of all modules, in ordinal order.</summary>
    IReadOnlyList<string> Modules { get; }
}
