using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Plans;
using Contam.Spread;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Work;

/// <summary>
/// How the looks of a plan stand with the outcomes that are said of them, and what that asks for.
/// <para>
/// A look that found something is taken to have found every debris of it at every place where that debris comes to, of a size that nobody says: so every state
/// of a job is one that the plan was made for. A clean look at any place of which a find speaks counts as found. So does a look that is due and that would be
/// void at once if it were clean.
/// </para>
/// <para>Cost: a spread of each debris, and one more for each look that is due.</para>
/// </summary>
internal sealed class LookTable
{
    private readonly JobState state;
    private readonly KeptSystem kept;
    private readonly IReadOnlyDictionary<string, Decided> outcomes;
    private readonly Catalogue catalogue;

    /// <summary>The looks of the plan of a state, with these outcomes, by letter.</summary>
    public LookTable(JobState state, KeptSystem kept, IReadOnlyDictionary<string, Decided> outcomes)
    {
        this.state = state;
        this.kept = kept;
        this.outcomes = outcomes;
        catalogue = kept.Standard.CatalogueOf();
    }

    /// <summary>How looks stand of which nothing is said yet.</summary>
    public static ImmutableArray<LookStands> Unsaid(PlanDocument plan) =>
        [.. plan.Looks.Select(look => new LookStands(look.Id, LookStandings.Word(look.OnlyIf.IsEmpty ? LookStanding.Due : LookStanding.Waits)))];

    /// <summary>How each stands, in order of work.</summary>
    public ImmutableArray<LookStands> Standings()
    {
        if (state.Plan.Looks.IsEmpty)
            return [];
        Dictionary<string, string> disproved = VoidWith(null);
        var standings = new Dictionary<string, LookStanding>(StringComparer.Ordinal);
        var settled = new Dictionary<string, string>(StringComparer.Ordinal);
        while (true)
        {
            foreach (PlanLook look in state.Plan.Looks)
                standings[look.Id] = Standing(look);
            if (state.Plan.Looks.FirstOrDefault(look => standings[look.Id] == LookStanding.Due && VoidWith(look).ContainsKey(look.Id)) is not { } more)
                return [.. state.Plan.Looks.Select(look => Stands(look.Id))];
            settled[more.Id] = VoidWith(more)[more.Id];
        }

        LookStands Stands(string letter) => new(letter, LookStandings.Word(standings[letter]))
        {
            DisprovedAt = standings[letter] == LookStanding.Void ? disproved[letter] : settled.GetValueOrDefault(letter),
        };

        LookStanding Standing(PlanLook look)
        {
            if (outcomes.TryGetValue(look.Id, out Decided? outcome))
                return outcome.Outcome switch { "clean" => disproved.ContainsKey(look.Id) ? LookStanding.Void : LookStanding.Clean, "found" => LookStanding.Found, _ => LookStanding.InDoubt };
            if (settled.ContainsKey(look.Id))
                return LookStanding.Settled;
            // Looks hang on earlier ones only.
            LookStanding[] earlier = [.. look.OnlyIf.Select(letter => standings.GetValueOrDefault(letter, LookStanding.Due))];
            return earlier.Length == 0 || earlier.Any(LookStandings.CountsAsFound) ? LookStanding.Due : earlier.All(LookStandings.IsDecided) ? LookStanding.NotDue : LookStanding.Waits;
        }
    }

    /// <summary>What the standard asks for with all that was seen: the spread of what failed, of what was found, and of what was clean, by the code that a plan without looks goes by.</summary>
    public ImmutableArray<PartTreatment> Asked() =>
        Treating.Decide(kept.Family, [.. state.Plan.Debris.Select(name => SpreadOf(catalogue.FindDebris(name)!, [.. Findings(null), .. Seen()]))], Failed.PartsOf(), new RuleBook(kept.Standard));

    /// <summary>What the plan says that failed, each part with what it shed: a part that shed nothing is no source here either.</summary>
    private ImmutableArray<PartFailure> Failed => state.Plan.Failures(name => catalogue.FindDebris(name)!);

    /// <summary>The letters of the clean looks that finds disprove, if this look were clean too, each with the part where the find was made.</summary>
    private Dictionary<string, string> VoidWith(PlanLook? clean)
    {
        Finding[] findings = [.. Findings(clean), .. Seen().Where(finding => finding.Found)];
        var disproved = new Dictionary<string, string>(StringComparer.Ordinal);
        if (!findings.Any(finding => finding.Found))
            return disproved;
        foreach (string name in state.Plan.Debris)
        {
            foreach (Contradiction contradiction in SpreadOf(catalogue.FindDebris(name)!, findings).Contradictions)
            {
                foreach (PlanLook look in state.Plan.Looks.Where(look => look.Debris.Contains(name) && contradiction.Voids.Any(part => look.Places.Contains(part.Value))))
                    disproved.TryAdd(look.Id, contradiction.Find.Part.Value);
            }
        }

        return disproved;
    }

    private DebrisSpread SpreadOf(Debris debris, Finding[] findings) => Spreading.Of(new SpreadQuestion(kept.Family, Failed, debris)
    {
        Findings = [.. findings],
        AcceptsCleanFindings = kept.Standard.CleanFindings != CleanFindings.Never,
    });

    /// <summary>What the plan was made with, and what the looks say.</summary>
    private IEnumerable<Finding> Findings(PlanLook? clean)
    {
        foreach (PlanFinding finding in state.Plan.Findings)
        {
            if (catalogue.FindDebris(finding.Debris) is { } debris)
                yield return new Finding(new PartId(finding.Part), debris, finding.Found) { Size = finding.SizeUm is { } size ? ParticleSize.FromMicrometres(size) : null };
        }

        foreach (PlanLook look in state.Plan.Looks)
        {
            string? outcome = look.Id == clean?.Id ? "clean" : outcomes.GetValueOrDefault(look.Id)?.Outcome;
            if (outcome is not ("clean" or "found"))
                continue;
            foreach (string place in look.Places)
            {
                foreach (string name in look.Debris.Where(name => outcome == "clean" || ComesTo(place, name)))
                    yield return new Finding(new PartId(place), catalogue.FindDebris(name)!, outcome == "found");
            }
        }
    }

    /// <summary>What was really seen since the plan was made: where that goes beyond the looks, it says more.</summary>
    private IEnumerable<Finding> Seen() => state.Looks.Where(look => !look.IsAnswered).Select(look => look.Seen)
        .Concat(outcomes.Values.OrderBy(outcome => outcome.Look, StringComparer.Ordinal).SelectMany(outcome => outcome.Seen).Where(seen => seen.Found))
        .Select(seen => Rework.FindingOf(seen, catalogue) with { Size = null });

    private bool ComesTo(string place, string debris) => state.Plan.Parts.FirstOrDefault(part => part.Id == place)?.Exposure.Any(line => line.Debris == debris) ?? false;
}
