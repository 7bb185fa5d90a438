using Contam.Families.Quantities;

namespace Contam.Measurement.Gauging;

/// <summary>
/// What a run-out is made of: reading = middle + e·cos(θ − highSpot) + c·cos 2(θ − ovalHighSpot) + what is left.
/// </summary>
/// <param name="OncePerTurn">e: how far the centre is off, by eccentricity or a bend. Alone it reads 2·e in all.</param>
/// <param name="HighSpot">Where it is highest, from 0 to below 360°; <c>null</c> where there is nothing once a turn.</param>
/// <param name="Ovality">c: how far the section is oval. Alone it reads 2·c in all, and the largest and smallest diameter differ by 4·c.</param>
/// <param name="OvalHighSpot">Where it is highest first, from 0 to below 180°; <c>null</c> where there is nothing twice a turn.</param>
/// <param name="Residual">The farthest that any reading lies from the two together: a dent, a burr, or a misread dial.</param>
public sealed record TurnShape(Length OncePerTurn, Angle? HighSpot, Length Ovality, Angle? OvalHighSpot, Length Residual)
{
    /// <summary>The middle that the two waves lie about, on the dial's own scale.</summary>
    public Length Middle { get; init; }

    /// <summary>What the two waves together read at an angle, on the dial's own scale.</summary>
    public Length At(Angle angle) => new(
        Middle.Metres
        + (OncePerTurn.Metres * Math.Cos(angle.Radians - (HighSpot ?? default).Radians))
        + (Ovality.Metres * Math.Cos(2 * (angle.Radians - (OvalHighSpot ?? default).Radians))));
}
