using System.Collections.Immutable;
using Contam.Families;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>
/// What failed, as a person typed it: parts alone, of which <c>--debris</c> says what they shed, and parts that say so themselves,
/// <c>PART=metal:500um,rubber</c> or <c>PART=nothing</c>.
/// </summary>
internal sealed class TypedFailures
{
    private const string Nothing = "nothing";

    private readonly List<PartId> alone = [];
    private readonly Dictionary<PartId, List<(Debris Debris, ParticleSize? UpTo)>> own = [];
    private readonly List<PartId> parts = [];

    private TypedFailures()
    {
    }

    /// <summary>Every part, each once, in the order typed.</summary>
    public ImmutableArray<PartId> Parts => [.. parts];

    /// <summary>Reads every <c>--failed</c> of a call.</summary>
    public static TypedFailures Read(string[] texts, QuestionNames names)
    {
        var read = new TypedFailures();
        foreach (string text in texts)
        {
            if (text.Contains('=', StringComparison.Ordinal))
                read.TakeOwn(text, names);
            else
                read.TakeAlone(text, names);
        }

        return read;
    }

    /// <summary>Where nothing shed anything and nothing was found, a question about debris has no answer.</summary>
    public static void MustShed(ImmutableArray<Debris> asked, string so)
    {
        if (asked.IsEmpty)
            throw new WrongUseException($"nothing that failed shed anything and nothing was found, so that {so}. contam plan says how what failed is made good.");
    }

    /// <summary>The failures, and every debris that is to be followed, in the order of the catalogue.</summary>
    /// <param name="debris">What <c>--debris</c> names.</param>
    /// <param name="fromFile">Parts that a findings file calls failed; one that is typed as well is as typed.</param>
    /// <param name="found">What was found and seen clean.</param>
    /// <param name="names">The names that may be used.</param>
    public (ImmutableArray<PartFailure> Failures, ImmutableArray<Debris> Asked) Asked(string[] debris, ImmutableArray<PartId> fromFile, IReadOnlyCollection<Finding> found, QuestionNames names)
    {
        ImmutableArray<PartId> bare = [.. alone, .. fromFile.Where(part => !own.ContainsKey(part)).Except(alone)];
        ImmutableArray<Debris> said = [.. own.Values.SelectMany(sheds => sheds.Select(one => one.Debris))];
        if (bare.IsEmpty && own.Count > 0)
        {
            ImmutableArray<Debris> known = QuestionNames.Joined(said, found.Where(finding => finding.Found).Select(finding => finding.Debris));
            foreach (Debris named in debris.Select(name => names.Debris(name)).Where(named => !known.Contains(named)))
                throw new WrongUseException($"--debris {named.Name} is for parts of which --failed does not say what they shed, and every part here says it. Leave it out, or write it with its part: --failed {parts[0]}={named.Name}.");
            return (Failures([], []), names.InOrder(known));
        }

        ImmutableArray<Debris> ofBare = names.Asked(debris, bare, found);
        ImmutableArray<Debris> asked = names.InOrder(QuestionNames.Joined(ofBare, said));
        return (Failures(bare, asked.Length == ofBare.Length ? null : ofBare), asked);
    }

    private ImmutableArray<PartFailure> Failures(ImmutableArray<PartId> bare, ImmutableArray<Debris>? ofBare) =>
    [
        .. parts.Concat(bare).Distinct().SelectMany(part => own.TryGetValue(part, out List<(Debris Debris, ParticleSize? UpTo)>? sheds)
            ? OwnOf(part, sheds)
            : [new PartFailure(part) { Debris = ofBare }]),
    ];

    private static IEnumerable<PartFailure> OwnOf(PartId part, List<(Debris Debris, ParticleSize? UpTo)> sheds) => sheds.Count == 0
        ? [new PartFailure(part) { Debris = [] }]
        : sheds.GroupBy(one => one.UpTo).Select(size => new PartFailure(part) { Debris = [.. size.Select(one => one.Debris)], UpTo = size.Key });

    private void TakeAlone(string text, QuestionNames names)
    {
        foreach (string id in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            PartId part = names.Part(id);
            if (own.ContainsKey(part))
                throw SaysBoth(part);
            Enter(part);
            if (!alone.Contains(part))
                alone.Add(part);
        }
    }

    private void TakeOwn(string text, QuestionNames names)
    {
        string[] sides = text.Split('=', 3, StringSplitOptions.TrimEntries);
        string whole = TextPage.Harmless(text);
        if (sides[0].Length == 0)
            throw new WrongUseException($"--failed {whole} names no part. Write --failed PART={(sides[1].Length == 0 ? "metal" : TextPage.Harmless(sides[1]))}.");
        if (sides[0].Contains(',', StringComparison.Ordinal) || sides.Length > 2)
            throw new WrongUseException($"--failed {whole} names several parts. What a part shed is said for one part at a time: write --failed again for each, for instance --failed compressor=metal --failed belt=rubber.");
        if (sides[1].Length == 0)
            throw new WrongUseException($"--failed {whole} does not say what it shed. Write --failed {TextPage.Harmless(sides[0])}=metal, with the largest piece seen {TextPage.Harmless(sides[0])}=metal:500um, or {TextPage.Harmless(sides[0])}=nothing.");
        PartId part = names.Part(sides[0]);
        if (alone.Contains(part))
            throw SaysBoth(part);
        string[] words = sides[1].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        List<(Debris Debris, ParticleSize? UpTo)> read = [.. words.Where(word => word != Nothing).Select(word => Shed(whole, word, names))];
        bool isKnown = own.TryGetValue(part, out List<(Debris Debris, ParticleSize? UpTo)>? known);
        if (words.Contains(Nothing) && (read.Count > 0 || known is { Count: > 0 }) || isKnown && known!.Count == 0 && read.Count > 0)
            throw new WrongUseException($"{part} cannot have shed nothing and {(read.Count > 0 ? read : known!)[0].Debris.Name}. Leave one of the two out.");
        Enter(part);
        if (!isKnown)
            own[part] = known = [];
        foreach ((Debris debris, ParticleSize? upTo) in read)
        {
            foreach ((_, ParticleSize? other) in known!.Where(one => one.Debris == debris && one.UpTo != upTo))
                throw new WrongUseException($"{part} is said to have shed {debris.Name} {Size(other)} and {Size(upTo)}. Write the largest piece that was seen, once.");
            if (!known!.Contains((debris, upTo)))
                known.Add((debris, upTo));
        }
    }

    private static (Debris Debris, ParticleSize? UpTo) Shed(string whole, string word, QuestionNames names)
    {
        string[] sides = word.Split(':', 2, StringSplitOptions.TrimEntries);
        if (sides[0] == Nothing)
            throw new WrongUseException($"--failed {whole}: what shed nothing has no size. Leave it out.");
        Debris debris = names.Debris(sides[0], besides: Nothing);
        if (sides.Length == 1)
            return (debris, null);
        ParticleSize size = QuestionNames.SizeOf($"--failed {whole}", sides[1], debris);
        return size == ParticleSize.Zero
            ? throw new WrongUseException($"--failed {whole}: the largest piece seen has a size above zero. Leave the size out, or write {Nothing} where nothing was shed.")
            : (debris, size);
    }

    private static string Size(ParticleSize? size) => size is { } said ? FormattableString.Invariant($"of up to {said.Micrometres:0.######} µm") : "of no size said";

    private static WrongUseException SaysBoth(PartId part) =>
        new($"{part} stands in --failed with what it shed and without. Leave one of the two out.");

    private void Enter(PartId part)
    {
        if (!parts.Contains(part))
            parts.Add(part);
    }
}
