using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>What a plan says of itself in sentences; the same in text and on the sheet.</summary>
internal static class PlanSentences
{
    /// <summary>What it is.</summary>
    public static string Title(PlanDocument plan, Names names)
    {
        string failed = plan.FromFindings is not null ? "from what was found" : plan.Failed.IsEmpty ? "nothing named as failed" : string.Join(", ", plan.Failed.Select(names.Of)) + " failed";
        return $"Clean-out: {failed}, {string.Join(" and ", plan.Debris)}";
    }

    /// <summary>Which engine.</summary>
    public static string Engine(PlanDocument plan) => plan.Family.Title.Length > 0 ? $"{plan.Family.Title} ({plan.Family.Id})" : plan.Family.Id;

    /// <summary>How much it is.</summary>
    public static string Summary(PlanDocument plan)
    {
        int renewed = plan.Parts.Count(part => part.Treatment.Contains(TreatmentKind.Replace));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{plan.Parts.Length} parts reached, {plan.Clear} clear. {plan.Steps.Length} steps, {renewed} parts renewed, {plan.Hours.Bench:0.#} bench hours. Standard: {plan.Standard.Id}.");
    }

    /// <summary>When the engine may run.</summary>
    public const string MayNotRun = "The engine may not be run before every step of the phases before PROVE is ticked.";

    /// <summary>How a caution is referred to on its steps.</summary>
    public static string CautionMark(int index) => string.Create(CultureInfo.InvariantCulture, $"!{index + 1}");

    /// <summary>A caution with where it begins and where it is from.</summary>
    public static string Caution(PlanCaution caution)
    {
        string where = caution.Steps.IsEmpty ? "all of it" : $"from step {caution.BeforeStep.ToString(CultureInfo.InvariantCulture)}";
        return $"{caution.Text} ({where}; {caution.Source})";
    }

    /// <summary>How much of it is ordered; empty where nobody can say.</summary>
    public static string Quantity(PlanOrderLine line, TextLook look) => line.Unit is null
        ? string.Create(CultureInfo.InvariantCulture, $"{line.Quantity:0.##} ×")
        : line.Quantity > 0 ? UnitText.Volume(line.Quantity, look) : "";

    /// <summary>How long it takes to come; empty where nobody says.</summary>
    public static string Lead(PlanOrderLine line) => line.LeadDays is { } days ? string.Create(CultureInfo.InvariantCulture, $"{days:0.#} d to come") : "";

    /// <summary>The hours.</summary>
    public static string Hours(PlanDocument plan)
    {
        string hands = plan.Hours.Technicians == 1 ? "one technician" : string.Create(CultureInfo.InvariantCulture, $"{plan.Hours.Technicians} technicians");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{plan.Hours.Bench:0.##} h at the bench; {plan.Hours.Elapsed:0.##} working hours from start to end with {hands}, waiting for parts and outside workshops counted. No order of these steps ends before {plan.Hours.LowerBoundElapsed:0.##} h.");
    }

    /// <summary>Working minutes from the beginning as hours and minutes.</summary>
    public static string Clock(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{(int)(minutes / 60)}:{(int)(minutes % 60):00}");
}
