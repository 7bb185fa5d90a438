using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;

namespace Contam.Support.Notation;

/// <summary>Reads the attributes of a part; the grammar stands at <see cref="CaseReader"/>.</summary>
internal static class PartReader
{
    internal static Part Read(CaseDraft draft, PartId id, string[] attributes)
    {
        Kind? said = ShopFloor.Kinds.FirstOrDefault(kind => attributes.Contains(kind.Name));
        Kind kind = said ?? (attributes.Contains("inplace") ? ShopFloor.Block : ShopFloor.Part);
        var part = new Part(id, kind, ShopFloor.Written(1));
        var words = new Queue<string>(attributes);
        while (words.TryDequeue(out string? word))
            part = word.Contains('=', StringComparison.Ordinal) ? WithValue(draft, part, word) : WithWord(draft, part, word, words);
        return part;
    }

    private static Part WithWord(CaseDraft draft, Part part, string word, Queue<string> next) => word switch
    {
        "part" or "filter" or "block" => part,
        "inplace" => part with { IsRemovable = false },
        "removable" => part with { IsRemovable = true },
        "critical" => part with { ClearedBy = ClearedBy.Nothing },
        "two-looks" => part with { ClearedBy = ClearedBy.TwoLooks },
        "abs" => part with { HasAbsoluteRating = true, RatingIsSaid = true },
        "nominal" => part with { RatingIsSaid = true },
        "bypass" => part with { HasBypass = true },
        "repeat" => Repeated(part),
        "sheds" => part with { Sheds = part.Sheds.Add(ReadShed(draft, next)) },
        "holds" => part with { Holds = part.Holds.Add(ReadHold(draft, next)) },
        _ => throw new FormatException($"'{word}' of '{part.Id}' is not what a part can say"),
    };

    private static Part WithValue(CaseDraft draft, Part part, string word)
    {
        (string key, string value) = DirectiveReader.KeyAndValue(word);
        return key switch
        {
            "passage" => part with { Passage = DirectiveReader.Size(value) },
            "clearance" => part with { Clearance = DirectiveReader.Size(value) },
            "access" => part with { Access = [.. value.Split('+').Select(id => draft.Known(new PartId(id)))] },
            "seals" => part with { Seals = [.. value.Split('+')] },
            "sendout" => part with { SendOut = new SendOut(value.Length == 0 ? null : DirectiveReader.Number(value), "workshop", null) },
            "look" => part with { Inspect = Look(value) },
            _ => part with { Minutes = DirectiveReader.Minutes(part.Minutes, key, value) },
        };
    }

    private static Part Repeated(Part part)
    {
        int dash = part.Id.Value.LastIndexOf('-');
        if (dash < 1 || !int.TryParse(part.Id.Value[(dash + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out int index))
            throw new FormatException($"'{part.Id}' has no number to be a repeat by");
        return part with { RepeatOf = part.Id.Value[..dash], RepeatIndex = index };
    }

    private static Shed ReadShed(CaseDraft draft, Queue<string> next)
    {
        Debris debris = ReadDebris(draft, next);
        ParticleSize upTo = next.TryPeek(out string? word) && char.IsAsciiDigit(word[0])
            ? DirectiveReader.Size(next.Dequeue())
            : ParticleSize.Unlimited;
        Likelihood likely = next.TryPeek(out word) && word is "rare" or "occasional"
            ? Enum.Parse<Likelihood>(next.Dequeue(), ignoreCase: true)
            : Likelihood.Common;
        return new Shed(debris, likely, upTo);
    }

    private static Hold ReadHold(CaseDraft draft, Queue<string> next)
    {
        Debris debris = ReadDebris(draft, next);
        if (!next.TryDequeue(out string? above))
            throw new FormatException($"what of {debris.Name} does it hold?");
        return new Hold(debris, above == "all" ? ParticleSize.Zero : DirectiveReader.Size(above), null);
    }

    private static Debris ReadDebris(CaseDraft draft, Queue<string> next) =>
        next.TryDequeue(out string? name) ? draft.DebrisOf(name) : throw new FormatException("a debris is due");

    private static Inspection Look(string value)
    {
        string[] words = value.Split(':');
        if (words.Length > 2 || !Enum.TryParse(words[0], ignoreCase: true, out Shows shows))
            throw new FormatException($"'{value}' is not how a look can show");
        return new Inspection(words.Length == 2 ? DirectiveReader.Number(words[1]) : null, shows, "", null);
    }
}
