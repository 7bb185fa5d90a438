using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Measurement.Gauging;

/// <summary>One reading of a dial while a part turns under it.</summary>
/// <param name="At">How far the part has been turned. Any turn: 370° is the same place as 10°.</param>
/// <param name="Reading">What the dial shows; plus is outward.</param>
public readonly record struct RunOutReading(Angle At, Length Reading);

/// <summary>
/// How a part runs out at one place along its length.
/// </summary>
/// <param name="TotalIndicatedReading">Largest less smallest reading: what a <c>run-out</c> limit is held against. Readings at stated places can miss the very top, so it is the least that the part does.</param>
/// <param name="Shape">What the run-out is made of; <c>null</c> where the readings do not tell.</param>
/// <param name="NoShapeBecause">Why they do not tell; <c>null</c> exactly where there is a shape.</param>
public sealed record RunOut(Length TotalIndicatedReading, TurnShape? Shape, string? NoShapeBecause)
{
    /// <summary>How many places round the turn the shape needs.</summary>
    public const int PlacesForShape = 8;

    /// <summary>The run-out from readings at equal steps round one turn, the first at 0, and none repeated at 360°.</summary>
    /// <param name="readings">At least two.</param>
    public static Sum<RunOut> Of(ImmutableArray<Length> readings) =>
        Of(readings.IsDefault ? [] : [.. readings.Select((reading, i) => new RunOutReading(new Angle(Math.Tau * i / readings.Length), reading))]);

    /// <summary>
    /// The run-out from readings at stated angles, in any order. With eight or more places round the turn also its shape, by least squares
    /// (for equal steps that is the discrete Fourier transform); the readings are too badly spread for it where an error in one of them
    /// would count more than twice as much in some direction as it would with equal steps.
    /// </summary>
    /// <param name="readings">At least two.</param>
    public static Sum<RunOut> Of(ImmutableArray<RunOutReading> readings)
    {
        int given = readings.IsDefault ? 0 : readings.Length;
        if (given < 2)
            return new Fault(FormattableString.Invariant($"run-out needs at least 2 readings; {given} given"));
        for (int i = 0; i < readings.Length; i++)
        {
            Fault? fault = Expect.Finite(FormattableString.Invariant($"reading {i + 1}"), readings[i].Reading.Millimetres, "mm")
                ?? Expect.Finite(FormattableString.Invariant($"the angle of reading {i + 1}"), readings[i].At.Degrees, "°");
            if (fault is not null)
                return fault;
        }

        var total = new Length(readings.Max(one => one.Reading.Metres) - readings.Min(one => one.Reading.Metres));
        if (Expect.Computable("the run-out", total.Metres) is { } beyond)
            return beyond;
        int places = TurnFit.PlacesRoundTheTurn(readings);
        if (places < PlacesForShape)
        {
            return new RunOut(total, null, FormattableString.Invariant(
                $"the high spot and the ovality need readings at {PlacesForShape} places or more round the turn; {places} given"));
        }

        TurnShape? shape = TurnFit.Of(readings, total);
        if (Expect.Computable("the shape", shape is null ? 0 : shape.OncePerTurn.Metres + shape.Ovality.Metres + shape.Residual.Metres) is { } tooLarge)
            return tooLarge;
        return shape is null
            ? new RunOut(total, null, "the readings are too badly spread round the turn to tell the high spot from the ovality; equal steps were expected")
            : new RunOut(total, shape, null);
    }
}
