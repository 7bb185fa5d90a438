using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>What a plan says of itself in sentences; the same in text and on the sheet.</summary>
internal static class PlanSentences
{
    /// <summary>What it is.</summary>
    public static string Title(PlanDocument plan, Names names, TextLook? look = null)
    {
        string debris = string.Join(" and ", plan.Debris);
        string failed = plan.FromFindings is not null ? $"from what was found, {debris}"
            : plan.Failed.IsEmpty ? $"nothing named as failed, {debris}"
            : FailureWords.Title(plan.Failed, plan.Debris, names.Of, look ?? TextLook.Plain);
        return $"Clean-out: {failed}";
    }

    /// <summary>Which engine.</summary>
    public static string Engine(PlanDocument plan) => plan.Family.Title.Length > 0 ? $"{plan.Family.Title} ({plan.Family.Id})" : plan.Family.Id;

    /// <summary>How much it is. With looks the steps and hours stand above, by <see cref="LookWords"/>.</summary>
    public static string Summary(PlanDocument plan)
    {
        string work = plan.Looks.IsEmpty ? string.Create(CultureInfo.InvariantCulture, $"{plan.Steps.Length} steps, {plan.Hours.Bench:0.#} h. ") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{work}{Reached(plan)}; {Renewed(plan)}. Standard: {plan.Standard.Id}.");
    }

    /// <summary>How many parts are reached; apart those that hang on looks, and those that what was seen clears.</summary>
    public static string Reached(PlanDocument plan)
    {
        int cleared = plan.Parts.Count(part => part.Treatment.IsEmpty);
        int hanging = plan.Parts.Count(part => !part.OnlyIf.IsEmpty);
        string apart = string.Concat(
            hanging == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{hanging} of them only if a look finds {(plan.Debris.Length == 1 ? plan.Debris[0] : "debris")}, "),
            cleared == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{cleared} of them cleared by what was seen, "));
        return string.Create(CultureInfo.InvariantCulture, $"{plan.Parts.Count(part => !part.Exposure.IsEmpty)} parts can be reached, {apart}{plan.Clear} cannot");
    }

    private static string Renewed(PlanDocument plan)
    {
        PlanPart[] renewed = [.. plan.Parts.Where(part => part.Treatment.Contains(TreatmentKind.Replace))];
        int sure = renewed.Count(part => part.OnlyIf.IsEmpty);
        return sure == renewed.Length
            ? string.Create(CultureInfo.InvariantCulture, $"{sure} {(sure == 1 ? "part" : "parts")} renewed")
            : string.Create(CultureInfo.InvariantCulture, $"{sure} {(sure == 1 ? "part" : "parts")} renewed, at most {renewed.Length}");
    }

    /// <summary>When the engine may run.</summary>
    public static string MayNotRun(PlanDocument plan) => plan.Looks.IsEmpty
        ? "Nothing runs before every step up to PROVE is ticked."
        : "Nothing runs before every look has its outcome and every step up to PROVE is ticked or struck.";

    /// <summary>How a caution is referred to on its steps.</summary>
    public static string CautionMark(int index) => string.Create(CultureInfo.InvariantCulture, $"!{index + 1}");

    /// <summary>A caution with its source, where one was published.</summary>
    public static string Caution(PlanCaution caution) => caution.Source.StartsWith("common practice", StringComparison.Ordinal) ? caution.Text : $"{caution.Text} ({caution.Source})";

    /// <summary>What is used up, with how much: <c>2 L solvent</c>, <c>20 clean caps</c>.</summary>
    public static string Supply(PlanSupply supply, TextLook look) => supply.Unit switch
    {
        "L" => $"{UnitText.Volume(supply.Quantity, look)} {supply.Item}",
        null => supply.Quantity == 1 ? supply.Item : string.Create(CultureInfo.InvariantCulture, $"{supply.Quantity:0.##} × {supply.Item}"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{supply.Quantity:0.##} {supply.Unit} {supply.Item}"),
    };

    /// <summary>A line of the order in a few words: <c>fuel filter (2)</c>, <c>injection pump (10 d)</c>, <c>diesel fuel (61 L)</c>.</summary>
    public static string Ordered(PlanOrderLine line, TextLook look)
    {
        string[] facts =
        [
            .. line.Unit is not null ? [line.Quantity > 0 ? UnitText.Volume(line.Quantity, look) : "see the manual"]
                : line.Quantity == 1 ? Array.Empty<string>() : [line.Quantity.ToString("0.##", CultureInfo.InvariantCulture)],
            .. line.LeadDays is { } days ? [string.Create(CultureInfo.InvariantCulture, $"{days:0.#} d")] : Array.Empty<string>(),
        ];
        return line.Item + (facts.Length == 0 ? "" : $" ({string.Join(", ", facts)})");
    }

    /// <summary>How much of it is ordered.</summary>
    public static string Quantity(PlanOrderLine line, TextLook look) => line.Unit is null
        ? string.Create(CultureInfo.InvariantCulture, $"{line.Quantity:0.##} ×")
        : line.Quantity > 0 ? UnitText.Volume(line.Quantity, look) : "see the manual";

    /// <summary>How long it takes to come; empty where nobody says.</summary>
    public static string Lead(PlanOrderLine line) => line.LeadDays is { } days ? string.Create(CultureInfo.InvariantCulture, $"{days:0.#} d to come") : "";

    /// <summary>The hours.</summary>
    public static string Hours(PlanDocument plan)
    {
        string hands = plan.Hours.Technicians == 1 ? "one technician" : string.Create(CultureInfo.InvariantCulture, $"{plan.Hours.Technicians} technicians");
        if (!plan.Looks.IsEmpty)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{plan.Hours.ElapsedAllClean:0.#} working hours from start to end with {hands} and all waiting, at most {plan.Hours.Elapsed:0.#}. What is to be expected rests on common practice, no source; it spares no part.");
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"{plan.Hours.Bench:0.##} h at the bench, {plan.Hours.Elapsed:0.##} working hours from start to end with {hands} and all waiting. No order ends before {plan.Hours.LowerBoundElapsed:0.##} h.");
    }

    /// <summary>The hours at the bench phase by phase: what is sure, and how much it may come to.</summary>
    public static string HoursByPhase(PlanDocument plan)
    {
        IEnumerable<string> phases = plan.Steps.Where(step => step.Technician is not null).GroupAdjacent(step => step.Phase).Select(phase =>
        {
            double most = phase.Sum(step => step.Minutes) / 60;
            double sure = phase.Where(step => step.OnlyIf.IsEmpty).Sum(step => step.Minutes) / 60;
            string atMost = plan.Looks.IsEmpty || Math.Abs(most - sure) < 0.05 ? "" : string.Create(CultureInfo.InvariantCulture, $" to {most:0.#}");
            return string.Create(CultureInfo.InvariantCulture, $"{PhaseWords.Of(phase[0].Phase).ToLowerInvariant()} {sure:0.#}{atMost}");
        });
        return $"At the bench: {string.Join(", ", phases)}.";
    }

    /// <summary>Working minutes from the beginning as hours and minutes.</summary>
    public static string Clock(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{(int)(minutes / 60)}:{(int)(minutes % 60):00}");
}
