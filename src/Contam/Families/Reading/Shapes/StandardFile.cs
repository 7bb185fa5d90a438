namespace Contam.Families.Reading.Shapes;

/// <summary>The form of a standard's file.</summary>
internal static class StandardFile
{
    /// <summary>A shop standard.</summary>
    public static readonly FormShape Form = new(
        "standard",
        "a shop standard",
        FamilyKeys.Format, StandardKeys.Standard, StandardKeys.Title, StandardKeys.CleanFindings, StandardKeys.WorkingDay, StandardKeys.FirstRunningHours, StandardKeys.GasTestAtMost, StandardKeys.Kinds, StandardKeys.Debris, StandardKeys.Rules, StandardKeys.PassesOn, StandardKeys.Times, StandardKeys.Cautions, TextKeys.Methods, TextKeys.Texts, TextKeys.Frame)
    {
        Required = [FamilyKeys.Format, StandardKeys.Standard], Means = "A shop's own rules: treatments, times, cautions, methods, texts, kinds and debris",
    };
}
