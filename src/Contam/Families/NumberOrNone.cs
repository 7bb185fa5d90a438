namespace Contam.Families;

/// <summary>
/// A number or none, in the room that a number takes. What most parts and joints do not say is kept for every one of them, and a family may have a
/// hundred thousand. The default value is none; equal when the numbers are.
/// </summary>
internal readonly record struct NumberOrNone
{
    /// <summary>The bits of the number, each turned over, so that 0 stands for a number that no sum and no text gives.</summary>
    private readonly long turned;

    private NumberOrNone(long turned) => this.turned = turned;

    /// <summary>The number, or <c>null</c>.</summary>
    public double? Number => turned == 0 ? null : BitConverter.Int64BitsToDouble(~turned);

    /// <summary>The number to keep, or <c>null</c>.</summary>
    public static NumberOrNone Of(double? number) => number is not double known
        ? default
        // There are two zeros, which are equal.
        : new NumberOrNone(~BitConverter.DoubleToInt64Bits(known == 0 ? 0 : known));
}
