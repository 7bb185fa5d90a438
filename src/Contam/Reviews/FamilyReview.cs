using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Reviews;

/// <summary>Joints that stand in one line of a file and weigh the same, as those of a repeated part do.</summary>
/// <param name="Joints">The joints, in the order of the family; at least one.</param>
/// <param name="Weight">What would be missed without any single one of them.</param>
public sealed record WeighedJoints(ImmutableArray<Joint> Joints, JointWeight Weight);

/// <summary>What parts two sides until it fails.</summary>
/// <param name="Part">The part that must have failed.</param>
/// <param name="Opens">The joints that open then, in the order of the family.</param>
/// <param name="Sides">What runs in the parts that they join: each set of fluids once, in the order of the joints; circuits that name no fluid stand for one.</param>
public sealed record Wall(PartId Part, ImmutableArray<Joint> Opens, ImmutableArray<ImmutableArray<string>> Sides)
{
    /// <summary>Whether it parts fluids, and not two places of one fluid.</summary>
    public bool PartsFluids => Sides.Length > 1;
}

/// <summary>Fluids that meet in a part although nothing has failed.</summary>
/// <param name="Part">The part.</param>
/// <param name="Fluids">What runs in it, two or more.</param>
public sealed record Meeting(PartId Part, ImmutableArray<string> Fluids);

/// <summary>A figure that holds debris back.</summary>
/// <param name="Part">The part; for a passage of a joint <c>null</c>.</param>
/// <param name="Joint">The joint that has the passage; else <c>null</c>.</param>
/// <param name="Debris">The debris that it holds; <c>null</c> for a passage, which holds all that is hard.</param>
/// <param name="Above">The largest particle that still gets on; 0 where all is held.</param>
/// <param name="IsReliedOn">Whether plans rely on it.</param>
/// <param name="Place">Where it is written.</param>
/// <param name="Comment">What the file says beside it; empty for nothing.</param>
public sealed record BarrierFigure(PartId? Part, Joint? Joint, Debris? Debris, ParticleSize Above, bool IsReliedOn, SourceSpan Place, string Comment);

/// <summary>What a family does not know.</summary>
public enum DoubtKind
{
    /// <summary>A comment of the file says that something is not known.</summary>
    Comment,

    /// <summary>A part sheds debris of any size.</summary>
    AnySize,

    /// <summary>A filter or strainer that says nothing of what it holds.</summary>
    HoldsNothing,

    /// <summary>A barrier without a word on its rating.</summary>
    NoRating,

    /// <summary>A part that sheds nothing, by the file.</summary>
    ShedsNothing,
}

/// <summary>Something that is not known.</summary>
/// <param name="Kind">What sort.</param>
/// <param name="About">The part, or the comment's words.</param>
/// <param name="Place">Where.</param>
/// <param name="Debris">For <see cref="DoubtKind.AnySize"/> the debris.</param>
public sealed record Doubt(DoubtKind Kind, string About, SourceSpan Place, Debris? Debris = null);

/// <summary>What somebody else should check at the machine before a family is trusted. Everything stands in the order of the family.</summary>
/// <param name="Family">The family.</param>
public sealed record FamilyReview(Family Family)
{
    /// <summary>The joints on which most hangs, first; <c>null</c> where the family is too large to count (<see cref="JointWeights.MostWork"/>).</summary>
    public ImmutableArray<WeighedJoints>? Joints { get; init; }

    /// <summary>What parts two sides until it fails.</summary>
    public ImmutableArray<Wall> Walls { get; init; } = [];

    /// <summary>Where fluids meet although nothing has failed.</summary>
    public ImmutableArray<Meeting> Meetings { get; init; } = [];

    /// <summary>The joints that lead back: into what a fluid is kept in, or round to a part that comes earlier on the circuit's runs.</summary>
    public ImmutableArray<Joint> Returns { get; init; } = [];

    /// <summary>Circuits to which nothing leads back.</summary>
    public ImmutableArray<Circuit> WithoutReturn { get; init; } = [];

    /// <summary>Every figure that holds debris back.</summary>
    public ImmutableArray<BarrierFigure> Barriers { get; init; } = [];

    /// <summary>What is not known.</summary>
    public ImmutableArray<Doubt> Doubts { get; init; } = [];
}
