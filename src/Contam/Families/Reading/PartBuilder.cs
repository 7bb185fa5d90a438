using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Makes the parts of a family from what its files say of them.</summary>
internal sealed class PartBuilder(PartTable table, Catalogue catalogue, Allowance allowance, ProblemList problems)
{
    private readonly PartNames names = new(table, allowance, problems);
    private readonly ImmutableArray<Part>.Builder parts = ImmutableArray.CreateBuilder<Part>(table.Count);

    /// <summary>
    /// The parts, repeats written out, in file order. Where a problem was raised a part may be missing, so that the list is of use only where
    /// there was none.
    /// </summary>
    public ImmutableArray<Part> Build()
    {
        foreach (PartGroup group in table.Groups)
        {
            // A fault in a repeated part is one fault, not one for each number.
            for (int number = 1; number <= group.Count; number++)
            {
                int before = problems.Count;
                Add(group, number);
                if (problems.Count > before)
                    break;
            }
        }

        return parts.DrainToImmutable();
    }

    private void Add(PartGroup group, int number)
    {
        var said = new Said(group.SaidOf(number));
        SourceSpan place = group.Place;
        Kind kind = KindOf(said, place);
        string id = group.IdOf(number);
        ImmutableArray<string> seals = SealsOf(group, number, said, kind);
        parts.Add(new Part(new PartId(id), kind, place)
        {
            Name = NameOf(group, number, said),
            RepeatOf = group.IsRepeated ? group.BaseId : null,
            RepeatIndex = group.IsRepeated ? number : 0,
            Sheds = ShedsOf(said),
            Holds = HoldsOf(said),
            HasAbsoluteRating = said.Get(PartKeys.Rating, false),
            RatingIsSaid = said.Find(PartKeys.Rating) is not null,
            HasBypass = said.Get(PartKeys.Bypass, false),
            Passage = said.Find(PartKeys.Passage),
            Clearance = said.Find(PartKeys.Clearance),
            ClearedBy = said.Get(KindPartKeys.ClearedBy, kind.ClearedBy),
            TestAt = said.Get(KindPartKeys.TestAt, kind.TestAt),
            IsRemovable = said.Get(PartKeys.Removable, kind.IsRemovable),
            Access = Named(PartKeys.Access),
            StandsOn = Named(CarrierKeys.StandsOn),
            RidesOn = said.TryGet(CarrierKeys.RidesOn, out Located<string> carrier, out Scope? carrierScope) ? names.One(group, number, carrier, CarrierKeys.RidesOn, carrierScope) : null,
            Together = said.TryGet(CarrierKeys.Together, out Located<ImmutableArray<Located<string>>> set, out Scope? setScope) ? names.Others(group, number, set, setScope) : [],
            Assembly = said.TryGet(CarrierKeys.Assembly, out Located<string> whole, out Scope? wholeScope) ? names.One(group, number, whole, CarrierKeys.Assembly, wholeScope) : null,
            Seals = seals,
            Inspect = InspectOf(group, number, said),
            SendOut = SendOutOf(said),
            Minutes = said.TryGet(PartKeys.Minutes, out Located<Form> minutes, out _) ? MinutesKeys.Read(minutes.Value) : TaskMinutes.None,
            Lead = said.Find(PartKeys.Lead),
            Volume = said.Find(PartKeys.Volume),
            Bore = said.Find(PartKeys.Bore),
            Length = said.Find(PartKeys.Length),
            Meant = said.TryGet(MeantKeys.Meant, out Located<ImmutableArray<Entry<string, string>>> meant, out _) ? MeantKeys.Read(meant.Value, problems) : [],
        });

        ImmutableArray<PartId> Named(Key<ImmutableArray<Located<string>>> key) =>
            said.TryGet(key, out Located<ImmutableArray<Located<string>>> written, out Scope? scope) ? names.All(group, number, written, scope) : [];
    }

    /// <summary>The kind; one without a name where it is not known, so that the rest of the part is looked at all the same.</summary>
    private Kind KindOf(Said said, SourceSpan place)
    {
        if (!said.TryGet(PartKeys.Kind, out Located<string> name, out _))
            return new Kind("", place);
        if (catalogue.FindKind(name.Value) is Kind kind)
            return kind;
        problems.Add(FamilyProblems.UnknownKind(name.Place, name.Value, problems.NearTo(name.Value, catalogue.Kinds.Select(known => known.Name))));
        return new Kind("", place);
    }

    private static string NameOf(PartGroup group, int number, Said said)
    {
        string name = said.TryGet(PartKeys.Name, out Located<string> given, out Scope? by) && given.Value.Length > 0
            ? ToldApart(given.Value, by.Prefix)
            : char.ToUpperInvariant(group.BaseId[0]) + group.BaseId[1..].Replace('-', ' ');
        return group.IsRepeated ? string.Create(CultureInfo.InvariantCulture, $"{name} {number}") : name;
    }

    /// <summary>A name as the file that says it is used: with its prefix before it, since a module may be used twice and people go by names.</summary>
    private static string ToldApart(string name, string prefix)
    {
        string words = prefix.Replace('-', ' ').Trim();
        if (words.Length == 0)
            return name;
        // A capital alone or before another, as in `V-belt` or `ECU`, is no beginning of a sentence.
        bool begins = name.Length > 1 && char.IsLower(name[1]);
        return $"{char.ToUpperInvariant(words[0])}{words[1..]} {(begins ? char.ToLowerInvariant(name[0]) + name[1..] : name)}";
    }

    private ImmutableArray<Shed> ShedsOf(Said said)
    {
        if (!said.TryGet(PartKeys.Sheds, out Located<ImmutableArray<Entry<string, Form>>> entries, out _))
            return [];
        var sheds = ImmutableArray.CreateBuilder<Shed>();
        foreach (Entry<string, Form> entry in entries.Value)
        {
            if (!TryFindDebris(entry.Key, out Debris? debris) || entry.Value.Value is not Form form)
                continue;
            if (!debris.HasSize && form.Has(PartKeys.UpTo))
            {
                problems.Add(FamilyProblems.NoSize(form.KeyPlace(PartKeys.UpTo), debris.Name, PartKeys.UpTo.Name));
                continue;
            }

            sheds.Add(new Shed(debris, form.Get(PartKeys.Likely, Likelihood.Rare), form.Get(PartKeys.UpTo, ParticleSize.Unlimited))
            {
                Magnetic = form.Find(PartKeys.Magnetic),
                Form = form.Find(PartKeys.Form),
                Place = entry.Key.Place,
            });
        }

        return sheds.DrainToImmutable();
    }

    private ImmutableArray<Hold> HoldsOf(Said said)
    {
        if (!said.TryGet(PartKeys.Holds, out Located<ImmutableArray<Entry<string, HoldSaid>>> entries, out _))
            return [];
        var holds = ImmutableArray.CreateBuilder<Hold>();
        foreach (Entry<string, HoldSaid> entry in entries.Value)
        {
            if (!TryFindDebris(entry.Key, out Debris? debris) || !entry.IsSound)
                continue;
            if (!debris.HasSize && !entry.Value.Value.IsAll)
                problems.Add(FamilyProblems.HeldWhollyOrNot(entry.Value.Place, debris.Name));
            else
                holds.Add(new Hold(debris, entry.Value.Value.Above, entry.Key.Place));
        }

        return holds.DrainToImmutable();
    }

    private ImmutableArray<string> SealsOf(PartGroup group, int number, Said said, Kind kind)
    {
        if (!said.TryGet(PartKeys.Seals, out Located<ImmutableArray<Located<string>>> written, out _))
            return kind.Seals;
        if (!allowance.Take(written.Value.Length, written.Place))
            return [];
        var seals = ImmutableArray.CreateBuilder<string>(written.Value.Length);
        foreach (Located<string> seal in written.Value)
        {
            bool isNumbered = seal.Value.Contains('#', StringComparison.Ordinal);
            if (isNumbered && !group.IsRepeated)
                problems.Add(FamilyProblems.SealNotRepeated(seal.Place, seal.Value, group.Key));
            seals.Add(isNumbered ? seal.Value.Replace("#", number.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal) : seal.Value);
        }

        return seals.DrainToImmutable();
    }

    private Inspection? InspectOf(PartGroup group, int number, Said said) => said.TryGet(PartKeys.Inspect, out Located<Form> look, out Scope? scope)
        ? new Inspection(
            look.Value.Find(PartKeys.LookMinutes), look.Value.Get(PartKeys.Shows, Shows.Poor), look.Value.Get(PartKeys.How, ""), look.Place)
        {
            Access = look.Value.Locate(PartKeys.LookAccess) is { } access ? names.All(group, number, access, scope) : null,
            UsesUp = look.Value.Find(PartKeys.UsesUp),
            TakesOff = look.Value.Get(PartKeys.TakesOff, false),
        }
        : null;

    private static SendOut? SendOutOf(Said said) => said.TryGet(PartKeys.SendOut, out Located<Form> away, out _)
        ? new SendOut(away.Value.Find(PartKeys.Days), away.Value.Get(PartKeys.Who, ""), away.Place)
        : null;

    private bool TryFindDebris(Located<string> name, [NotNullWhen(true)] out Debris? debris)
    {
        debris = catalogue.FindDebris(name.Value);
        if (debris is null)
            problems.Add(FamilyProblems.UnknownDebris(name.Place, name.Value, problems.NearTo(name.Value, catalogue.Debris.Select(known => known.Name)), catalogue.Debris.Select(known => known.Name)));
        return debris is not null;
    }

    /// <summary>What several forms say of one part; the first that has a key counts, with the scope that its ids are looked for in.</summary>
    private readonly record struct Said(ImmutableArray<(Scope Scope, Form Form)> Forms)
    {
        public bool TryGet<T>(Key<T> key, out Located<T> value, [NotNullWhen(true)] out Scope? scope)
            where T : notnull
        {
            foreach ((Scope from, Form form) in Forms)
            {
                if (!form.Has(key))
                    continue;
                Located<T>? found = form.Locate(key);
                value = found ?? default;
                scope = from;
                return found is not null;
            }

            value = default;
            scope = null;
            return false;
        }

        public T? Find<T>(Key<T> key)
            where T : struct => TryGet(key, out Located<T> value, out _) ? value.Value : null;

        public T Get<T>(Key<T> key, T otherwise)
            where T : struct => Find(key) ?? otherwise;
    }
}
