using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json;
using Contam.Cli.Commands;
using Contam.Families;
using Contam.Jobs;
using Contam.Jobs.Stores;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job open</c>: a job from what failed and what was seen.</summary>
internal sealed class OpenJob(JobShop shop, Loading loading)
{
    private readonly FailureArguments failure = new();
    private readonly Option<int> technicians = new("--technicians") { Description = "how many work at once (default 1)", DefaultValueFactory = _ => 1 };
    private readonly LookArguments looks = new();
    private readonly Option<string> share = PlanCommand.ShareOption();
    private readonly Option<string?> plan = new("--plan") { Description = "a plan that contam plan --format json wrote, instead of the question; taken only where planning again gives the same", HelpName = "FILE" };
    private readonly Option<string> customer = new("--customer") { Description = "whose engine it is", HelpName = "NAME", Required = true };
    private readonly Option<string> engine = new("--engine") { Description = "which engine", HelpName = "TEXT", Required = true };
    private readonly Option<string?> technician = new("--technician") { Description = "who is in charge (default: CONTAM_BY)", HelpName = "NAME" };

    /// <summary>Who stands for the clean findings of a file, one at a time.</summary>
    private readonly ConfirmFindings confirm = new(shop);

    public IEnumerable<Command> Build()
    {
        Command command = shop.Command(
            "open",
            """
            Opens a job from what failed and what was seen. The plan is made again and verified; plan, family and standard are kept whole, so that a later
            change of a file changes no job. Ends with 1 where the plan is refused.

            Examples:
              contam job open systems/families/outboard-gearcase.yaml --failed pinion --debris metal --customer "Quay 4" --engine "port gearcase" --technician Ada
              contam job open systems/families/outboard-gearcase.yaml --plan plan.json --customer "Quay 4" --engine "port gearcase" --technician Ada
            """,
            Run);
        failure.AddTo(command);
        looks.AddTo(command);
        technicians.MustBeFrom(1, 100);
        foreach (Option option in new Option[] { technicians, share, plan, confirm.Option, customer, engine, technician })
            command.Options.Add(option);
        yield return command;
    }

    private int Run(ParseResult call)
    {
        string? text = call.GetValue(plan) is { } file ? InputFile.ReadText(file) : null;
        if ((text is null ? Asked(call) : FromPlan(call, text)) is not { } question)
            return ExitCode.WrongUse;
        PlanFile? brought = text is null ? null : new PlanFile(text, confirm.Ask(call, [.. question.Findings.Where(finding => !finding.Found).Select(finding => new CleanFinding(finding.Part.Value, finding.Debris.Name, finding.By, finding.When))]));
        string who = call.GetValue(technician) ?? shop.Shell.Setting("CONTAM_BY") ?? throw new WrongUseException("--technician is missing: who is in charge of the job? Name somebody there, or in CONTAM_BY.");
        var head = new JobHead(call.GetValue(customer)!, call.GetValue(engine)!, who);
        var signature = new Signature(shop.Now);
        (JobToOpen? job, Refusal? refusal) = LookArguments.Answer(RequestOf(question), _ => JobBook.Prepare(question, head, signature, brought));
        if (refusal is not null)
        {
            JobShop.RefuseWrongUse(refusal);
            shop.Shell.Error.Write($"contam: {RefusalWords.Of(refusal)}\n");
            return ExitCode.No;
        }

        return shop.Use(
            call,
            book =>
            {
                JobAnswer answer = book.Open(job!);
                shop.Keep(answer);
                shop.Say(FormattableString.Invariant($"Job {answer.After!.Id} is open, with {answer.After.Steps.Length} steps. contam job next says what can be done now."));
                return ExitCode.Yes;
            },
            ShopUse.Create);
    }

    private JobQuestion? Asked(ParseResult call)
    {
        double wanted = FailureArguments.ShareOf("--share", call.GetValue(share)!);
        if (loading.Read(call, failure) is not { } asked)
            return null;
        var question = new JobQuestion(asked.Family, asked.Standard, SourcesOf(call.GetValue(failure.Standard)), asked.Failures, asked.Debris)
        {
            Findings = asked.Findings,
            Technicians = call.GetValue(technicians),
            Share = wanted,
            Limits = loading.Limits,
        };
        PlanRequest withLooks = looks.Into(RequestOf(question), call);
        question = question with { MostLooks = withLooks.MostLooks, LookAt = withLooks.LookAt };
        loading.Note(asked);
        // Says what to do where nothing accounts for what was found.
        if (asked.Failures.IsEmpty)
            PlanCommand.FromFindings(new PlanRequest(asked.Family, asked.Standard, [], asked.Debris) { Findings = asked.Findings }, wanted);
        return question;
    }

    private static PlanRequest RequestOf(JobQuestion question) =>
        new(question.Family, question.Standard, question.Failures, question.Debris) { Findings = question.Findings, MostLooks = question.MostLooks, LookAt = question.LookAt };

    private JobQuestion? FromPlan(ParseResult call, string text)
    {
        string name = TextPage.Harmless(call.GetValue(plan)!);
        foreach (Option option in new Option[] { failure.Failed, failure.Debris, failure.Found, failure.Clean, failure.FindingsFile, technicians, share, looks.Most, looks.LookAt })
        {
            if (call.GetResult(option) is { Implicit: false })
                throw new WrongUseException($"{option.Name} says what --plan says already. Leave one of them out.");
        }

        if (loading.Standard(call.GetValue(failure.Standard)) is not { } rules || loading.Family(call.GetValue(failure.Family)!, rules) is not { } family)
            return null;
        try
        {
            return JobQuestion.Of(PlanJson.Read(text), family, rules, SourcesOf(call.GetValue(failure.Standard))) is { } question
                ? question with { Limits = loading.Limits }
                : throw new WrongUseException($"{name} names a part or debris that {family.Id} does not have, or debris that it does not follow. Is it a plan of this family, and by this standard?");
        }
        catch (JsonException isAnother)
        {
            throw new WrongUseException($"{name} is not a plan: {JsonWords.Of(isAnother)}. Give a file written by contam plan --format json.");
        }
    }

    // A shop's standard was read a moment ago; the plan is made from what is kept, whatever has become of the file since.
    private static ImmutableArray<SourceCopy> SourcesOf(string? file) =>
        Starting.NamedFile.StandardSources(file);
}
