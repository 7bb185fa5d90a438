using System.Collections.Immutable;
using System.Text.Json;
using Contam.Families;
using Contam.Graphs;
using Contam.Spread;
using Contam.Support;
using Contam.Why;

namespace Contam.CrossCheck;

/// <summary>
/// A case as a line of JSON: what the family and the findings say, untouched, and this library's answers. The judge works out from the former alone
/// which joints are open, what lets on what, and all that follows. Parts are numbers, by their place in the family; no size is <c>null</c>.
/// </summary>
internal static class CaseLine
{
    // Every part would take the judge long and teach it little.
    private const int MostCuts = 4;

    public static void Write(Stream output, int seed, TestCase asked)
    {
        using var json = new Utf8JsonWriter(output);
        json.WriteStartObject();
        json.WriteNumber("seed", seed);
        json.WriteNumber("states", (int)asked.Family.States);
        json.WriteBoolean("acceptsCleanFindings", asked.AcceptsCleanFindings);
        WriteNumbers(json, "failed", asked.Failed.Select(asked.Family.IndexOf));
        WriteList(json, "parts", asked.Family.Parts, part => WritePart(json, part));
        WriteList(json, "joints", asked.Family.Joints, joint => WriteJoint(json, asked.Family, joint));
        WriteList(json, "findings", asked.Findings, finding =>
        {
            json.WriteNumber("part", asked.Family.IndexOf(finding.Part));
            json.WriteString("debris", finding.Debris.Name);
            json.WriteBoolean("found", finding.Found);
            WriteSize(json, "size", finding.Size);
        });
        WriteList(json, "answers", asked.Asked, debris => WriteAnswers(json, asked, debris));
        json.WriteEndObject();
    }

    private static void WritePart(Utf8JsonWriter json, Part part)
    {
        json.WriteBoolean("absolute", part.HasAbsoluteRating);
        json.WriteBoolean("bypass", part.HasBypass);
        json.WriteString("clearedBy", part.ClearedBy.ToString());
        json.WriteString("shows", part.Inspect?.Shows.ToString());
        WriteSize(json, "passage", part.Passage);
        json.WriteStartObject("holds");
        foreach (Hold hold in part.Holds)
            WriteSize(json, hold.Debris.Name, hold.Above);
        json.WriteEndObject();
        json.WriteStartObject("sheds");
        foreach (Shed shed in part.Sheds)
            WriteSize(json, shed.Debris.Name, shed.UpTo);
        json.WriteEndObject();
    }

    private static void WriteJoint(Utf8JsonWriter json, Family family, Joint joint)
    {
        json.WriteNumber("from", family.IndexOf(joint.From));
        json.WriteNumber("to", family.IndexOf(joint.To));
        json.WriteNumber("when", (int)joint.When);
        WriteSize(json, "passage", joint.Passage);
        if (joint.OnlyIfFailed is { } condition)
            json.WriteNumber("onlyIfFailed", family.IndexOf(condition));
        else
            json.WriteNull("onlyIfFailed");
    }

    private static void WriteAnswers(Utf8JsonWriter json, TestCase asked, Debris debris)
    {
        Family family = asked.Family;
        SpreadQuestion question = asked.Question(debris);
        DebrisSpread spread = Spreading.Of(question);
        SpreadGraph graph = SpreadGraph.Of(question);
        int[] sources = [.. graph.Sources];
        Joint[] open = [.. family.Joints.Where(joint => SpreadGraph.IsOpen(family, joint, question.Failed.ToHashSet()))];

        json.WriteString("debris", debris.Name);
        json.WriteBoolean("hasSize", debris.HasSize);
        json.WriteBoolean("isHard", debris.IsHard);
        WriteNumbers(json, "open", open.Select(joint => joint.Id));
        WriteNumbers(json, "sources", sources);
        WriteList(json, "listed", spread.Parts, reached =>
        {
            json.WriteNumber("part", family.IndexOf(reached.Part));
            json.WriteString("grade", reached.Grade.ToString());
            WriteSize(json, "reach", reached.Reach);
        });
        WriteNumbers(json, "components", NumberedByFirst(StronglyConnectedComponents.Of(family.Parts.Length, open.Select(joint => (family.IndexOf(joint.From), family.IndexOf(joint.To)))).Component));
        WriteNumbers(json, "dominators", Dominators.Immediate(graph.Open, sources));
        WriteList(json, "cuts", PartsToCut(spread, sources), part =>
        {
            Explanation why = Explaining.Of(question, family.Parts[part].Id, asked.Standard);
            json.WriteNumber("part", part);
            json.WriteBoolean("isJoinedToSource", why.IsJoinedToSource);
            json.WriteNumber("lastSinglePart", why.LastSinglePart is { } last ? family.IndexOf(last) : -1);
            WriteNumbers(json, "cut", why.Cut.Select(family.IndexOf));
        });
        WriteNumbers(json, "void", spread.Contradictions.SelectMany(one => one.Voids).Select(family.IndexOf).Distinct().Order());
    }

    /// <summary>The same components, numbered from 0 by their first part.</summary>
    private static IEnumerable<int> NumberedByFirst(int[] component)
    {
        var numberOf = new Dictionary<int, int>();
        foreach (int one in component)
        {
            numberOf.TryAdd(one, numberOf.Count);
            yield return numberOf[one];
        }
    }

    /// <summary>Listed parts that are no source, evenly chosen.</summary>
    private static IEnumerable<int> PartsToCut(DebrisSpread spread, int[] sources)
    {
        ImmutableArray<int> parts = [.. spread.Parts.Select(reached => spread.Family.IndexOf(reached.Part)).Except(sources)];
        int step = Math.Max(1, parts.Length / MostCuts);
        return Enumerable.Range(0, Math.Min(MostCuts, parts.Length)).Select(one => parts[one * step]);
    }

    private static void WriteSize(Utf8JsonWriter json, string name, ParticleSize? size)
    {
        if (size is not { IsUnlimited: false } limited)
            json.WriteNull(name);
        else
            json.WriteNumber(name, limited.Micrometres);
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, IEnumerable<int> numbers)
    {
        json.WriteStartArray(name);
        foreach (int number in numbers)
            json.WriteNumberValue(number);
        json.WriteEndArray();
    }

    private static void WriteList<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
