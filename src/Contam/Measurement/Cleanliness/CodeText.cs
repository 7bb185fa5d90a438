using System.Globalization;

namespace Contam.Measurement.Cleanliness;

/// <summary>Reads cleanliness codes as people write them.</summary>
public static class CodeText
{
    /// <summary>A code as <c>19/16/13</c>; <c>-</c> or <c>*</c> for a size that was not counted, <c>&gt;28</c> above the table. It is not known how many were counted.</summary>
    /// <returns>The code, or a fault that shows the form.</returns>
    public static Sum<CleanlinessCode> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[] pieces = text.Split('/');
        var numbers = new CleanlinessNumber?[3];
        for (int i = 0; i < 3; i++)
        {
            if (pieces.Length != 3 || !TryNumber(pieces[i], out numbers[i]))
                return new Fault("a cleanliness code was expected: three scale numbers from 0 to 28, for instance 19/16/13, with - for a size that was not counted");
        }

        int? last = null;
        foreach (CleanlinessNumber? number in numbers)
        {
            if (number is { } known && last < known.Number)
                return new Fault($"the code {text} rises; numbers that fall or stay were expected, for each size and larger is counted");
            last = number?.Number ?? last;
        }

        return new CleanlinessCode(numbers[0], numbers[1], numbers[2]);
    }

    /// <summary>A code of three known numbers from 0 to 28.</summary>
    public static Sum<(int At4, int At6, int At14)> ReadWhole(string text) => Read(text).Then<(int, int, int)>(code =>
        code is { At4: { Number: <= 28 } at4, At6: { Number: <= 28 } at6, At14: { Number: <= 28 } at14 }
            ? (at4.Number, at6.Number, at14.Number)
            : new Fault($"the code {text} has a size without a number; three numbers from 0 to 28 were expected"));

    private static bool TryNumber(string text, out CleanlinessNumber? number)
    {
        number = null;
        if (text is "-" or "*")
            return true;
        if (text == ">28")
        {
            number = new CleanlinessNumber(CleanlinessScale.AboveTable, CleanlinessScale.AboveTable, fewCounted: false);
            return true;
        }

        if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) || value > 28)
            return false;
        number = new CleanlinessNumber(value, value, fewCounted: false);
        return true;
    }
}
