namespace Contam.Procedure;

/// <summary>The jobs at one part; those that it does not need are <c>null</c>.</summary>
internal sealed class PartJobs
{
    public Job? Remove { get; init; }

    /// <summary>The look for debris: before it comes off, as it comes off, or where it stands; always before anything cleans it.</summary>
    public Job? Look { get; init; }

    /// <summary>Whether the look is made before the part comes off, though it may come off.</summary>
    public bool LooksFirst { get; init; }

    public Job? SendOut { get; init; }

    public Job? Clean { get; init; }

    /// <summary>Its own flush, or that of the loop it belongs to.</summary>
    public Job? Flush { get; init; }

    /// <summary>The look at the clean part: wear, pits, size.</summary>
    public Job? Condition { get; init; }

    /// <summary>The new part is on its way.</summary>
    public Job? Arrival { get; init; }

    public Job? Replace { get; init; }

    public Job? Test { get; init; }

    public Job? Refit { get; init; }

    /// <summary>The first job that works at it, looks for debris left out.</summary>
    public Job? FirstWork => SendOut ?? Clean ?? Flush ?? Replace ?? OpenTest;

    /// <summary>The test, where it is made before everything is back on.</summary>
    public Job? OpenTest => Test is { Phase: < Phase.Prove } ? Test : null;

    /// <summary>The last job at it before it goes back.</summary>
    public Job? LastTreatment => OpenTest ?? Replace ?? Condition ?? Flush ?? Clean ?? Look;

    /// <summary>The job after which it counts as clean: its last cleaning, or, where it is not cleaned, the look, or else the test that stands in for it.</summary>
    public Job? Done => Flush ?? Clean ?? Replace ?? Look ?? OpenTest;

    /// <summary>All of them in the order in which they are worked. A look before anything is opened comes first.</summary>
    public IEnumerable<Job> InOrder
    {
        get
        {
            bool looksFirst = LooksFirst || (Look is { Phase: Phase.Confirm } && Remove is not { Phase: Phase.Confirm });
            Job? fitted = OpenTest is null ? Test : null;
            return new[] { looksFirst ? Look : null, Remove, looksFirst ? null : Look, SendOut, Clean, Flush, Condition, Replace, OpenTest, Refit, fitted }.OfType<Job>();
        }
    }
}
