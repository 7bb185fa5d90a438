using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Measurement.Gauging;

/// <summary>
/// Least squares for 1, cos θ, sin θ, cos 2θ, sin 2θ. The terms are scaled so that for equal steps the normal matrix is the unit
/// matrix; what its inverse has beyond 1 is then how much worse than equal steps the places are.
/// Cost: linear in the readings. Source: any textbook of least squares; the bound of <see cref="WorstSpread"/> is ours.
/// </summary>
internal static class TurnFit
{
    private const int Terms = 5;

    /// <summary>The variance that an amplitude may have against equal steps: 4, so that an error counts twice at most.</summary>
    private const double WorstSpread = 4;

    /// <summary>An amplitude smaller than this part of the whole run-out is rounding, and its direction means nothing.</summary>
    private const double Nothing = 1e-9;

    /// <summary>How many different places round the turn there are readings at.</summary>
    internal static int PlacesRoundTheTurn(ImmutableArray<RunOutReading> readings)
    {
        const double same = 1e-6;
        double[] places = [.. readings.Select(one => one.At.WithinTurn().Radians).Order()];
        int count = 1;
        for (int i = 1; i < places.Length; i++)
        {
            if (places[i] - places[i - 1] > same)
                count++;
        }

        bool lastMeetsFirst = count > 1 && places[0] + Math.Tau - places[^1] <= same;
        return lastMeetsFirst ? count - 1 : count;
    }

    /// <summary>The shape, or <c>null</c> where the readings are too badly spread.</summary>
    /// <param name="readings">At least one, all finite.</param>
    /// <param name="total">Their largest less smallest.</param>
    internal static TurnShape? Of(ImmutableArray<RunOutReading> readings, Length total)
    {
        // A dial's zero is anywhere; taking one reading off all of them keeps the digits for the run-out.
        double zero = readings[0].Reading.Metres;
        var normal = new double[Terms, Terms];
        var right = new double[Terms];
        var row = new double[Terms];
        foreach (RunOutReading one in readings)
        {
            Fill(row, one.At.WithinTurn().Radians);
            for (int i = 0; i < Terms; i++)
            {
                right[i] += row[i] * (one.Reading.Metres - zero) / readings.Length;
                for (int j = 0; j < Terms; j++)
                    normal[i, j] += row[i] * row[j] / readings.Length;
            }
        }

        if (Inverse(normal) is not { } inverse || Spread(inverse, 1) > WorstSpread || Spread(inverse, 3) > WorstSpread)
            return null;

        var fit = new double[Terms];
        for (int i = 0; i < Terms; i++)
        {
            for (int j = 0; j < Terms; j++)
                fit[i] += inverse[i, j] * right[j];
        }

        double residual = 0;
        foreach (RunOutReading one in readings)
        {
            Fill(row, one.At.WithinTurn().Radians);
            double fitted = 0;
            for (int i = 0; i < Terms; i++)
                fitted += fit[i] * row[i];
            residual = Math.Max(residual, Math.Abs(one.Reading.Metres - zero - fitted));
        }

        return Shape(fit, residual, total.Metres) with { Middle = new Length(zero + fit[0]) };
    }

    private static TurnShape Shape(double[] fit, double residual, double total)
    {
        double once = Math.Sqrt(2) * Math.Sqrt((fit[1] * fit[1]) + (fit[2] * fit[2]));
        double twice = Math.Sqrt(2) * Math.Sqrt((fit[3] * fit[3]) + (fit[4] * fit[4]));
        Angle? highSpot = once > Nothing * total ? new Angle(Math.Atan2(fit[2], fit[1])).WithinTurn() : null;
        Angle? ovalHighSpot = twice > Nothing * total ? new Angle(new Angle(Math.Atan2(fit[4], fit[3])).WithinTurn().Radians / 2) : null;
        return new TurnShape(new Length(once), highSpot, new Length(twice), ovalHighSpot, new Length(residual));
    }

    private static void Fill(double[] row, double angle)
    {
        double scale = Math.Sqrt(2);
        row[0] = 1;
        row[1] = scale * Math.Cos(angle);
        row[2] = scale * Math.Sin(angle);
        row[3] = scale * Math.Cos(2 * angle);
        row[4] = scale * Math.Sin(2 * angle);
    }

    /// <summary>The larger eigenvalue of the two rows and columns from <paramref name="first"/>: the variance in the worst direction, whichever way zero is turned.</summary>
    private static double Spread(double[,] inverse, int first)
    {
        double mean = (inverse[first, first] + inverse[first + 1, first + 1]) / 2;
        double half = (inverse[first, first] - inverse[first + 1, first + 1]) / 2;
        return mean + Math.Sqrt((half * half) + (inverse[first, first + 1] * inverse[first, first + 1]));
    }

    /// <summary>The inverse by elimination, or <c>null</c> where the matrix is singular. It is symmetric and positive, so no rows need changing over.</summary>
    private static double[,]? Inverse(double[,] matrix)
    {
        var left = (double[,])matrix.Clone();
        var inverse = new double[Terms, Terms];
        for (int i = 0; i < Terms; i++)
            inverse[i, i] = 1;
        for (int pivot = 0; pivot < Terms; pivot++)
        {
            double divisor = left[pivot, pivot];
            // The worst spread that is taken leaves pivots of a quarter; a thousandth of a millionth is none at all.
            if (!(divisor > 1e-9))
                return null;
            for (int j = 0; j < Terms; j++)
            {
                left[pivot, j] /= divisor;
                inverse[pivot, j] /= divisor;
            }

            for (int i = 0; i < Terms; i++)
            {
                double factor = left[i, pivot];
                if (i == pivot || factor == 0)
                    continue;
                for (int j = 0; j < Terms; j++)
                {
                    left[i, j] -= factor * left[pivot, j];
                    inverse[i, j] -= factor * inverse[pivot, j];
                }
            }
        }

        return inverse;
    }
}
