using System.Diagnostics;
using Contam.Audits;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Proof;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Bench;

/// <summary>The audit of all shipped families, on one core and on two, and how it grows with the number of parts.</summary>
internal static class AuditBench
{
    public static void Run()
    {
        ShopStandard standard = BuiltInStandards.HouseOverKinds;
        Family[] families = [.. Directory.GetFiles("systems/families", "*.yaml").Order(StringComparer.Ordinal).Select(file => FamilyReader.ReadFile(file, standard.CatalogueOf()).Value!)];
        Audit? audit = null;
        void Go(int jobs, params Family[] asked) => audit = Auditing.Of(new AuditQuestion([.. asked], standard) { Jobs = jobs });
        Go(2, families);
        Go(1, families);
        (double two, double twoWorked) = Best(() => Go(2, families));
        (double one, double oneWorked) = Best(() => Go(1, families));
        Console.WriteLine($"audit of {families.Length} families, {families.Sum(family => family.Parts.Length):N0} parts, {audit!.Failures.Length:N0} failures, planned and played: {two:0.0} s on two cores, {one:0.0} s on one; one / two {one / two:0.00}");
        // Where others use the machine too, the cores that were had say more than the clock.
        Console.WriteLine($"  processor time {twoWorked:0.0} s with two at once ({twoWorked / two:0.00} cores had), {oneWorked:0.0} s with one ({oneWorked / one:0.00} cores had); two / one {twoWorked / oneWorked:0.00}");
        double plan = 0, proof = 0;
        foreach (Family family in families)
        {
            (Part Part, Shed Shed)[] failures = [.. family.Parts.SelectMany(part => part.Sheds.Select(shed => (part, shed)))];
            PlanDocument[] plans = [];
            plan += Seconds(() => plans = [.. failures.Select(one => Planner.Plan(new PlanRequest(family, standard, [one.Part.Id], [one.Shed.Debris]) { TakesFirstSchedule = true }))]);
            proof += Seconds(() => Array.ForEach(plans, made => PlanVerifier.Verify(made, family)));
        }

        Console.WriteLine($"  of plans and proofs together the plans take {plan / (plan + proof):P0}");
        var figures = new List<(double Parts, double Took)>();
        foreach (Family family in families.OrderBy(family => family.Parts.Length))
        {
            double took = Best(() => Go(1, family)).Seconds;
            figures.Add((Math.Log(family.Parts.Length), Math.Log(took / audit!.Failures.Length)));
            Console.WriteLine($"  {family.Id}: {family.Parts.Length} parts, {audit!.Failures.Length} failures, {audit.Failures.Average(failure => failure.Reached):0} reached each: {1e3 * took / audit.Failures.Length:0.0} ms a failure, {1e6 * took / audit.Failures.Sum(failure => failure.Steps):0} µs a step");
        }

        double middle = figures.Average(one => one.Parts), level = figures.Average(one => one.Took);
        double exponent = figures.Sum(one => (one.Parts - middle) * (one.Took - level)) / figures.Sum(one => (one.Parts - middle) * (one.Parts - middle));
        Console.WriteLine($"  time a failure grows with the parts to the power of {exponent:0.00}");
    }

    private static (double Seconds, double Worked) Best(Action work) => Enumerable.Range(0, 3).Select(_ =>
    {
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        double took = Seconds(work);
        return (took, (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds);
    }).MinBy(one => one.took);

    private static double Seconds(Action work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }
}
