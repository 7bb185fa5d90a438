using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Flushing;

namespace Contam.Measurement.Wording;

/// <summary>What flow a step that flushes parts of a family needs, as words for the step. What the circuits run through is looked up once, when it is first asked for.</summary>
/// <param name="family">The family.</param>
public sealed class FlushFigures(Family family)
{
    private readonly Lazy<(Fluid Fluid, HashSet<PartId> Parts)[]> circuits = new(() => CircuitsToReckon(family));

    /// <summary>
    /// The least flow that scours every bore of these parts, for instance
    /// <c>at least 34 L/min at 40 °C (Reynolds 4000, 12 mm bore)</c>. Parts that repeat one description are taken to be
    /// flushed side by side, so that the flow divides among those that are given. Parts on several circuits are reckoned on the one that
    /// has most of their bores, the first of equals. The flow is rounded up, to two figures.
    /// </summary>
    /// <param name="parts">The parts that are flushed in one go; order does not matter.</param>
    /// <returns>A clause without a full stop; <c>null</c> where no part says a bore, or no circuit of theirs has a fluid whose viscosity is known at two temperatures.</returns>
    public string? For(ImmutableArray<Part> parts)
    {
        if (!parts.Any(part => part.Bore is not null))
            return null;
        (Fluid Fluid, BoreToFlush[] Bores)? best = null;
        foreach ((Fluid fluid, HashSet<PartId> onCircuit) in circuits.Value)
        {
            BoreToFlush[] bores = [.. CircuitBores.Of(parts.Where(part => onCircuit.Contains(part.Id)))];
            if (bores.Length > (best?.Bores.Length ?? 0))
                best = (fluid, bores);
        }

        return best is { } found ? Sentence(found.Fluid, found.Bores) : null;
    }

    /// <summary>The circuits whose fluid's viscosity is known at two temperatures, each with the parts that it runs through.</summary>
    private static (Fluid Fluid, HashSet<PartId> Parts)[] CircuitsToReckon(Family family)
    {
        var circuits = new List<(Fluid Fluid, HashSet<PartId> Parts)>();
        foreach (Circuit circuit in family.Circuits)
        {
            if (family.Fluids.FirstOrDefault(fluid => fluid.Id == circuit.Fluid) is { Viscosity.Length: >= 2 } fluid)
                circuits.Add((fluid, [.. CircuitBores.OnRuns(family, circuit).Select(part => part.Id)]));
        }

        return [.. circuits];
    }

    // Nobody warms petrol: common practice, no source.
    private static readonly Temperature Cold = Temperature.FromCelsius(20);

    private static bool IsPetrol(Fluid fluid) => (fluid.Sort ?? fluid.Id) == "petrol";

    private static string? Sentence(Fluid fluid, BoreToFlush[] bores)
    {
        if (!ViscosityCurve.Of(fluid).TryGet(out ViscosityCurve? curve, out _))
            return null;
        Temperature at = IsPetrol(fluid) ? Cold : UsualFlush.TemperatureFor(curve);
        if (!curve.At(at).TryGet(out KinematicViscosity viscosity, out _))
            return null;
        BoreToFlush hardest = bores[0];
        foreach (BoreToFlush bore in bores)
            hardest = bore.Bore.Metres * bore.Branches > hardest.Bore.Metres * hardest.Branches ? bore : hardest;
        if (!Flush.Of(new FlushQuestion([hardest], viscosity)).TryGet(out FlushAnswer? answer, out _))
            return null;
        string bored = hardest.Branches == 1
            ? $"{Expect.Show(hardest.Bore.Millimetres)} mm bore"
            : $"{Expect.Show(hardest.Branches)} bores of {Expect.Show(hardest.Bore.Millimetres)} mm";
        return $"at least {Expect.Show(UpToTwoFigures(answer.Flow.LitresPerMinute))} L/min at {Expect.Show(at.Celsius)} °C (Reynolds {Expect.Show(answer.WantedReynolds)}, {bored})";
    }

    /// <summary>Rounded up, so that the figure said is never less than the figure needed.</summary>
    private static double UpToTwoFigures(double value)
    {
        double step = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return Math.Ceiling((value / step) - 1e-9) * step;
    }
}
