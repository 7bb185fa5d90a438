using System.Diagnostics;
using System.Globalization;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Graphs;
using Contam.Plans;
using Contam.Proof;
using Contam.Spread;
using Contam.Treatment;
using Contam.Treatment.Reading;
using Contam.Why;

// Usage, from the root of the repository: dotnet run -c Release --project tools/bench [-- ratios|reading|guard|start RELEASE|plan|stop-line|suspects|jobs|spread|growth|why|audit|looks|draw …]
// CONTAM_ENTRIES=5 makes jobs of so many entries instead of 200, for a quick look.
// Medians of several runs in one process; quote the ratios, for a machine's speed drifts.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["ratios"])
{
    Contam.Bench.Ratios.RatioRun.Record();
    return 0;
}

if (args is ["reading"])
{
    Contam.Bench.Ratios.RatioRun.Reading();
    return 0;
}

if (args is ["guard"])
    return Contam.Bench.Ratios.RatioRun.Guard() ? 0 : 1;
if (args is ["start", string released])
    return Contam.Bench.Start.StartBench.Run(released) ? 0 : 1;

if (args is ["read-once", string toRead])
    return Contam.Bench.Ratios.ReadingMemory.ReadOnce(toRead);
bool Wants(string what) => args.Length == 0 || args.Contains(what);
if (Wants("plan"))
    WholePlan("systems/families/estuary-v6-outboard.yaml", "compressor");
if (Wants("stop-line"))
    StopLineBench.Run(10_000, Median);
if (Wants("suspects"))
    Contam.Bench.SuspectsBench.Run(Median);
if (Wants("jobs"))
    Contam.Bench.JobsBench.Run(10_000, int.TryParse(Environment.GetEnvironmentVariable("CONTAM_ENTRIES"), out int entries) ? entries : 200, Median);
if (Wants("audit"))
    Contam.Bench.AuditBench.Run();
if (Wants("looks"))
    Contam.Bench.LooksBench.Run(Median);
if (Wants("draw"))
    Contam.Bench.DrawBench.Run(Median);
double before = 0;
foreach (int parts in Wants("spread") ? new[] { 1_000, 10_000, 100_000, 1_000_000 } : [])
    before = SpreadOf(parts, before);
if (Wants("growth"))
    Growth([1_000, 10_000, 100_000]);
foreach (int parts in Wants("why") ? new[] { 1_000, 10_000, 100_000 } : [])
    Why(parts);
return 0;

static void WholePlan(string file, string failed)
{
    string text = File.ReadAllText(file);
    PlanDocument? plan = null;
    double read = Median(15, () => FamilyReader.ReadText(text, file, BuiltInStandards.HouseOverKinds.CatalogueOf()));
    Family family = FamilyReader.ReadText(text, file, BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
    double planned = Median(15, () => plan = Planner.Plan(new PlanRequest(family, BuiltInStandards.HouseOverKinds, [new PartId(failed)], [Debris.Metal])));
    double written = Median(15, () => PlanJson.Write(plan!));
    double verified = Median(15, () => PlanVerifier.Verify(plan!, family));
    Console.WriteLine($"{family.Id}: {family.Parts.Length} parts, {plan!.Parts.Length} reached, {plan.Steps.Length} steps");
    Console.WriteLine($"  read {read:0.0} ms, plan {planned:0.0} ms, write JSON {written:0.0} ms, verify {verified:0.0} ms; verify / plan {verified / planned:0.00}");
}

static double SpreadOf(int parts, double perPartBefore)
{
    Family family = Contam.Bench.Ratios.Systems.Chains(parts);
    var question = new SpreadQuestion(family, [family.Parts[0].Id], Debris.Metal);
    DebrisSpread? spread = null;
    double took = Median(parts > 100_000 ? 3 : 7, () => spread = Spreading.Of(question));
    double perPart = took * 1e6 / parts;
    string growth = perPartBefore > 0 ? $", {perPart / perPartBefore:0.00} of the time a part before" : "";
    Console.WriteLine($"spread, {parts:N0} parts, {family.Joints.Length:N0} joints, {spread!.Parts.Length:N0} reached: {took:0.0} ms, {perPart:0} ns a part{growth}");
    return perPart;
}

// Whole plans of rising size, and the exponents that fit. Work in proportion to n log n would show as the exponent that is printed beside them.
static void Growth(int[] sizes)
{
    (double Plan, double Verify)[] took = [.. sizes.Select(size => GrowingPlan(size))];
    double[] parts = [.. sizes.Select(size => (double)size)];
    Console.WriteLine(
        $"growth: plan parts^{Exponent(parts, [.. took.Select(one => one.Plan)]):0.00}, verify parts^{Exponent(parts, [.. took.Select(one => one.Verify)]):0.00}; "
        + $"n log n would be parts^{Exponent(parts, [.. parts.Select(size => size * Math.Log(size))]):0.00}");
}

// The slope of the least-squares line through the logarithms.
static double Exponent(double[] sizes, double[] times)
{
    double[] x = [.. sizes.Select(size => Math.Log(size))];
    double[] y = [.. times.Select(time => Math.Log(time))];
    double middle = x.Average();
    return x.Zip(y, (size, time) => (size - middle) * (time - y.Average())).Sum() / x.Sum(size => (size - middle) * (size - middle));
}

// A whole plan and its proof.
static (double Plan, double Verify) GrowingPlan(int parts)
{
    Family family = Contam.Bench.Ratios.Systems.Chains(parts);
    PartId failed = family.Parts[0].Id;
    int runs = parts >= 100_000 ? 3 : 7;
    PlanDocument? plan = null;
    double planned = Median(runs, () => plan = Planner.Plan(new PlanRequest(family, BuiltInStandards.HouseOverKinds, [failed], [Debris.Metal])));
    Verification? verification = null;
    double verified = Median(runs, () => verification = PlanVerifier.Verify(plan!, family));
    Console.WriteLine($"whole plan, {parts:N0} parts, {plan!.Steps.Length:N0} steps: plan {planned:0} ms, verify {verified:0} ms ({(verification!.Holds ? "holds" : "refused")}), verify / plan {verified / planned:0.00}");
    return (planned, verified);
}

// One question why, against the spread and the one maximum flow that an answer cannot do without.
static void Why(int parts)
{
    Family family = Contam.Bench.Ratios.Systems.Chains(parts);
    PartId far = family.Parts[^1].Id;
    var question = new SpreadQuestion(family, [family.Parts[0].Id], Debris.Metal);
    double spread = Median(7, () => Spreading.Of(question));
    double flow = Median(7, () => VertexCut.Smallest(SpreadGraph.Of(question).Open, new HashSet<int> { 0 }, parts - 1));
    double dominators = Median(7, () => Dominators.Immediate(SpreadGraph.Of(question).Open, [0]));
    double why = Median(7, () => Explaining.Of(question, far, BuiltInStandards.HouseOverKinds));
    Console.WriteLine($"why, {parts:N0} parts: {why:0.0} ms; spread {spread:0.0} ms, maximum flow {flow:0.0} ms, why / (spread + flow) {why / (spread + flow):0.00} (dominators {dominators:0.0} ms)");
}

static double Median(int runs, Action work)
{
    work();
    double[] took = new double[runs];
    for (int run = 0; run < runs; run++)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        took[run] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    return took.Order().ElementAt(runs / 2);
}
