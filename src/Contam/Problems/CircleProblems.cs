using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of circles among parts.</summary>
internal static class CircleProblems
{
    /// <summary>None of the parts could come off first.</summary>
    public static Problem Order(SourceSpan place, ImmutableArray<CircleStep> circle, ImmutableArray<SourceSpan> others) => Wording.Error(
        ProblemCodes.AccessCircle,
        place,
        circle switch
        {
            [var only] => Itself(only),
            _ when circle.All(step => step.Tie == Tie.Access) =>
                $"these parts are in each other's way: {string.Join(" -> ", circle.Append(circle[0]).Select(step => Wording.Quoted(step.Part)))}",
            _ => $"none of these parts could come off first: {Steps(circle, WaitsFor)}",
        },
        Mend(circle),
        others);

    /// <summary>Each of the parts would be carried by what it carries.</summary>
    public static Problem Carriers(SourceSpan place, ImmutableArray<CircleStep> circle, ImmutableArray<SourceSpan> others) => Wording.Error(
        ProblemCodes.CarrierCircle,
        place,
        circle is [var only] ? Itself(only) : $"these parts carry each other: {Steps(circle, IsCarried)}",
        Mend(circle),
        others);

    private static string Itself(CircleStep step) => Wording.Quoted(step.Part) + step.Tie switch
    {
        Tie.Access => " is in its own way",
        Tie.RidesOn => " rides on itself",
        Tie.Assembly => " is inside of itself",
        _ => " stands on itself",
    };

    private static string Steps(ImmutableArray<CircleStep> circle, Func<string, string, Tie, string> say) =>
        string.Join("; ", circle.Select((step, index) => say(Wording.Quoted(step.Part), Wording.Quoted(circle[(index + 1) % circle.Length].Part), step.Tie)));

    private static string WaitsFor(string part, string other, Tie tie) => $"{part} waits for {other}, " + tie switch
    {
        Tie.Access => "which is in its way",
        Tie.Carries => "which stands on it",
        _ => "which it rides on",
    };

    private static string IsCarried(string part, string other, Tie tie) => tie switch
    {
        Tie.StandsOn => $"{part} stands on {other}",
        Tie.RidesOn => $"{part} rides on {other}",
        _ => $"{part} is inside of {other}",
    };

    private static string Mend(ImmutableArray<CircleStep> circle)
    {
        string[] keys = [.. circle.Select(step => step.Tie).Distinct().Order().Select(KeyOf).Distinct(StringComparer.Ordinal).Select(key => $"`{key}`")];
        return circle.Length == 1 ? $"take it out of its own {keys[0]}" : $"take one of them out of {Wording.OneOf(keys)}";
    }

    private static string KeyOf(Tie tie) => tie switch
    {
        Tie.Access => "access",
        Tie.RidesOn => "rides-on",
        Tie.Assembly => "assembly",
        _ => "stands-on",
    };
}
