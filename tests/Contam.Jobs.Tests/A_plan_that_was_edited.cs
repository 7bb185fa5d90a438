using System.Collections.Immutable;
using Contam.Plans;
using Contam.Support;

namespace Contam.Jobs.Tests;

/// <summary>No job is opened with a plan that its own question does not give, whatever was changed in it and however well it hangs together.</summary>
public class A_plan_that_was_edited
{
    private static readonly string[] Words = ["--customer", "Quay 4", "--engine", "port", "--technician", "Ada"];

    public static TheoryData<string> Edits { get; } = [.. EditOf.Keys.Order(StringComparer.Ordinal)];

    private static Dictionary<string, Func<PlanDocument, PlanDocument>> EditOf => new(StringComparer.Ordinal)
    {
        ["a treatment dropped with its step"] = plan => WithoutStep(plan, Cleaned(plan), StepAction.Clean, []),
        ["a treatment lowered to a look"] = plan => WithoutStep(plan, Cleaned(plan), StepAction.Inspect, [TreatmentKind.Inspect]),
        ["a step that waits for nothing any more"] = plan => Each(plan, step => step.Number == plan.Steps.Last(one => one.After.Length > 0).Number ? step with { After = [] } : step),
        ["every step waits for nothing"] = plan => Each(plan, step => step with { After = [] }),
        ["a text blanked"] = plan => Each(plan, step => step.Number == 7 ? step with { Text = "" } : step),
        ["all texts blanked"] = plan => Each(plan, step => step with { Text = "" }),
        ["cautions removed"] = plan => plan with { Cautions = [] },
        ["one caution removed"] = plan => plan with { Cautions = plan.Cautions.RemoveAt(0) },
        ["prove steps put after the first run"] = plan => Each(plan, step => step.Phase == Phase.Prove && step.Action == StepAction.Prove ? step with { DueAfterRunningHours = step.DueAfterRunningHours ?? 0 } : step),
        ["prove steps in another order"] = plan => SwapTexts(plan, Phase.Prove),
        ["a false clean finding"] = plan => plan with { Findings = plan.Findings.Add(new PlanFinding { Part = "gear-housing", Debris = "metal", Found = false, Accepted = true, By = "Eve" }) },
        ["less to order"] = plan => plan with { Order = plan.Order.RemoveAt(0) },
        ["a part left out"] = plan => plan with { Parts = plan.Parts.RemoveAt(plan.Parts.Length - 1), Clear = plan.Clear + 1 },
        ["fewer minutes"] = plan => plan with { Hours = plan.Hours with { Bench = 1 } },
        ["a seal not renewed"] = plan => Each(plan, step => step.Seals.IsEmpty ? step : step with { Seals = [] }),
        ["nothing is blanked"] = plan => Each(plan, step => step with { Blank = [], Technician = 2 }),
        ["another failure"] = plan => plan with { Debris = ["rubber"], Failed = [.. plan.Failed.Select(failure => failure with { Debris = ["rubber"] })] },
        ["a smaller piece"] = plan => plan with { Failed = [.. plan.Failed.Select(failure => failure with { UpToUm = 20 })] },
        ["nothing shed"] = plan => plan with { Failed = [.. plan.Failed.Select(failure => failure with { Debris = [] })] },
        ["by another standard"] = plan => plan with { Standard = plan.Standard with { Sha256 = new string('0', 64) } },
    };

    [Theory]
    [MemberData(nameof(Edits))]
    public void Opens_no_job(string edit)
    {
        using var bench = new JobBench();
        bench.WritePlan();
        PlanDocument plan = PlanJson.Read(File.ReadAllText(bench.At("plan.json")));
        string edited = PlanJson.Write(EditOf[edit](plan));
        Assert.NotEqual(PlanJson.Write(plan), edited);
        File.WriteAllText(bench.At("plan.json"), edited);
        Answer answer = bench.Job(["open", RepositoryFiles.At(JobBench.Gearcase), "--plan", bench.At("plan.json"), .. Words]);
        Assert.Equal((1, ""), (answer.Exit, answer.Out));
        Assert.StartsWith("contam: no job is opened with this plan, for planning again gives another: line ", answer.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.Shop));
    }

    [Fact]
    public void Only_in_its_spaces_opens_no_job_either()
    {
        using var bench = new JobBench();
        bench.WritePlan();
        File.WriteAllText(bench.At("plan.json"), File.ReadAllText(bench.At("plan.json")) + "\n");
        Assert.Equal(1, bench.Open().Exit);
    }

    [Fact]
    public void Not_at_all_opens_a_job_from_wherever_its_standard_was_named()
    {
        using var bench = new JobBench();
        Directory.CreateDirectory(bench.At("shop"));
        File.WriteAllText(bench.At("shop/ours.yaml"), "format: 1\nstandard: ours\nrules:\n  - for: {kind: gear, debris: metal}\n    exposed: [clean, inspect]\n    guarded: [inspect]\n    because: ours\n");
        string[] standard = ["--standard", bench.At("shop/ours.yaml")];
        Answer plan = bench.Call(["plan", JobBench.Gearcase, "--failed", "pinion", "--debris", "metal", "--format", "json", .. standard]);
        Assert.Equal((0, ""), (plan.Exit, plan.Error));
        File.WriteAllText(bench.At("plan.json"), plan.Out);
        Assert.Equal((0, ""), bench.Job(["open", RepositoryFiles.At(JobBench.Gearcase), "--plan", bench.At("plan.json"), .. standard, .. Words]) is var opened ? (opened.Exit, opened.Error) : default);
    }

    [Fact]
    public void To_be_clean_is_refused_until_somebody_stands_for_each_finding()
    {
        using var bench = new JobBench();
        bench.WritePlan($"plan {JobBench.Gearcase} --failed pinion --debris metal --clean lower-plug --clean upper-plug --format json");
        string[] open = ["open", RepositoryFiles.At(JobBench.Gearcase), "--plan", bench.At("plan.json"), .. Words];
        Answer refused = bench.Job(open);
        Assert.Equal(1, refused.Exit);
        Assert.Equal(
            "contam: it counts parts as clean, and nobody here stands for that: lower-plug clean of metal; upper-plug clean of metal. Nothing was written. "
            + "For each of them say who looked: --confirm-findings lower-plug=metal:NAME --confirm-findings upper-plug=metal:NAME. What nobody can stand for is planned without.\n",
            refused.Error);
        Answer half = bench.Job([.. open, "--confirm-findings", "lower-plug=metal:Bo"]);
        Assert.Equal(1, half.Exit);
        Assert.Contains("nobody here stands for that: upper-plug clean of metal. Nothing", half.Error, StringComparison.Ordinal);
        Answer stranger = bench.Job([.. open, "--confirm-findings", "gear-housing=metal:Bo"]);
        Assert.Equal((2, "contam: --confirm-findings gear-housing=metal: the file has no such clean finding. It has lower-plug clean of metal; upper-plug clean of metal.\n"), (stranger.Exit, stranger.Error));
        Assert.Equal(0, bench.Job([.. open, "--confirm-findings", "lower-plug=metal:Bo", "--confirm-findings", "upper-plug=metal:Cy"]).Exit);
        Assert.Equal(["Bo", "Cy"], bench.Read().State.Looks.Select(look => look.Seen.ConfirmedBy));
    }

    [Fact]
    public void To_be_clean_is_asked_about_one_by_one_at_a_terminal()
    {
        using var bench = new JobBench();
        bench.WritePlan($"plan {JobBench.Gearcase} --failed pinion --debris metal --clean lower-plug --clean upper-plug --format json");
        string[] open = ["open", RepositoryFiles.At(JobBench.Gearcase), "--plan", bench.At("plan.json"), .. Words];
        Assert.Equal(1, bench.JobAtTerminal("Bo\n\n", open).Exit);
        Answer taken = bench.JobAtTerminal("Bo\nCy\n", open);
        Assert.Equal(0, taken.Exit);
        Assert.StartsWith("The file counts lower-plug clean of metal. Who looked, and stands for it? [nobody] The file counts upper-plug clean of metal. Who looked", taken.Out, StringComparison.Ordinal);
    }

    private static string Cleaned(PlanDocument plan) => plan.Steps.First(step => step.Phase == Phase.CleanOut && step.Action == StepAction.Clean).Part!;

    private static PlanDocument Each(PlanDocument plan, Func<PlanStep, PlanStep> edit) => plan with { Steps = [.. plan.Steps.Select(edit)] };

    private static PlanDocument WithoutStep(PlanDocument plan, string part, StepAction action, ImmutableArray<TreatmentKind> left)
    {
        PlanStep gone = plan.Steps.First(step => step.Part == part && step.Phase == Phase.CleanOut && step.Action == StepAction.Clean);
        PlanDocument lowered = plan with { Parts = [.. plan.Parts.Select(one => one.Id == part ? one with { Treatment = left.IsEmpty ? one.Treatment.Remove(TreatmentKind.Clean) : left } : one)] };
        return Each(lowered, step => step.Number == gone.Number ? step with { Action = left.IsEmpty ? StepAction.Note : action, Text = "" } : step);
    }

    private static PlanDocument SwapTexts(PlanDocument plan, Phase phase)
    {
        PlanStep[] two = [.. plan.Steps.Where(step => step.Phase == phase && step.Action == StepAction.Prove).Take(2)];
        return Each(plan, step => step.Number == two[0].Number ? step with { Text = two[1].Text } : step.Number == two[1].Number ? step with { Text = two[0].Text } : step);
    }
}
