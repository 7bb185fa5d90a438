using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Plans;

namespace Contam.Tests.Proof;

/// <summary>
/// Plans written by hand in a few lines. A part to a line or between semicolons: <c>id treatment[+treatment] [grade [reach [via]]]</c>, where
/// <c>-</c> stands for no treatment and for no part before it, and <c>any</c> for unlimited; grade exposed where none is said.
/// A step to a line: <c>action [part[+part]] [key=value]…</c> with the keys at=start-finish, after=1+2, by=technician or nobody, seals, blank, circuit, drains, fills, frame, phase, minutes.
/// A look for debris is <c>inspect</c>, one at the clean part <c>measure</c>. Where nothing is said, <c>safe</c> is for the circuit flow, and a step takes ten minutes of technician 1, after the one before.
/// </summary>
internal static class BenchPlan
{
    internal static PlanDocument Of(Family family, string failed, string parts, string steps)
    {
        ImmutableArray<PlanPart> listed = [.. Lines(parts).Select(words => PartOf(family, words))];
        ImmutableArray<PlanStep> numbered = StepsOf(steps);
        return new PlanDocument
        {
            Family = new PlanFamily(family.Id, family.Title, family.Sha256),
            Standard = new PlanStandard("plain", "plain"),
            Failed = [.. failed.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(part => new PlanFailure(part, ["metal"], null))],
            Debris = ["metal"],
            Parts = [.. listed.Select(part => WithWay(part, listed))],
            Clear = family.Parts.Length - listed.Length,
            Steps = numbered,
            Hours = new PlanHours(1, 1, numbered.Select(step => step.Technician ?? 1).DefaultIfEmpty(1).Max(), 0, 0),
        };
    }

    private static PlanPart PartOf(Family family, string[] words) => new()
    {
        Id = words[0],
        Name = words[0],
        Kind = family.Find(new PartId(words[0]))?.Kind.Name ?? "part",
        Treatment = words[1] == "-" ? [] : [.. words[1].Split('+').Select(word => Enum.Parse<TreatmentKind>(word, ignoreCase: true))],
        Exposure =
        [
            new PlanExposure(
                "metal",
                words.Length > 2 ? Enum.Parse<Grade>(words[2], ignoreCase: true) : Grade.Exposed,
                words.Length > 3 && words[3] != "any" ? double.Parse(words[3], CultureInfo.InvariantCulture) : null,
                words[0],
                words.Length > 4 && words[4] != "-" ? words[4] : null),
        ],
    };

    // The source and the path follow from the hops.
    private static PlanPart WithWay(PlanPart part, ImmutableArray<PlanPart> listed)
    {
        var path = new List<string> { part.Id };
        while (listed.First(other => other.Id == path[0]).Exposure[0].Via is { } via)
            path.Insert(0, via);
        return part with { Path = [.. path], Exposure = [part.Exposure[0] with { From = path[0] }] };
    }

    internal static ImmutableArray<PlanStep> StepsOf(string text)
    {
        var steps = ImmutableArray.CreateBuilder<PlanStep>();
        double clock = 0;
        foreach (string[] words in Lines(text))
        {
            int number = steps.Count + 1;
            (Phase phase, StepAction action) = Meaning(words[0]);
            string[] parts = words.Length > 1 && !words[1].Contains('=', StringComparison.Ordinal) ? words[1].Split('+') : [];
            var step = new PlanStep
            {
                Number = number,
                Phase = phase,
                Action = action,
                Part = parts.Length == 1 ? parts[0] : null,
                Parts = parts.Length > 1 ? [.. parts] : [],
                After = number == 1 ? [] : [number - 1],
                Minutes = 10,
                Start = clock,
                Finish = clock + 10,
                Technician = 1,
                About = words[0] == "inspect" ? LookAbout.Debris : words[0] == "measure" ? LookAbout.Condition : null,
                Circuit = words[0] == "safe" ? "flow" : null,
            };
            foreach (string word in words.Where(word => word.Contains('=', StringComparison.Ordinal)))
                step = With(step, word.Split('=')[0], word.Split('=')[1]);
            steps.Add(step);
            clock = step.Finish;
        }

        return steps.ToImmutable();
    }

    private static PlanStep With(PlanStep step, string key, string value) => key switch
    {
        "at" => step with { Start = Number(value.Split('-')[0]), Finish = Number(value.Split('-')[1]), Minutes = Number(value.Split('-')[1]) - Number(value.Split('-')[0]) },
        "after" => step with { After = [.. value.Split('+', StringSplitOptions.RemoveEmptyEntries).Select(number => (int)Number(number))] },
        "by" => step with { Technician = value == "nobody" ? null : (int)Number(value) },
        "seals" => step with { Seals = [.. value.Split('+')] },
        "circuit" => step with { Circuit = value },
        "fills" => step with { Fills = [.. value.Split('+')] },
        "frame" => step with { Frame = value },
        "drains" => step with { Drains = [.. value.Split('+')] },
        "blank" => step with { Blank = [.. value.Split('+')] },
        "phase" => step with { Phase = Enum.Parse<Phase>(value, ignoreCase: true) },
        "minutes" => step with { Minutes = Number(value) },
        _ => throw new FormatException(key),
    };

    private static (Phase Phase, StepAction Action) Meaning(string word) => word switch
    {
        "safe" => (Phase.MakeSafe, StepAction.MakeSafe),
        "look" => (Phase.Confirm, StepAction.Inspect),
        "remove" => (Phase.Strip, StepAction.Remove),
        "inspect" => (Phase.Strip, StepAction.Inspect),
        "measure" => (Phase.CleanOut, StepAction.Inspect),
        "flush" => (Phase.CleanOut, StepAction.Flush),
        "clean" => (Phase.CleanOut, StepAction.Clean),
        "replace" => (Phase.CleanOut, StepAction.Replace),
        "sendout" => (Phase.CleanOut, StepAction.SendOut),
        "test" => (Phase.Test, StepAction.Test),
        "refit" => (Phase.Refit, StepAction.Refit),
        "prove" => (Phase.Prove, StepAction.Prove),
        "note" => (Phase.Confirm, StepAction.Note),
        _ => throw new FormatException(word),
    };

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static IEnumerable<string[]> Lines(string text) =>
        text.Split(['\n', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
