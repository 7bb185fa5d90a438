using System.Collections.Immutable;
using System.Globalization;
using Contam.Audits;
using Contam.Problems;

namespace Contam.Reports.Audits;

/// <summary>The words and the grouping that the text and the HTML of an audit share.</summary>
/// <param name="audit">The audit.</param>
/// <param name="change">What changed since an earlier one, or <c>null</c>: then only that is told.</param>
internal sealed class AuditSheet(Audit audit, AuditChange? change)
{
    private readonly ImmutableArray<AuditMessage> messages = change?.New ?? audit.Messages;

    public string Title => change is null ? "Audit" : "Audit: what has changed since the earlier one";

    public string Scope =>
        $"{Count(audit.Families.Length, "family", "families")}, {Count(audit.Families.Sum(family => family.Parts), "part")}, {Count(audit.Failures.Length, "failure")}, each planned and played. Standard: {audit.Standard}.";

    public string Verdict
    {
        get
        {
            int errors = messages.Count(message => message.Severity == Severity.Error);
            string rest = $"{Count(messages.Length - errors, change is null ? "thing" : "new thing")} to read";
            string gone = change is null ? "" : $", {Count(change.Gone.Length, "message")} gone, {Count(change.Failures.Length, "plan")} changed";
            return errors == 0 ? $"Nothing {(change is null ? "" : "new ")}must be mended; {rest}{gone}." : $"{Count(errors, change is null ? "thing" : "new thing")} must be mended; {rest}{gone}.";
        }
    }

    /// <summary>The messages by code, those that must be mended first; codes without any are left out.</summary>
    public IEnumerable<(AuditCode Code, AuditMessage[] Messages)> Groups => AuditCodes.All
        .Select(code => (code, messages.Where(message => message.Code == code.Code).ToArray()))
        .Where(group => group.Item2.Length > 0);

    /// <summary>Whether the messages of a code are told by the names of parts alone, a line a family: they are alike but for the name.</summary>
    public static bool IsListed(AuditCode code) => code.Code is AuditCodes.NoLookBefore or AuditCodes.GeneralRule or AuditCodes.NeverReached or AuditCodes.ReachesMost;

    public static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Percent(double share) => $"{(100 * share).ToString("0", CultureInfo.InvariantCulture)} %";

    /// <summary>The three hours of a failure, and how many looks decide.</summary>
    public static string Hours(LookHours hours) => hours.Looks == 0
        ? "no look decides"
        : $"{Number(hours.Sure)} h sure, {Number(hours.Expected)} h to be expected; {Count(hours.Looks, "look")} {(hours.Looks == 1 ? "decides" : "decide")}";

    /// <summary>How much hangs on looks over all failures.</summary>
    public string OnLooks =>
        $"Over {Count(audit.Failures.Length, "failure")} a median of {Percent(audit.OnLooks.Median)} of the bench hours hangs on looks: in a quarter of the failures {Percent(audit.OnLooks.Lower)} or less, in a quarter {Percent(audit.OnLooks.Upper)} or more. "
        + $"A median of {Count((int)audit.Looks.Median, "look")} decides, at most {Number(audit.Looks.Most)}.";

    public static string Count(int count, string one, string? several = null) =>
        $"{count.ToString(CultureInfo.InvariantCulture)} {(count == 1 ? one : several ?? one + "s")}";

    /// <summary>What became of one failure's plan.</summary>
    public static string Told(ChangedFailure changed)
    {
        AuditedFailure any = changed.Now ?? changed.Before!;
        string what = changed switch
        {
            { Before: null } => $"new: {Number(changed.Now!.BenchHours)} h",
            { Now: null } => "no more there",
            { Before: { } before, Now: { } now } => string.Join(", ", Differences(before, now)),
        };
        return $"{any.Family}, {any.Debris} from {any.Part}: {what}";
    }

    private static IEnumerable<string> Differences(AuditedFailure before, AuditedFailure now)
    {
        if (before.Reached != now.Reached)
            yield return $"{Count(now.Reached, "part")} reached instead of {Number(before.Reached)}";
        if (before.Treatments != now.Treatments)
            yield return "treatments changed";
        if (before.Steps != now.Steps)
            yield return $"{Count(now.Steps, "step")} instead of {Number(before.Steps)}";
        if (before.BenchHours != now.BenchHours)
            yield return $"{Number(now.BenchHours)} h instead of {Number(before.BenchHours)} h";
        if (before.Hours.Sure != now.Hours.Sure)
            yield return $"{Number(now.Hours.Sure)} h sure instead of {Number(before.Hours.Sure)} h";
        if (before.Hours.Expected != now.Hours.Expected)
            yield return $"{Number(now.Hours.Expected)} h to be expected instead of {Number(before.Hours.Expected)} h";
        if (before.Hours.Looks != now.Hours.Looks)
            yield return $"{Count(now.Hours.Looks, "look")} instead of {Number(before.Hours.Looks)}";
    }
}
