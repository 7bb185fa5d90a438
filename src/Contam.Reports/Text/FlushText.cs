using System.Globalization;
using Contam.Families;
using Contam.Measurement.Flushing;

namespace Contam.Reports.Text;

/// <summary>The flush of a circuit for a person at the rig: whether it scours, bore by bore, what mends it, how much and how long.</summary>
public static class FlushText
{
    /// <summary>Writes the flush.</summary>
    /// <param name="flush">The flush.</param>
    /// <param name="family">The family, for names.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="look">How wide, in which units, and whether in colour.</param>
    public static void Write(CircuitFlush flush, Family family, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(flush);
        ArgumentNullException.ThrowIfNull(family);
        var page = new TextPage(writer, look);
        var units = new FlushUnits(look);
        var names = new Names(family);
        List<List<FlushedBore>> rows = RepeatFolding.Fold(flush.Answer.Bores, bore => names.NumberOf(bore.Part.Value), bore => Alike(bore, names));
        Verdict(page, flush, rows, names, units);
        Bores(page, rows, names, units);
        Mends(page, rows, names, units);
        Volumes(page, flush, units);
        Filter(page, flush);
        page.Heading("Taken as given");
        foreach (string clause in flush.Assumed)
            page.Paragraph(Sentence(clause), indent: 2, lead: "-");
    }

    private static void Verdict(TextPage page, CircuitFlush flush, List<List<FlushedBore>> rows, Names names, FlushUnits units)
    {
        string wanted = GaugeText.Number(flush.Answer.WantedReynolds);
        page.Subheading($"Flush of the {flush.Circuit} circuit: {flush.Fluid} at {units.Temperature(flush.At)}, {FlushUnits.Viscosity(flush.Viscosity)}");
        if (!flush.FlowWasGiven)
        {
            page.Paragraph($"It takes at least {units.FlowAndUnit(flush.Answer.Flow)} to reach Reynolds {wanted} in every bore.");
            return;
        }

        string[] low = [.. rows.Where(row => !row[0].Enough).Select(row => names.Folded(row.Select(bore => bore.Part.Value)))];
        page.Paragraph(low.Length == 0
            ? $"ENOUGH: {units.FlowAndUnit(flush.Answer.Flow)} reaches Reynolds {wanted} in every bore."
            : $"NOT ENOUGH: {units.FlowAndUnit(flush.Answer.Flow)} stays below Reynolds {wanted} in {string.Join(", ", low)}. Debris may stay there.");
    }

    private static void Bores(TextPage page, List<List<FlushedBore>> rows, Names names, FlushUnits units)
    {
        page.Heading("Bore by bore");
        Line("", "", $"bore {units.BoreUnit}", units.FlowUnit, units.SpeedUnit, "Re", units.LossUnit, "flow");
        foreach (List<FlushedBore> row in rows)
        {
            FlushedBore bore = row[0];
            Line(
                bore.Enough ? "" : "!",
                names.FoldedAtStart(row.Select(one => one.Part.Value)),
                units.Bore(bore.Asked.Bore),
                units.Flow(bore.Flow),
                units.Speed(bore.Velocity),
                Math.Round(bore.Reynolds).ToString("0", CultureInfo.InvariantCulture),
                bore.Loss is { } taken ? units.Loss(taken) : "-",
                Word(bore.Regime));
        }

        if (rows.Any(row => !row[0].Enough))
            page.Paragraph("! stays below the wanted number");

        void Line(string mark, string part, string bore, string flow, string speed, string reynolds, string loss, string regime) =>
            page.Row(0, (mark, 1), (part, 20), (bore, 7), (flow, 6), (speed, 6), (reynolds, 6), (loss, 6), (regime, 0));
    }

    private static void Mends(TextPage page, List<List<FlushedBore>> rows, Names names, FlushUnits units)
    {
        List<List<FlushedBore>> low = [.. rows.Where(row => row[0].Mend is not null)];
        if (low.Count == 0)
            return;
        page.Heading("What would mend it");
        page.Paragraph("Any one of these alone. Thinner or hotter comes before more flow (ISO 23309). Heat no further than fluid, hoses and seals stand, and never heat a fuel.");
        FlushMend[] all = [.. low.Select(row => row[0].Mend!)];
        if (low.Count > 1)
            page.Row(2, ("For all of them", 22), (ForAll(all, units), 0));
        foreach (List<FlushedBore> row in low)
            page.Row(2, (names.FoldedAtStart(row.Select(one => one.Part.Value)), 22), (MendOf(row[0], row[0].Mend!, units), 0));
    }

    private static string ForAll(FlushMend[] all, FlushUnits units)
    {
        var ways = new List<string>();
        if (all.All(mend => mend.HotterTo is not null))
            ways.Add($"hotter: {units.HotEnough(all.Max(mend => mend.HotterTo!.Value))}");
        if (all.All(mend => mend.ThinnerTo is not null))
            ways.Add($"thinner: {FlushUnits.Viscosity(all.Min(mend => mend.ThinnerTo!.Value))}");
        ways.Add($"more flow: {units.FlowAndUnit(all.Max(mend => mend.CircuitFlow))} round the circuit");
        return string.Join("; ", ways);
    }

    private static string MendOf(FlushedBore bore, FlushMend mend, FlushUnits units)
    {
        var ways = new List<string>();
        if (mend.HotterTo is { } hotter)
            ways.Add($"hotter: {units.HotEnough(hotter)}");
        else if (mend.NoTemperatureBecause is { } because)
            ways.Add($"no temperature does it ({because})");
        if (mend.ThinnerTo is { } thinner)
            ways.Add($"thinner: {FlushUnits.Viscosity(thinner)}");
        if (bore.Asked.Branches > 1)
        {
            string have = mend.OneBranchAtATime ? ", which this flow gives" : "";
            ways.Add($"one branch at a time: {units.FlowAndUnit(mend.FlowAlone)} through it alone{have}");
        }

        ways.Add($"more flow: {units.FlowAndUnit(mend.CircuitFlow)} round the circuit");
        return string.Join("; ", ways);
    }

    private static void Volumes(TextPage page, CircuitFlush flush, FlushUnits units)
    {
        if (flush.Dilution is not { } dilution)
            return;
        page.Heading("How much must go through");
        double litres = dilution.Volumes * flush.System!.Value.Litres;
        page.Paragraph($"{GaugeText.Number(Math.Round(dilution.Volumes, 2))} volumes of {units.Volume(flush.System.Value)}, {units.Volume(new(litres / 1000))} in all, leave {GaugeText.Number(dilution.Left.Percent)} % of the old fluid: {Minutes(dilution.Time)} at this flow.");
        page.Paragraph("That is for new and old fluid that mix at once, the slower case. A dead end is not swept: drain it by itself.");
    }

    private static void Filter(TextPage page, CircuitFlush flush)
    {
        if (flush.Filter is not { } filter)
            return;
        page.Heading("How long through the filter");
        page.Paragraph($"{Minutes(filter.Times.Longest)} at the least from {Code(filter.From)} to {Code(filter.To)}: {Minutes(filter.Times.At4)} for 4 µm(c), {Minutes(filter.Times.At6)} for 6, {Minutes(filter.Times.At14)} for 14.");
        page.Paragraph("That is for a fluid that mixes at all times and gets nothing new. What still comes loose makes it longer: prove it with a count.");
    }

    private static string Alike(FlushedBore bore, Names names) => string.Create(
        CultureInfo.InvariantCulture, $"{names.RepeatOf(bore.Part.Value)} {bore.Asked.Bore.Metres} {bore.Asked.Length?.Metres} {bore.Asked.Branches}");

    private static string Word(Regime regime) => regime switch
    {
        Regime.Laminar => "laminar",
        Regime.Transitional => "transitional",
        _ => "turbulent",
    };

    private static string Minutes(TimeSpan time) => time.TotalMinutes < 1 && time > TimeSpan.Zero ? "under 1 min" : $"{GaugeText.Number(Math.Ceiling(time.TotalMinutes))} min";

    private static string Code((int At4, int At6, int At14) code) => string.Create(CultureInfo.InvariantCulture, $"{code.At4}/{code.At6}/{code.At14}");

    private static string Sentence(string clause) => char.ToUpperInvariant(clause[0]) + clause[1..] + ".";
}
