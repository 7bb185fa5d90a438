using System.Collections.Immutable;
using Contam.Audits;
using Contam.Bench.Ratios;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Proof;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Bench;

/// <summary>
/// What the looks decide over every failure of the shipped families: how many, the share of the bench hours that hangs on them, and what is done idly where all
/// are clean. Then the plan with looks beside the flat one, and the proof of the plan with most histories.
/// </summary>
internal static class LooksBench
{
    private const double IdleAimed = 0.05;

    public static void Run(Func<int, Action, double> median)
    {
        ShopStandard standard = BuiltInStandards.HouseOverKinds;
        Family[] families = [.. Directory.GetFiles("systems/families", "*.yaml").Order(StringComparer.Ordinal).Select(file => FamilyReader.ReadFile(file, standard.CatalogueOf()).Value!)];
        PlanRequest[] asked = [.. families.SelectMany(family => family.Parts.SelectMany(part => part.Sheds.Select(shed => new PlanRequest(family, standard, [part.Id], [shed.Debris]) { TakesFirstSchedule = true, MostLooks = HowFar.MostLooks })))];
        var gone = new Gone[asked.Length];
        Parallel.For(0, asked.Length, place => gone[place] = Of(asked[place]));
        Gone[] looked = [.. gone.Where(one => one.Looks > 0)];

        Console.WriteLine($"looks: {gone.Length} failures of {families.Length} families, {looked.Length} with a look that decides");
        Console.WriteLine($"  share of the bench hours that hangs on looks: {Told(Quartiles.Of(gone.Select(one => one.OnLooks)), "P0")}");
        Console.WriteLine($"  of metal alone: {Told(Quartiles.Of(gone.Where(one => one.Debris == "metal").Select(one => one.OnLooks)), "P0")}");
        Console.WriteLine($"  number of looks: {Told(Quartiles.Of(gone.Select(one => (double)one.Looks)), "0")}");
        Console.WriteLine($"  idle work with all looks clean: {Told(Quartiles.Of(looked.Select(one => one.Idle)), "P1")}; {looked.Count(one => one.Idle > IdleAimed)} of {looked.Length} above {IdleAimed:P0}");
        foreach (Gone one in looked.Where(one => one.Idle > IdleAimed).OrderByDescending(one => one.Idle).Take(10))
            Console.WriteLine($"    {one.Idle:P1} {one.Name}: {one.Why}");
        Timed([.. asked.Zip(gone).Where(one => one.First.Family.Parts.Length == families.Max(family => family.Parts.Length)).OrderByDescending(one => one.Second.Histories).Select(one => one.First)], median);
    }

    private static void Timed(PlanRequest[] ofLargest, Func<int, Action, double> median)
    {
        PlanRequest most = ofLargest[0] with { TakesFirstSchedule = false };
        PlanDocument? plan = null;
        double flat = median(7, () => _ = Planner.Plan(most with { MostLooks = 0 }));
        double branching = median(7, () => plan = Planner.Plan(most));
        Verification? proof = null;
        double verified = median(7, () => proof = PlanVerifier.Verify(plan!, most.Family, most.Standard.Debris));
        Console.WriteLine($"  {most.Failed[0]} of {most.Family.Id}, {plan!.Looks.Length} looks, {proof!.Histories} histories: plan with looks / flat plan {branching / flat:0.00}; verify / plan with looks {verified / branching:0.00}; verify {verified:0} ms");
        KeptRatios.Put(
        [
            new("plan with looks, times a flat plan", branching / flat),
            new($"proof of {proof.Histories} histories, times the plan that they are of", verified / branching),
        ]);
    }

    private static Gone Of(PlanRequest request)
    {
        PlanDocument plan = Planner.Plan(request);
        var hours = (plan.Hours.Bench, plan.Hours.BenchAllClean);
        double onLooks = hours.Bench <= 0 ? 0 : (hours.Bench - hours.BenchAllClean) / hours.Bench;
        string name = $"{request.Debris[0].Name} from {request.Failed[0]} in {request.Family.Id}";
        if (plan.Looks.IsEmpty)
            return new Gone(name, request.Debris[0].Name, 0, onLooks, 0, "", 1);

        // Where all looks are clean only those are made that hang on none.
        PlanLook[] made = [.. plan.Looks.Where(look => look.OnlyIf.IsEmpty)];
        PlanDocument flat = Planner.Plan(request with
        {
            MostLooks = 0,
            Findings = [.. made.SelectMany(look => look.Places).SelectMany(place => request.Debris.Select(debris => new Finding(new PartId(place), debris, Found: false)))],
        });
        Dictionary<string, double> done = ByWork(plan), needed = ByWork(flat);
        double looks = made.Sum(look => look.Minutes), all = 60 * hours.BenchAllClean;
        double idle = Math.Max(0, all - (60 * flat.Hours.Bench) - looks) / all;
        IEnumerable<string> why = done.Keys.Union(needed.Keys).Order(StringComparer.Ordinal)
            .Select(work => (work, More: done.GetValueOrDefault(work) - needed.GetValueOrDefault(work))).Where(one => Math.Abs(one.More) >= 1).OrderByDescending(one => one.More).Select(one => $"{one.work} {one.More:+0;-0} min");
        return new Gone(name, request.Debris[0].Name, plan.Looks.Length, onLooks, idle, $"{string.Join(", ", why)}, looks themselves {looks:0} min", PlanVerifier.Verify(plan, request.Family, request.Standard.Debris).Histories);
    }

    // Minutes of a technician by what is done, in the history in which all looks are clean: what hangs on a find is not done.
    private static Dictionary<string, double> ByWork(PlanDocument plan) => plan.Steps.Where(step => step.OnlyIf.IsEmpty && step.Technician is not null)
        .GroupBy(step => $"{(step.ForAccess ? "access, " : "")}{step.Action.ToString().ToLowerInvariant()}").ToDictionary(group => group.Key, group => group.Sum(step => step.Minutes), StringComparer.Ordinal);

    private static string Told(Quartiles figures, string format) =>
        $"median {figures.Median.ToString(format)}, quartiles {figures.Lower.ToString(format)} and {figures.Upper.ToString(format)}, most {figures.Most.ToString(format)}";

    private sealed record Gone(string Name, string Debris, int Looks, double OnLooks, double Idle, string Why, int Histories);
}
