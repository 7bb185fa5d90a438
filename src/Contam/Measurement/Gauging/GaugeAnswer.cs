using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Measurement.Gauging;

/// <summary>One figure behind a verdict.</summary>
/// <param name="Name">camelCase name, for instance <c>totalIndicatedReading</c>.</param>
/// <param name="Value">The number.</param>
/// <param name="Unit">Its unit; empty for a plain number.</param>
public sealed record GaugeFigure(string Name, double Value, string Unit)
{
    /// <summary>What a person reads instead of the name.</summary>
    public string Label { get; init; } = Name;

    /// <summary>The unit that a person reads; empty where the label says it.</summary>
    public string ShownUnit { get; init; } = Unit;

    /// <summary>What is said behind the figure; empty for nothing.</summary>
    public string Meaning { get; init; } = "";
}

/// <summary>What a limit's fluid does at a part that it reaches.</summary>
/// <param name="Part">The part.</param>
/// <param name="Meaning">What it means there, as a clause.</param>
public sealed record GaugedPart(PartId Part, string Meaning);

/// <summary>Readings held against a limit: the verdict, every figure behind it, and what to do next.</summary>
/// <param name="Limit">The limit.</param>
/// <param name="Judgement">The verdict with its reason.</param>
/// <param name="Figures">The figures, in the order in which they are told.</param>
public sealed record GaugeAnswer(Limit Limit, Judgement Judgement, ImmutableArray<GaugeFigure> Figures)
{
    /// <summary>How far inside or past the limit the reading is, as a clause; empty where that is not known.</summary>
    public string Margin { get; init; } = "";

    /// <summary>What must be said beside the verdict and what to do next, each a clause without a full stop.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>What is assumed, each a clause without a full stop.</summary>
    public ImmutableArray<string> Assumed { get; init; } = [];

    /// <summary>Whether a hold passes although water got in: then the pass proves nothing about the water.</summary>
    public bool HoldsAlthoughWaterGotIn { get; init; }

    /// <summary>The cleanliness code as it is written; <c>null</c> for other measures.</summary>
    public string? Code { get; init; }

    /// <summary>Run-out readings by rising angle; empty for other measures.</summary>
    public ImmutableArray<RunOutReading> Round { get; init; } = [];

    /// <summary>What the run-out is made of; <c>null</c> where the readings do not tell, and for other measures.</summary>
    public TurnShape? Shape { get; init; }

    /// <summary>The unit that the readings were given in; <c>null</c> for a code.</summary>
    public ReadingUnit? Unit { get; init; }

    /// <summary>What stands over <see cref="Parts"/>, as a clause; empty where there are none.</summary>
    public string PartsMean { get; init; } = "";

    /// <summary>The parts that the reading bears on, in file order.</summary>
    public ImmutableArray<GaugedPart> Parts { get; init; } = [];
}
