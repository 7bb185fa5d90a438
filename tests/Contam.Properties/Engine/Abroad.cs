using System.Globalization;

namespace Contam.Properties.Engine;

/// <summary>Does something where numbers are written with a comma and minus is a word.</summary>
internal static class Abroad
{
    internal static T Do<T>(Func<T> work)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        var abroad = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        abroad.NumberFormat.NumberDecimalSeparator = ",";
        abroad.NumberFormat.NumberGroupSeparator = ".";
        abroad.NumberFormat.NegativeSign = "minus";
        try
        {
            CultureInfo.CurrentCulture = abroad;
            return work();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
