using System.Globalization;
using System.Text;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Support.Notation;

/// <summary>Writes a case in the notation that <see cref="CaseReader"/> reads, so that a found counter-example can be pasted into a test.</summary>
public static class CaseWriter
{
    private const int LineWidth = 110;

    /// <summary>The whole case. Reading it gives an equal case.</summary>
    public static string Write(TestCase asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var lines = new List<string>();
        lines.AddRange(asked.Standard.Debris.Select(own =>
            $"@debris {own.Name} {(own.IsHard ? "hard" : "soft")} {(own.HasSize ? "sized" : "unsized")}"));
        if (asked.Family.States != EngineStates.All)
            lines.Add("@states " + string.Join(' ', StateNames(asked.Family.States)));
        lines.AddRange(SystemLines(asked.Family));
        if (asked.Failed.Length > 0)
            lines.Add("@failed " + string.Join(' ', asked.Failed.SelectMany(part => FailureWords(asked, part))));
        lines.Add("@asked " + string.Join(' ', asked.Asked.Select(debris => debris.Name)));
        lines.AddRange(asked.Findings.Select(FindingText));
        lines.AddRange(StandardLines(asked.Standard));
        if (asked.Technicians != 1)
            lines.Add(Invariant($"@technicians {asked.Technicians}"));
        return string.Join('\n', lines) + "\n";
    }

    private static IEnumerable<string> FailureWords(TestCase asked, PartId part)
    {
        PartFailure[] own = [.. asked.Own.Where(one => one.Part == part && one.Debris is not null)];
        return own.Length == 0 ? [part.Value] : own.Select(one =>
            $"{part}={(one.ShedNothing ? "nothing" : string.Join('+', one.Debris!.Value.Select(debris => debris.Name)))}{(one.UpTo is { } size ? ":" + Size(size) : "")}");
    }

    /// <summary>A part with everything said of it.</summary>
    public static string PartText(Part part)
    {
        ArgumentNullException.ThrowIfNull(part);
        var words = new List<string>();
        words.AddRange(KindWords(part));
        AddIf(words, part.ClearedBy == ClearedBy.Nothing, "critical");
        AddIf(words, part.ClearedBy == ClearedBy.TwoLooks, "two-looks");
        foreach (Shed shed in part.Sheds)
        {
            words.Add($"sheds {shed.Debris.Name}"
                + (shed.UpTo.IsUnlimited ? "" : " " + Size(shed.UpTo))
                + (shed.Likely == Likelihood.Common ? "" : " " + Lower(shed.Likely)));
        }

        foreach (Hold hold in part.Holds)
            words.Add($"holds {hold.Debris.Name} {(hold.Above == ParticleSize.Zero ? "all" : Size(hold.Above))}");
        AddIf(words, part.HasAbsoluteRating, "abs");
        AddIf(words, part.RatingIsSaid && !part.HasAbsoluteRating, "nominal");
        AddIf(words, part.HasBypass, "bypass");
        AddIf(words, part.Passage is not null, $"passage={Size(part.Passage)}");
        AddIf(words, part.Clearance is not null, $"clearance={Size(part.Clearance)}");
        AddIf(words, part.Access.Length > 0, "access=" + string.Join('+', part.Access));
        AddIf(words, part.Seals.Length > 0, "seals=" + string.Join('+', part.Seals));
        AddIf(words, part.SendOut is not null, "sendout=" + Number(part.SendOut?.Days));
        AddIf(words, part.Inspect is not null, $"look={(part.Inspect is { } look ? Lower(look.Shows) : "")}"
            + (part.Inspect?.Minutes is { } minutes ? ":" + Number(minutes) : ""));
        AddIf(words, part.RepeatOf is not null, "repeat");
        words.AddRange(MinutesWords(part.Minutes));
        return part.Id.Value + (words.Count == 0 ? "" : "[" + string.Join(' ', words) + "]");
    }

    /// <summary>A joint on its own.</summary>
    public static string JointText(Joint joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        return $"{joint.Circuit}: {joint.From} {Arrow(joint, bothWays: false)} {joint.To}";
    }

    internal static IEnumerable<string> StateNames(EngineStates states) =>
        new[] { EngineStates.Running, EngineStates.Cranking, EngineStates.Stopped }
            .Where(state => states.HasFlag(state))
            .Select(Lower);

    // Parts stand in order of first mention, so a chain that would mention a part too early is preceded by a list of the parts before it.
    private static IEnumerable<string> SystemLines(Family family)
    {
        int mentioned = 0;
        foreach ((Joint First, List<string> Words) chain in Chains(family))
        {
            int after = MentionedAfter(chain.Words, family, mentioned);
            if (after < 0)
            {
                int last = chain.Words.Max(word => family.IndexOf(new PartId(word)));
                foreach (string line in Wrapped(family.Parts[mentioned..(last + 1)].Select(PartText)))
                    yield return line;
                mentioned = last + 1;
            }

            int before = mentioned;
            mentioned = Math.Max(mentioned, after);
            yield return (chain.First.Circuit == CaseReader.DefaultCircuit ? "" : chain.First.Circuit + ": ") + string.Join(' ', chain.Words.Select(word =>
            {
                int index = family.IndexOf(new PartId(word));
                if (index < before)
                    return word;
                before = Math.Max(before, index + 1);
                return PartText(family.Parts[index]);
            }));
        }

        foreach (string line in Wrapped(family.Parts[mentioned..].Select(PartText)))
            yield return line;
    }

    // How many parts have been mentioned once this chain stands; -1 where it would mention one out of turn.
    private static int MentionedAfter(List<string> words, Family family, int mentioned)
    {
        foreach (string word in words)
        {
            int index = family.IndexOf(new PartId(word));
            if (index > mentioned)
                return -1;
            mentioned = index == mentioned ? mentioned + 1 : mentioned;
        }

        return mentioned;
    }

    // A chain is a list of part ids and arrows in turn; arrows are no part's id.
    private static IEnumerable<(Joint First, List<string> Words)> Chains(Family family)
    {
        for (int i = 0; i < family.Joints.Length;)
        {
            Joint first = family.Joints[i];
            var words = new List<string> { first.From.Value };
            PartId end = first.From;
            while (i < family.Joints.Length && family.Joints[i].From == end
                && family.Joints[i].Circuit == first.Circuit && words.Count < 21)
            {
                Joint joint = family.Joints[i];
                bool bothWays = joint.IsLink && i + 1 < family.Joints.Length && AreOneLink(joint, family.Joints[i + 1]);
                words.Add(Arrow(joint, bothWays));
                words.Add(joint.To.Value);
                end = joint.To;
                i += bothWays ? 2 : 1;
            }

            yield return (first, words);
        }
    }

    private static bool AreOneLink(Joint there, Joint back) =>
        back == there with { Id = back.Id, From = there.To, To = there.From, Place = back.Place };

    private static string Arrow(Joint joint, bool bothWays)
    {
        if (joint is { When: EngineStates.None, OnlyIfFailed: null, Passage: null, IsLink: true } && !bothWays)
            return "~";
        string modifiers = (joint.OnlyIfFailed is { } condition ? "?" + condition : "")
            + (joint.Passage is { } passage ? $"({Size(passage)})" : "")
            + (joint.When == EngineStates.All ? "" : "/" + (joint.When == EngineStates.None ? "never" : string.Join('+', StateNames(joint.When))));
        if (bothWays)
            return $"<{modifiers}>";
        if (modifiers.Length > 0 || joint.IsLink)
            return $">{(modifiers.Length > 0 ? modifiers : "-")}>";
        return ">";
    }

    private static string[] KindWords(Part part)
    {
        bool usual = part.IsRemovable == part.Kind.IsRemovable;
        if (part.Kind == ShopFloor.Block && usual)
            return ["inplace"];
        string[] kind = part.Kind == ShopFloor.Part && usual ? [] : [part.Kind.Name];
        return usual ? kind : [.. kind, part.IsRemovable ? "removable" : "inplace"];
    }

    private static string FindingText(Finding finding) =>
        $"@{(finding.Found ? "found" : "clean")} {finding.Part} {finding.Debris.Name}" + (finding.Size is { } size ? " " + Size(size) : "");

    private static IEnumerable<string> StandardLines(ShopStandard standard)
    {
        if (standard.CleanFindings is { } cleanFindings)
            yield return "@clean-findings " + Lower(cleanFindings);
        foreach (Rule rule in standard.Rules)
        {
            yield return "@rule"
                + (rule.For.Part is { } part ? " part=" + part : "")
                + (rule.For.Kind is { } kind ? " kind=" + kind : "")
                + (rule.For.Debris is { } debris ? " debris=" + debris : "")
                + Treatments("exposed", rule.Exposed) + Treatments("guarded", rule.Guarded) + Treatments("failed", rule.Failed);
        }

        foreach ((string kind, TaskMinutes minutes) in standard.Times)
            yield return $"@times {kind} " + string.Join(' ', MinutesWords(minutes));
    }

    private static string Treatments(string grade, IReadOnlyList<TreatmentKind>? treatments) =>
        treatments is null ? "" : $" {grade}=" + string.Join('+', treatments.Select(Lower));

    private static IEnumerable<string> MinutesWords(TaskMinutes minutes) =>
        new (string Task, double? Minutes)[]
        {
            ("inspect", minutes.Inspect), ("remove", minutes.Remove), ("flush", minutes.Flush), ("clean", minutes.Clean),
            ("test", minutes.Test), ("replace", minutes.Replace), ("refit", minutes.Refit),
        }
        .Where(entry => entry.Minutes is not null)
        .Select(entry => $"{entry.Task}={Number(entry.Minutes)}");

    private static IEnumerable<string> Wrapped(IEnumerable<string> parts)
    {
        var line = new StringBuilder();
        foreach (string part in parts)
        {
            if (line.Length > 0 && line.Length + 2 + part.Length > LineWidth)
            {
                yield return line.ToString();
                line.Clear();
            }

            line.Append(line.Length == 0 ? "" : "; ").Append(part);
        }

        if (line.Length > 0)
            yield return line.ToString();
    }

    private static void AddIf(List<string> words, bool said, string word)
    {
        if (said)
            words.Add(word);
    }

    private static string Size(ParticleSize? size) => Number(size?.Micrometres);

    private static string Number(double? number) => number?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

#pragma warning disable CA1308 // The notation's words are lower case.
    private static string Lower<T>(T word)
        where T : struct, Enum => word.ToString().ToLowerInvariant();
#pragma warning restore CA1308
}
