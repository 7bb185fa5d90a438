using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Cli;

/// <summary>Turns what a person typed into parts, debris and findings of a family; what is unknown is answered with the nearest names.</summary>
internal sealed class QuestionNames(Family family, Catalogue catalogue)
{
    private static readonly string[] LookWords = ["flakes", "slivers", "grains", "fuzz", "magnetic", "not-magnetic"];

    public PartId Part(string id)
    {
        if (family.Find(new PartId(id)) is { } part)
            return part.Id;
        Part[] repeats = [.. family.Parts.Where(one => one.RepeatOf == id)];
        if (repeats.Length > 0)
            throw new WrongUseException($"{Harmless(id)} stands {repeats.Length} times in {family.Id}. Say which: {repeats[0].Id} to {repeats[^1].Id}.");
        string[] words = id.Split([' ', ';', '+'], StringSplitOptions.RemoveEmptyEntries);
        if (words.Length > 1 && words.All(word => family.Find(new PartId(word)) is not null))
            throw new WrongUseException($"a comma is missing in {Harmless(id)}. Write {string.Join(",", words)}.");
        throw new WrongUseException($"there is no part {Harmless(id)} in {family.Id}. {NearestTo(id, family.Parts.Select(one => one.Id.Value), $"contam parts {family.File} lists them.")}");
    }

    /// <summary>The debris of a name.</summary>
    /// <param name="name">The name.</param>
    /// <param name="besides">A word that could have been meant instead.</param>
    public Debris Debris(string name, string? besides = null) => catalogue.FindDebris(name)
        ?? throw new WrongUseException($"there is no debris {Harmless(name)}. {NearestTo(name, [.. catalogue.Debris.Select(one => one.Name), .. besides is null ? Array.Empty<string>() : [besides]], $"The standard knows {string.Join(", ", catalogue.Debris.Select(one => one.Name))}.")}");

    /// <summary>The debris that were asked for; where none were, what the failed parts shed and what was found.</summary>
    public ImmutableArray<Debris> Asked(string[] typed, ImmutableArray<PartId> failed, IEnumerable<Finding> found)
    {
        if (typed.Length > 0)
            return InOrder(typed.Select(name => Debris(name)));
        ImmutableArray<Debris> shed = InOrder(failed.SelectMany(part => family[part].Sheds).Select(one => one.Debris).Concat(found.Where(finding => finding.Found).Select(finding => finding.Debris)));
        return shed.IsEmpty
            ? throw new WrongUseException($"the family does not say what {(failed.IsEmpty ? "it" : string.Join(", ", failed))} sheds. Name it with --debris, for instance --debris metal.")
            : shed;
    }

    /// <summary><c>PART=DEBRIS[:SIZE][,FORM][,magnetic|not-magnetic]</c>.</summary>
    public Finding Found(string text)
    {
        string[] sides = text.Split('=', 2);
        if (sides.Length < 2 || sides[1].Length == 0)
            throw new WrongUseException($"--found {Harmless(text)} does not say what was found. Write --found {sides[0]}=metal, or --found {sides[0]}=metal:120um.");
        string[] words = sides[1].Split(',', StringSplitOptions.TrimEntries);
        string[] debris = words[0].Split(':', 2);
        var finding = new Finding(Part(sides[0]), Debris(debris[0]), Found: true);
        if (debris.Length == 2)
            finding = finding with { Size = SizeOf($"--found {Harmless(text)}", debris[1], finding.Debris) };
        foreach (string word in words.Skip(1))
            finding = WithLooks(finding, word);
        return finding;
    }

    /// <summary><c>PART[=DEBRIS]</c>: clean of that debris, or of all that were asked for.</summary>
    public IEnumerable<Finding> Clean(string text, ImmutableArray<Debris> asked)
    {
        string[] sides = text.Split('=', 2);
        PartId part = Part(sides[0]);
        return (sides.Length == 2 ? [Debris(sides[1])] : asked).Select(debris => new Finding(part, debris, Found: false));
    }

    /// <summary>Both, one after the other.</summary>
    public static ImmutableArray<Debris> Joined(IEnumerable<Debris> first, IEnumerable<Debris> second) => [.. first.Concat(second).Distinct()];

    /// <summary>Each once, in the order of the catalogue.</summary>
    public ImmutableArray<Debris> InOrder(IEnumerable<Debris> debris)
    {
        var wanted = debris.ToHashSet();
        return [.. catalogue.Debris.Where(wanted.Contains)];
    }

    /// <summary>The size that was typed for a debris.</summary>
    public static ParticleSize SizeOf(string where, string text, Debris debris)
    {
        if (!debris.HasSize)
            throw new WrongUseException($"{where}: {debris.Name} has no size. Leave it out.");
        if (!ParticleSize.TryParse(text, out ParticleSize size, out QuantityError? error))
            throw Typed.Wrong(where, text, Dimension.Length, error);
        return size;
    }

    /// <summary>As <see cref="Found"/> for a part and debris that are known: <c>[SIZE][,FORM][,magnetic|not-magnetic]</c>, in any order.</summary>
    public static Finding Described(Finding found, string text)
    {
        foreach (string word in text.Split([',', ' '], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            found = char.IsAsciiDigit(word[0]) ? found with { Size = SizeOf($"--found {Harmless($"{found.Part}={found.Debris.Name}:{word}")}", word, found.Debris) } : WithLooks(found, word);
        return found;
    }

    private static Finding WithLooks(Finding finding, string word) => word switch
    {
        "flakes" => finding with { Form = DebrisForm.Flakes },
        "slivers" => finding with { Form = DebrisForm.Slivers },
        "grains" => finding with { Form = DebrisForm.Grains },
        "fuzz" => finding with { Form = DebrisForm.Fuzz },
        "magnetic" => finding with { Magnetic = true },
        "not-magnetic" => finding with { Magnetic = false },
        _ => throw new WrongUseException($"{Harmless(word)} says nothing of how debris looks. {NearestTo(word, LookWords, "Write flakes, slivers, grains or fuzz, magnetic or not-magnetic.")}"),
    };

    private static string NearestTo(string name, IEnumerable<string> candidates, string otherwise)
    {
        string[] all = [.. candidates];
        string[] near = all.Where(one => string.Equals(one, name, StringComparison.OrdinalIgnoreCase)).Take(1).ToArray() is [var same] ? [same] : [.. NearName.AllOf(name.ToLowerInvariant(), all, most: 3)];
        return near.Length == 0 ? otherwise : $"Did you mean {string.Join(" or ", near)}? {otherwise}";
    }

    private static string Harmless(string typed) => Reports.Text.TextPage.Harmless(typed);
}
