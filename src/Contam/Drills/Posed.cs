namespace Contam.Drills;

/// <summary>A question, or why it is left out; one of the two is <c>null</c>.</summary>
internal readonly record struct Posed(DrillQuestion? Question, LeftOutQuestion? LeftOut)
{
    public static Posed As(DrillQuestion question) => new(question, null);

    public static Posed Not(DrillKind kind, DrillSilence why) => new(null, new LeftOutQuestion(kind, why));
}
