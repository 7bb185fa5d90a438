using System.Collections.Immutable;
using System.CommandLine;
using Contam.Cli.Commands;
using Contam.Families;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Treatment.Reading;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job open</c>: a job from a plan.</summary>
internal sealed class OpenJob(JobShop shop, Loading loading)
{
    private readonly Argument<string> plan = new("PLAN.json") { Description = "a plan, written by contam plan --format json" };
    private readonly Argument<string> family = FailureArguments.FamilyArgument();
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<string> customer = new("--customer") { Description = "whose engine it is", HelpName = "NAME", Required = true };
    private readonly Option<string> engine = new("--engine") { Description = "which engine", HelpName = "TEXT", Required = true };
    private readonly Option<string?> technician = new("--technician") { Description = "who is in charge (default: CONTAM_BY)", HelpName = "NAME" };

    public IEnumerable<Command> Build()
    {
        Command command = shop.Command(
            "open",
            """
            Opens a job. The plan is verified against the family first; plan, family and standard are kept whole, so that a later change of a file changes no job.

            Example:
              contam plan systems/families/outboard-gearcase.yaml --failed pinion --debris metal --format json > plan.json
              contam job open plan.json systems/families/outboard-gearcase.yaml --customer "Quay 4" --engine "port gearcase" --technician Ada
            """,
            Run);
        command.Arguments.Add(plan);
        command.Arguments.Add(family);
        foreach (Option option in new Option[] { customer, engine, technician, standard })
            command.Options.Add(option);
        yield return command;
    }

    private int Run(ParseResult call)
    {
        var document = VerifyCommand.ReadPlan(call.GetValue(plan)!);
        if (loading.Standard(call.GetValue(standard)) is not { } rules || loading.Family(call.GetValue(family)!, rules) is not { } read)
            return ExitCode.WrongUse;
        var opening = new JobOpening(document, read, rules, SourcesOf(call.GetValue(standard))) { Limits = loading.Limits };
        if (opening.WhyNot() is { } why)
        {
            shop.Shell.Error.Write($"contam: no job is opened with this plan, for it does not hold: {Reports.Text.TextPage.Harmless(why)}. Plan again with contam plan.\n");
            return ExitCode.No;
        }

        string who = JobShop.Text("--technician", call.GetValue(technician) ?? shop.Shell.Setting("CONTAM_BY"));
        (Opened entry, ImmutableArray<string> texts) = opening.Entry(JobShop.Text("--customer", call.GetValue(customer)), JobShop.Text("--engine", call.GetValue(engine)), who, shop.Now, who);
        return shop.Use(
            call,
            book =>
            {
                JobRecord job = book.Open(entry, texts);
                shop.Say(FormattableString.Invariant($"Job {job.Id} is open, with {job.State.Steps.All.Length} steps. contam job next says what can be done now."));
                return ExitCode.Yes;
            },
            mayCreate: true);
    }

    // A shop's standard was read a moment ago; were it changed since, the plan's hash would no longer be that of what is kept, and check would tell.
    private static ImmutableArray<SourceCopy> SourcesOf(string? file) =>
        file is null ? BuiltInStandards.Sources : [.. BuiltInStandards.Sources, new SourceCopy(Path.GetFileName(file), System.Text.Encoding.UTF8.GetString(File.ReadAllBytes(file)))];
}
