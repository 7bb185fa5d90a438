using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Treatment.Reading;

/// <summary>Makes a standard from what its file says.</summary>
internal sealed partial class StandardBuilder
{
    private readonly Form form;
    private readonly ProblemList problems;
    private readonly ImmutableArray<Kind> kinds;
    private readonly ImmutableArray<Debris> debris;
    private readonly Catalogue known;

    /// <summary>For a file, with what the standards below it know.</summary>
    public StandardBuilder(Form form, Catalogue below, ProblemList problems)
    {
        this.form = form;
        this.problems = problems;
        kinds = ReadKinds();
        debris = ReadDebris();
        known = new Catalogue([.. below.Kinds, .. kinds], [Debris.Metal, Debris.Rubber, Debris.Water, .. below.Debris, .. debris])
        {
            Methods = [.. below.Methods, .. form.Get(TextKeys.Methods, []).Select(method => method.Value.Get(TextKeys.Id, ""))],
        };
    }

    /// <summary>The standard. Of use only where no problem was raised.</summary>
    public ShopStandard Build() => new()
    {
        Id = form.Get(StandardKeys.Standard, ""),
        Title = form.Get(StandardKeys.Title, ""),
        Sha256 = form.Sheet.Source.Sha256,
        CleanFindings = form.Find(StandardKeys.CleanFindings) is bool accepts ? (accepts ? CleanFindings.Accept : CleanFindings.Never) : null,
        Kinds = kinds,
        Debris = debris,
        Rules = ReadRules(),
        PassesOn = ReadPassesOn(),
        Times = ReadTimes(),
        Cautions = ReadCautions(),
        Texts = ReadTexts(),
        Methods = ReadMethods(),
        Frame = ReadFrame(),
        GasTestAtMost = form.Find(StandardKeys.GasTestAtMost),
        WorkingDay = form.Find(StandardKeys.WorkingDay),
        FirstRunningHours = form.Find(StandardKeys.FirstRunningHours),
    };

    private ImmutableArray<Kind> ReadKinds()
    {
        var read = ImmutableArray.CreateBuilder<Kind>();
        foreach (Entry<string, Form> entry in form.Get(StandardKeys.Kinds, []))
        {
            // A kind whose keys do not fit is still known, so that what names it is not told as well.
            if (entry.Value.Value is not Form kind)
            {
                read.Add(new Kind(entry.Key.Value, entry.Key.Place));
                continue;
            }

            read.Add(new Kind(entry.Key.Value, entry.Key.Place)
            {
                About = kind.Get(KindKeys.About, ""),
                IsRemovable = kind.Get(KindKeys.Removable, false),
                IsFilter = kind.Get(KindKeys.Filter, false),
                JoinsFluids = kind.Get(KindKeys.JoinsFluids, false),
                FluidMayEnd = kind.Get(KindKeys.FluidMayEnd, false),
                IsReservoir = kind.Get(KindKeys.Reservoir, false),
                ClearedBy = kind.Get(KindPartKeys.ClearedBy, ClearedBy.OneLook),
                TestAt = kind.Get(KindPartKeys.TestAt, TestAt.Bench),
                LookUsesUp = kind.Get(KindKeys.LookUsesUp, false),
                LookOpens = kind.Get(KindKeys.LookOpens, true),
                IsCarried = kind.Get(KindKeys.Carried, false),
                IsRenewedWhenOut = kind.Get(KindKeys.RenewedWhenOut, false),
                Measures = kind.TryGet(KindKeys.Measures, out ImmutableArray<Located<Measure>> measures) ? [.. measures.Select(measure => measure.Value)] : null,
                Minutes = kind.TryGet(KindKeys.Minutes, out Form? minutes) ? MinutesKeys.Read(minutes) : TaskMinutes.None,
                Seals = [.. kind.Get(KindKeys.Seals, []).Select(seal => seal.Value)],
            });
        }

        return read.DrainToImmutable();
    }

    private ImmutableArray<Debris> ReadDebris()
    {
        var read = ImmutableArray.CreateBuilder<Debris>();
        foreach (Entry<string, Form> entry in form.Get(StandardKeys.Debris, []))
        {
            string name = entry.Key.Value;
            if (name == Debris.Metal.Name || name == Debris.Rubber.Name || name == Debris.Water.Name)
                problems.Add(StandardProblems.BuiltInDebris(entry.Key.Place, name));
            else
                read.Add(new Debris(name, entry.Value.Value?.Get(StandardKeys.HasSize, true) ?? true, entry.Value.Value?.Get(StandardKeys.Hard, false) ?? false));
        }

        return read.DrainToImmutable();
    }

    private ImmutableArray<Rule> ReadRules()
    {
        var read = ImmutableArray.CreateBuilder<Rule>();
        var firstFor = new Dictionary<RuleFor, Rule>();
        foreach (Located<Form> written in form.Get(StandardKeys.Rules, []))
        {
            Form rule = written.Value;
            if (!rule.TryGet(StandardKeys.RuleFor, out Form? target))
                continue;
            RuleFor ruleFor = RuleForOf(target);
            var made = new Rule(
                ruleFor,
                Treatments(rule, StandardKeys.Exposed),
                Treatments(rule, StandardKeys.Guarded),
                Treatments(rule, StandardKeys.Failed),
                rule.Get(StandardKeys.Because, ""),
                rule.Place);
            if (ruleFor == new RuleFor(null, null, null))
                continue;
            if (firstFor.TryAdd(ruleFor, made))
                read.Add(made);
            else if (!SaysTheSame(firstFor[ruleFor], made))
                problems.Add(StandardProblems.RulesDiffer(rule.ValuePlace(StandardKeys.RuleFor), Phrase(ruleFor), firstFor[ruleFor].Place));
        }

        return read.DrainToImmutable();
    }

    private ImmutableArray<PassesOn> ReadPassesOn()
    {
        var read = ImmutableArray.CreateBuilder<PassesOn>();
        var firstFor = new Dictionary<RuleFor, PassesOn>();
        foreach (Located<Form> written in form.Get(StandardKeys.PassesOn, []))
        {
            if (!written.Value.TryGet(StandardKeys.ShareFor, out Form? target))
                continue;
            var made = new PassesOn(RuleForOf(target), written.Value.Get(StandardKeys.Share, 1), written.Value.Place);
            if (made.For == new RuleFor(null, null, null))
                continue;
            if (firstFor.TryAdd(made.For, made))
                read.Add(made);
            else if (firstFor[made.For].Share != made.Share)
                problems.Add(StandardProblems.SharesDiffer(written.Value.ValuePlace(StandardKeys.ShareFor), Phrase(made.For), firstFor[made.For].Place));
        }

        return read.DrainToImmutable();
    }

    private ImmutableArray<(string Kind, TaskMinutes Minutes)> ReadTimes()
    {
        var read = ImmutableArray.CreateBuilder<(string, TaskMinutes)>();
        foreach (Entry<string, Form> entry in form.Get(StandardKeys.Times, []))
        {
            if (KindOf(entry.Key) is string kind && entry.Value.Value is Form minutes)
                read.Add((kind, MinutesKeys.Read(minutes)));
        }

        return read.DrainToImmutable();
    }

    private ImmutableArray<CautionRule> ReadCautions()
    {
        var read = ImmutableArray.CreateBuilder<CautionRule>();
        foreach (Located<Form> written in form.Get(StandardKeys.Cautions, []))
        {
            BearsOn target = BearsOnOf(written.Value, StandardKeys.CautionFor);
            read.Add(new CautionRule(
                target,
                written.Value.Get(StandardKeys.CautionSay, ""),
                written.Value.Get(StandardKeys.CautionSource, "common practice, no source"),
                written.Place));
        }

        return read.DrainToImmutable();
    }

    private RuleFor RuleForOf(Form target) => new(
        target.TryGet(StandardKeys.ForPart, out string? part) ? part : null,
        KindOf(target.Locate(StandardKeys.ForKind)),
        DebrisOf(target.Locate(StandardKeys.ForDebris)));

    private BearsOn BearsOnOf(Form written, Key<Form> key) => !written.TryGet(key, out Form? target)
        ? BearsOn.Everything
        : new BearsOn(
            target.TryGet(StandardKeys.ForCircuit, out string? circuit) ? circuit : null,
            target.TryGet(StandardKeys.ForFluid, out string? fluid) ? fluid : null,
            target.Find(StandardKeys.ForTreatment),
            target.Find(StandardKeys.ForAction),
            KindOf(target.Locate(StandardKeys.ForKind)),
            DebrisOf(target.Locate(StandardKeys.ForDebris)))
        {
            Has = target.TryGet(StandardKeys.ForHas, out string? has) ? has : null,
            Machine = target.TryGet(StandardKeys.ForMachine, out string? machine) ? machine : null,
        };

    private string? KindOf(Located<string>? written)
    {
        if (written is Located<string> name && known.FindKind(name.Value) is null && Sections.IsWhole(form, StandardKeys.Kinds))
            problems.Add(FamilyProblems.UnknownKind(name.Place, name.Value, problems.NearTo(name.Value, known.Kinds.Select(kind => kind.Name))));
        return written?.Value;
    }

    private string? DebrisOf(Located<string>? written)
    {
        if (written is Located<string> name && known.FindDebris(name.Value) is null && Sections.IsWhole(form, StandardKeys.Debris))
            problems.Add(FamilyProblems.UnknownDebris(name.Place, name.Value, problems.NearTo(name.Value, known.Debris.Select(sort => sort.Name)), known.Debris.Select(sort => sort.Name)));
        return written?.Value;
    }

    private static ImmutableArray<TreatmentKind>? Treatments(Form rule, Key<ImmutableArray<Located<TreatmentKind>>> key) =>
        rule.TryGet(key, out ImmutableArray<Located<TreatmentKind>> written) ? [.. written.Select(treatment => treatment.Value).Order()] : null;

    private static bool SaysTheSame(Rule one, Rule other) =>
        AreSame(one.Exposed, other.Exposed) && AreSame(one.Guarded, other.Guarded) && AreSame(one.Failed, other.Failed)
        && one.Because == other.Because;

    // Arrays of equal contents are not equal by themselves.
    private static bool AreSame(ImmutableArray<TreatmentKind>? one, ImmutableArray<TreatmentKind>? other) =>
        one is null || other is null ? one is null && other is null : one.Value.SequenceEqual(other.Value);

    private static string Phrase(RuleFor target)
    {
        var words = new List<string>();
        if (target.Part is string part)
            words.Add("the part " + Wording.Quoted(part));
        if (target.Kind is string kind)
            words.Add("the kind " + Wording.Quoted(kind));
        if (target.Debris is string debris)
            words.Add("the debris " + Wording.Quoted(debris));
        return Wording.AllOf(words);
    }
}
