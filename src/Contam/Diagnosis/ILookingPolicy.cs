namespace Contam.Diagnosis;

/// <summary>Chooses where to look, given what was found where.</summary>
internal interface ILookingPolicy
{
    /// <summary>The place to look at, or a negative number where looking ends.</summary>
    /// <param name="seen">For each place 0 for not looked at, 1 for found, 2 for clean.</param>
    /// <param name="shares">The shares of the classes after that.</param>
    int Choose(ReadOnlySpan<byte> seen, ReadOnlySpan<double> shares);
}
