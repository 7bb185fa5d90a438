using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Problems;

/// <summary>The wording of quantities that cannot be read.</summary>
internal static class QuantityProblems
{
    /// <summary>What is due where a dimension is, for instance <c>a length (um, mm, m, thou, in)</c>.</summary>
    public static string Due(Dimension dimension) => $"{Called(dimension)} ({Units(dimension)})";

    /// <summary>A text that is no quantity of this dimension. Also used for what is typed in a command, where there is no place.</summary>
    public static Problem Of(SourceSpan? place, string written, Dimension dimension, QuantityError error)
    {
        string got = $"{Due(dimension)} is due, got {Wording.Quoted(written)}";
        if (QuantitySlips.Of(written, dimension) is (string text, string mend))
            return Wording.Error(ProblemCodes.BadQuantity, place, text, mend);
        return error.Fault switch
        {
            QuantityFault.DecimalComma => Wording.Error(
                ProblemCodes.DecimalComma, place, $"a comma stands in the number {Wording.Quoted(written)}", QuantitySlips.WithoutComma(written)),
            QuantityFault.GroupedDigits => Wording.Error(
                ProblemCodes.BadQuantity, place, $"the digits of {Wording.Quoted(written)} are parted", "write the digits together, with one decimal point at most"),
            QuantityFault.ExtraSpace => Wording.Error(
                ProblemCodes.BadQuantity, place, $"a space too many stands in {Wording.Quoted(written)}", "put one space, or none, between number and unit"),
            QuantityFault.MissingUnit => Wording.Error(
                ProblemCodes.MissingUnit, place, $"{Wording.Quoted(written)} has no unit", $"{Called(dimension)} is written in {Wording.OneOf(Offered(dimension))}"),
            QuantityFault.UnknownUnit => Wording.Error(
                ProblemCodes.UnknownUnit, place, $"no unit is written {Wording.Quoted(error.Found)}", Wording.DidYouMean(error.Near, $"{Called(dimension)} is written in {Wording.OneOf(Offered(dimension))}")),
            QuantityFault.WrongDimension => Wording.Error(ProblemCodes.WrongUnit, place, got, $"write {Called(dimension)}, for instance `{Example(dimension)}`{(place is null ? "" : ", or move the figure to the key that it belongs to")}"),
            QuantityFault.Negative => Wording.Error(
                ProblemCodes.NumberOutOfRange, place, $"{Called(dimension)} cannot be negative, got {Wording.Quoted(written)}", "take the minus off, or check which figure was meant"),
            QuantityFault.OutOfRange => Wording.Error(
                ProblemCodes.NumberOutOfRange, place, $"{Wording.Quoted(written)} is too large or too small for {Called(dimension)}", "check the figure and its unit"),
            QuantityFault.Empty or QuantityFault.NotANumber => Wording.Error(
                ProblemCodes.BadQuantity, place, got, $"write a number and its unit, for instance `{Example(dimension)}`"),
            _ => throw new ArgumentOutOfRangeException(nameof(error), error.Fault, "not a fault"),
        };
    }

    /// <summary>A quantity of 0 where that makes no sense.</summary>
    public static Problem Zero(SourceSpan place, string written, Dimension dimension) => Wording.Error(
        ProblemCodes.NumberOutOfRange, place, $"{Called(dimension)} of {Wording.Quoted(written)} makes no sense here", "it must be more than 0");

    private static string Units(Dimension dimension) => string.Join(", ", Offered(dimension));

    private static IEnumerable<string> Offered(Dimension dimension) =>
        UnitTable.Of(dimension).Where(unit => unit.IsOffered).Select(unit => unit.Symbol);

    private static string Called(Dimension dimension) => dimension switch
    {
        Dimension.Length => "a length",
        Dimension.Volume => "a volume",
        Dimension.Duration => "a time",
        Dimension.Pressure => "a pressure",
        Dimension.KinematicViscosity => "a viscosity",
        Dimension.Density => "a density",
        Dimension.Temperature => "a temperature",
        Dimension.FlowRate => "a flow",
        Dimension.Share => "a share",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "not a dimension"),
    };

    private static string Example(Dimension dimension) => dimension switch
    {
        Dimension.Length => "25 um",
        Dimension.Volume => "0.2 L",
        Dimension.Duration => "20 min",
        Dimension.Pressure => "0.7 bar",
        Dimension.KinematicViscosity => "46 cSt",
        Dimension.Density => "875 kg/m3",
        Dimension.Temperature => "40 C",
        Dimension.FlowRate => "30 L/min",
        Dimension.Share => "200 ppm",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "not a dimension"),
    };
}
