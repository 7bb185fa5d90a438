using System.Globalization;
using Contam.Families.Quantities;
using Contam.Measurement;
using Contam.Problems;

namespace Contam.Cli;

/// <summary>Turns figures that a person typed into quantities. What cannot be read is answered with what was expected.</summary>
internal static class Typed
{
    private delegate bool Parser<T>(string text, out T value, out QuantityError? error);

    /// <summary>Why a figure that was typed is not what is due; takes the place of an answer.</summary>
    public static WrongUseException Wrong(string what, string text, Dimension dimension, QuantityError error)
    {
        Problem problem = QuantityProblems.Of(null, text, dimension, error);
        string mend = problem.Mend.Length == 0 ? "" : $" {char.ToUpperInvariant(problem.Mend[0])}{problem.Mend[1..].TrimEnd('.', '?')}{(problem.Mend.EndsWith('?') ? '?' : '.')}";
        return new WrongUseException($"{what}: {problem.Text}.{mend}");
    }

    /// <summary>The question whether a near name was meant, behind a space; nothing where none is near.</summary>
    public static string Near(string name, IEnumerable<string> candidates) => NearName.Of(name, candidates) is { } near ? $" Did you mean {near}?" : "";

    /// <summary>The value of a sum; its fault is wrong use.</summary>
    public static T Take<T>(Sum<T> sum)
        where T : notnull => sum.TryGet(out T? value, out Fault? fault) ? value : throw new WrongUseException(fault.Text + ".");

    public static Temperature Temperature(string what, string text) => Read<Temperature>(what, text, Dimension.Temperature, Quantity.TryParse);

    public static FlowRate Flow(string what, string text) => Read<FlowRate>(what, text, Dimension.FlowRate, Quantity.TryParse);

    public static Volume Volume(string what, string text) => Read<Volume>(what, text, Dimension.Volume, Quantity.TryParse);

    public static KinematicViscosity Viscosity(string what, string text) => Read<KinematicViscosity>(what, text, Dimension.KinematicViscosity, Quantity.TryParse);

    public static Density Density(string what, string text) => Read<Density>(what, text, Dimension.Density, Quantity.TryParse);

    public static Share Share(string what, string text) => new(Si(what, text, Dimension.Share));

    /// <summary>The value in the SI unit.</summary>
    public static double Si(string what, string text, Dimension dimension) =>
        Quantity.TryParse(text, dimension, out double si, out QuantityError? error) ? si : throw Wrong(what, text, dimension, error!);

    /// <summary>A plain number; not-a-number and infinity are none.</summary>
    public static double Number(string what, string text, string example) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? value
            : throw new WrongUseException($"{what}: a number was expected, for instance {example}, got {Wording.Quoted(text)}.");

    /// <summary>A time: a plain number of minutes, or a number with a unit.</summary>
    public static TimeSpan Minutes(string what, string text)
    {
        double minutes = text.Length > 0 && char.IsAsciiDigit(text[0]) && char.IsAsciiLetter(text[^1]) ? Si(what, text, Dimension.Duration) / 60 : Number(what, text, "10");
        // Ten years, as everywhere in the sums: what takes longer is a mistake in the figures.
        return minutes is > 0 and <= 3650 * 24 * 60
            ? TimeSpan.FromMinutes(minutes)
            : throw new WrongUseException($"{what}: more than 0 and at most ten years was expected, got {Wording.Quoted(text)}.");
    }

    private static T Read<T>(string what, string text, Dimension dimension, Parser<T> parse) =>
        parse(text, out T value, out QuantityError? error) ? value : throw Wrong(what, text, dimension, error!);
}
