using System.Collections.Immutable;
using System.Text;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Tests.Walks;

/// <summary>Small engines as family files, each made from a number: a run of a few parts, joints across it, parts in each other's way, limits, a workshop.</summary>
internal static class SmallFamily
{
    private static readonly string[] Kinds = ["hose", "housing", "gear", "valve", "screen", "gallery", "cooler", "bearing"];

    /// <summary>The question of a job for the engine of this number.</summary>
    public static JobQuestion Question(int number)
    {
        var standard = BuiltInStandards.HouseOverKinds;
        Family family = FamilyReader.ReadText(Text(number), "engine.yaml", standard.CatalogueOf()).Value ?? throw new InvalidOperationException($"engine {number} is not read:\n{Text(number)}");
        var question = new JobQuestion(family, standard, BuiltInStandards.Sources, [new PartId("p0")], [Debris.Metal]);
        // Looks seldom pay in an engine this small, so in every other they are named.
        ImmutableArray<PartId> deciding = [.. family.Parts.Select(part => part.Id).Where(part => Decide(question, [part]))];
        return number % 2 == 0 && !deciding.IsEmpty && Decide(question, deciding) ? question with { LookAt = deciding } : question;
    }

    private static bool Decide(JobQuestion question, ImmutableArray<PartId> places)
    {
        try
        {
            return !HowFar.Of(new PlanRequest(question.Family, question.Standard, question.Failures, question.Debris), lookAt: places).Looks.IsEmpty;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    /// <summary>Its text.</summary>
    public static string Text(int number)
    {
        var random = new Random(number);
        int count = random.Next(2, 6);
        var text = new StringBuilder($"format: 1\nfamily: engine-{number}\ntitle: Engine {number}\nparts:\n  p0: {{kind: pump, sheds: {{metal: common}}, inspect: {{minutes: 5, shows: good, how: look}}}}\n");
        for (int part = 1; part < count; part++)
        {
            string access = random.Next(3) == 0 ? $", access: [p{random.Next(part)}]" : "";
            string sent = random.Next(6) == 0 ? ", send-out: {days: 2, who: workshop}" : "";
            string holds = random.Next(4) == 0 ? ", holds: {metal: 30 um}, rating: nominal" : "";
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"  p{part}: {{kind: {Kinds[random.Next(Kinds.Length)]}, inspect: {{minutes: 5, shows: {(random.Next(2) == 0 ? "good" : "fair")}, how: look}}{access}{sent}{holds}}}\n");
        }

        text.Append("circuits:\n  oil:\n    runs:\n      - [").AppendJoin(", ", Enumerable.Range(0, count).Select(part => $"p{part}")).Append("]\n");
        string[] links = [.. Enumerable.Range(0, random.Next(3)).Select(_ => (From: random.Next(count), To: random.Next(count))).Where(link => link.From != link.To && link.To != link.From + 1).Distinct().Select(link => $"  - {{from: p{link.From}, to: p{link.To}, circuit: oil}}\n")];
        if (links.Length > 0)
            text.Append("links:\n").AppendJoin("", links);
        text.Append("limits:\n");
        foreach (int part in Enumerable.Range(0, count).Where(_ => random.Next(2) == 0).DefaultIfEmpty(0))
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"  hold-{part}: {{part: p{part}, measures: pressure-drop, good: \"<= 0.1 bar\", reject: \"> 0.2 bar\", at: 1 bar, over: 10 min, source: demonstration value}}\n");
        return text.ToString();
    }
}
