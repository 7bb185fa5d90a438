using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Flushing;
using Contam.Problems;

namespace Contam.Cli;

/// <summary>Reads what was typed about a flush and asks the sums.</summary>
internal sealed class FlushSums(ParseResult call, FlushArguments arguments, Family family)
{
    private readonly List<string> assumed = [];

    public CircuitFlush Answer()
    {
        Circuit circuit = CircuitOf(call.GetValue(arguments.Circuit)!);
        ImmutableArray<BoreToFlush> bores = BoresOf(circuit);
        FlushFluid fluid = FlushFluid.Of(family, circuit, call.GetValue(arguments.Temperature), call.GetValue(arguments.Viscosity));
        FlowRate? flow = call.GetValue(arguments.Flow) is { } text ? Positive(Typed.Flow("--flow", text)) : null;
        FlushAnswer answer = Typed.Take(Flush.Of(new FlushQuestion(bores, fluid.Viscosity)
        {
            WantedReynolds = call.GetValue(arguments.Re) is { } re ? Typed.Number("--re", re, "4000") : BoreFlow.TurbulentFrom,
            Flow = flow,
            Curve = fluid.Curve,
            Density = fluid.Density,
        }));
        Assume(bores, fluid);
        Volume? system = SystemOf(circuit);
        return new CircuitFlush(circuit.Name, fluid.Name, fluid.At, fluid.Viscosity, answer)
        {
            FlowWasGiven = flow is not null,
            System = system,
            Dilution = DilutionOf(system, answer.Flow),
            Filter = FilterOf(system, answer.Flow),
            Assumed = [.. assumed],
        };
    }

    private Circuit CircuitOf(string name)
    {
        if (family.Circuits.FirstOrDefault(circuit => circuit.Name == name) is { } found)
            return found;
        throw new WrongUseException($"there is no circuit {Wording.Quoted(name)}.{Typed.Near(name, family.Circuits.Select(circuit => circuit.Name))} {family.Id} has {Wording.AllOf(family.Circuits.Select(circuit => circuit.Name))}.");
    }

    private ImmutableArray<BoreToFlush> BoresOf(Circuit circuit)
    {
        ImmutableArray<BoreToFlush> all = CircuitBores.Of(family, circuit);
        if (all.IsEmpty)
            throw new WrongUseException($"no part of {circuit.Name} says its bore in {family.Id}. A flush needs one at least: `bore: 12 mm` in the family file.");
        string[] wanted = call.GetValue(arguments.Parts) ?? [];
        if (wanted.Length == 0)
            return all;
        var names = new QuestionNames(family, new Catalogue([], []));
        var chosen = wanted.SelectMany(id => family.Parts.Any(part => part.RepeatOf == id) ? family.Parts.Where(part => part.RepeatOf == id).Select(part => part.Id) : [names.Part(id)]).ToHashSet();
        foreach (PartId id in chosen.Order(Comparer<PartId>.Create((left, right) => string.CompareOrdinal(left.Value, right.Value))))
        {
            if (!all.Any(bore => bore.Part == id))
                throw new WrongUseException($"{id} is not on {circuit.Name} or says no bore. {circuit.Name} has bores at {Wording.AllOf(all.Select(bore => bore.Part.Value))}.");
        }

        return [.. all.Where(bore => chosen.Contains(bore.Part))];
    }

    private void Assume(ImmutableArray<BoreToFlush> bores, FlushFluid fluid)
    {
        assumed.Add(bores.Any(bore => bore.Branches > 1)
            ? "parts that repeat one another share the flow evenly, and every other part has all of it"
            : "every part has all of the flow");
        assumed.Add("where the circuit forks into different parts each gets less than is said here: shut the others, and flush such branches one at a time");
        if (bores.Any(bore => bore.Length is not null) && fluid.Density is not null)
            assumed.Add("the pressure taken is that of a smooth straight bore; bends and fittings take more");
        if (fluid.Curve is { } curve && !curve.Spans(fluid.At))
            assumed.Add("the temperature lies outside those at which the viscosity was given; it is carried on by ASTM D341, which holds for oils and fuels and not for water");
    }

    private Volume? SystemOf(Circuit circuit)
    {
        if (call.GetValue(arguments.Volume) is { } text)
            return Typed.Volume("--volume", text);
        Volume? held = CircuitBores.VolumeOf(family, circuit);
        bool isUsed = call.GetValue(arguments.Dilution) is not null || call.GetValue(arguments.Beta) is not null;
        if (held is null && isUsed)
            throw new WrongUseException($"no part of {circuit.Name} says what it holds in {family.Id}. Say what goes round: --volume 9L.");
        if (isUsed)
            assumed.Add("the volume is what the circuit's parts say they hold; hoses that say none, and the rig's own tank, come on top: say the whole with --volume");
        return held;
    }

    private DilutionAnswer? DilutionOf(Volume? system, FlowRate flow)
    {
        if (call.GetValue(arguments.Dilution) is not { } text)
            return null;
        Share left = Typed.Share("--dilution", text);
        double volumes = Typed.Take(Dilution.VolumesWhenMixed(left));
        return new DilutionAnswer(left, volumes, Typed.Take(Dilution.Time(volumes, system!.Value, flow)));
    }

    private FilterAnswer? FilterOf(Volume? system, FlowRate flow)
    {
        string?[] said = [call.GetValue(arguments.Beta), call.GetValue(arguments.FromCode), call.GetValue(arguments.ToCode)];
        if (said.All(one => one is null))
            return null;
        if (said is not [{ } beta, { } from, { } to])
            throw new WrongUseException("--beta, --from-code and --to-code belong together: what the filter does, how clean the fluid is, and how clean it must be. For instance --beta 200 --from-code 22/20/17 --to-code 18/16/13.");
        BetaRatios filter = BetaOf(beta);
        (int At4, int At6, int At14) now = Typed.Take(CodeText.ReadWhole(from));
        (int At4, int At6, int At14) wanted = Typed.Take(CodeText.ReadWhole(to));
        ParticleCounts counts = Typed.Take(ParticleCounts.MostOf(now));
        return new FilterAnswer(now, wanted, filter, Typed.Take(FilterTime.ToCode(counts, wanted, filter, system!.Value, flow)));
    }

    private BetaRatios BetaOf(string text)
    {
        if (!text.Contains(':', StringComparison.Ordinal))
        {
            assumed.Add($"beta {text} is taken as measured at 4 µm(c), so that it holds for larger sizes too");
            return new BetaRatios(Typed.Number("--beta", text, "200"), null, null);
        }

        var ratios = new BetaRatios(null, null, null);
        foreach (string one in text.Split(',', StringSplitOptions.TrimEntries))
        {
            string[] sides = one.Split(':');
            double beta = sides.Length == 2 ? Typed.Number("--beta", sides[1], "6:200") : double.NaN;
            ratios = sides[0] switch
            {
                _ when sides.Length != 2 => throw SizeWrong(one),
                "4" => ratios with { At4 = beta },
                "6" => ratios with { At6 = beta },
                "14" => ratios with { At14 = beta },
                _ => throw SizeWrong(one),
            };
        }

        return ratios;
    }

    private static WrongUseException SizeWrong(string text) =>
        new($"--beta: a size of 4, 6 or 14 µm(c) and a beta were expected, for instance 6:200, got {Wording.Quoted(text)}.");

    private static FlowRate Positive(FlowRate flow) =>
        flow.CubicMetresPerSecond > 0 ? flow : throw new WrongUseException("--flow: more than 0 L/min was expected.");
}
