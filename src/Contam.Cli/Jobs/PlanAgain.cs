using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Jobs.Reports;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Treatment.Reading;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job found</c>, <c>clean</c> and <c>replan</c>: what was seen changes the work.</summary>
internal sealed class PlanAgain(JobShop shop)
{
    private readonly Argument<string> found = new("PART=DEBRIS") { Description = "where, and what; with :SIZE how large" };
    private readonly Argument<string> clean = new("PART") { Description = "where; with =DEBRIS clean of that alone" };
    private readonly Option<bool> failed = new("--failed") { Description = "the part itself has failed, and sheds it" };
    private readonly Option<bool> yes = new("--yes") { Description = "take the new plan without being asked" };
    private readonly Option<bool> later = new("--later") { Description = "only write it down; the job is not released before it is planned with" };

    public IEnumerable<Command> Build()
    {
        Command find = shop.WritingCommand("found", """
            Debris was found at a part. The work is planned again, what is done kept, and the difference shown; it is taken after a yes, or with --yes.
            Ends with 1, and changes nothing, where nobody says yes.

            Example:
              contam job found upper-plug=metal:300um --yes
            """, call => Run(call, (names, asked) => [names.Found(call.GetValue(found)!)], call.GetValue(failed)));
        find.Arguments.Add(found);
        find.Options.Add(failed);
        Command none = shop.WritingCommand("clean", """
            A part was looked at, before it was worked on, and found clean. The work is planned again as with contam job found.

            Example:
              contam job clean gear-housing=metal
            """, call => Run(call, (names, asked) => [.. names.Clean(call.GetValue(clean)!, asked)], hasFailed: false));
        none.Arguments.Add(clean);
        Command replan = shop.WritingCommand("replan", """
            Plans again with everything that was written down with --later.

            Example:
              contam job replan --yes
            """, call => Run(call, (_, _) => [], hasFailed: false));
        foreach (Command command in new[] { find, none, replan })
            command.Options.Add(yes);
        find.Options.Add(later);
        none.Options.Add(later);
        return [find, none, replan];
    }

    private int Run(ParseResult call, Func<QuestionNames, ImmutableArray<Debris>, IReadOnlyList<Finding>> seen, bool hasFailed) => shop.Use(call, book =>
    {
        JobRecord job = shop.JobOf(call, book);
        KeptSystem kept = KeptSystem.Of(book, job.State.Opened);
        Catalogue catalogue = kept.Standard.CatalogueOf();
        ImmutableArray<Debris> asked = [.. catalogue.Debris.Where(debris => job.State.Plan.Debris.Contains(debris.Name))];
        string by = shop.ByOf(call, job.State.Opened.Technician);
        ImmutableArray<Looked> looks = [.. seen(new QuestionNames(kept.Family, catalogue), asked).Select(finding => LookOf(job.State, finding, hasFailed, by))];
        foreach (Looked look in looks.Where(look => !look.Seen.Found))
            RefuseWorthless(job.State, look.Seen);
        if (call.GetResult(later) is not null && call.GetValue(later))
            return Take(book, job, [.. looks], [], "Written down. contam job replan plans with it.");
        ImmutableArray<LookTaken> taken = [.. looks.Select((look, index) => new LookTaken(job.Summary.Sequence + 1 + index, look.Seen, look.By, IsAnswered: false))];
        PlanChange change = Rework.Of(job.State, kept.Family, kept.Standard, taken);
        ChangeText.Write(change, shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
        if (!call.GetValue(yes) && !IsAgreed())
        {
            shop.Say("Nothing is changed. With --yes it is taken.");
            return ExitCode.No;
        }

        string plan = PlanJson.Write(change.Plan);
        var replanned = new Replanned
        {
            At = shop.Now,
            By = by,
            Plan = EntryChain.Sha256(plan),
            Answers = [.. change.Answers.Select(look => look.Sequence)],
            Reopened = [.. change.Reopened.Select(one => new OpenAgain(one.Step.Key, one.Because))],
            Carried = change.Carried,
        };
        return Take(book, job, [.. looks, replanned], [plan], "Taken.");
    });

    // What was shown is what is taken: were the job another by now, it would be the difference to something else.
    private int Take(JobBook book, JobRecord job, ImmutableArray<EntryBody> bodies, ImmutableArray<string> texts, string said)
    {
        if (bodies.IsEmpty)
            return ExitCode.Yes;
        bool isTaken = book.TryAdd(job, new Decision(bodies, texts)) is not null;
        shop.Say(isTaken ? said : "Somebody has written to the job meanwhile, so nothing is changed. Do it again.");
        return isTaken ? ExitCode.Yes : ExitCode.No;
    }

    private Looked LookOf(JobState state, Finding finding, bool hasFailed, string by) => new()
    {
        At = shop.Now,
        By = by,
        Seen = new SeenAt(finding.Part.Value, finding.Debris.Name, finding.Found)
        {
            SizeUm = finding.Size is { IsUnlimited: false } size ? size.Micrometres : null,
            Form = finding.Form?.ToString().ToLowerInvariant(),
            Magnetic = finding.Magnetic,
            Failed = hasFailed,
            AfterWork = WorkedOn(state, finding.Part.Value) is null ? null : true,
        },
    };

    /// <summary>That a part is clean after it was cleaned says nothing of what came through it before.</summary>
    private static void RefuseWorthless(JobState state, SeenAt seen)
    {
        if (WorkedOn(state, seen.Part) is { } cleaned)
            throw new WrongUseException(FormattableString.Invariant($"{seen.Part} was worked on in step {cleaned.Number}; that it is clean now says nothing of what came through it before. Write it down with contam job note."));
        if (state.Looks.Any(look => look.Seen.Found && look.Seen.Part == seen.Part && look.Seen.Debris == seen.Debris))
            throw new WrongUseException($"{seen.Debris} was found at {seen.Part}; a look afterwards does not take that back. Write it down with contam job note.");
    }

    private static WorkStep? WorkedOn(JobState state, string part) =>
        state.Steps.All.FirstOrDefault(step => step.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace && step.Parts.Contains(part) && state.IsDone(step));

    private bool IsAgreed()
    {
        if (!shop.Shell.CanAsk)
            return false;
        shop.Shell.Out.Write("Take it? [y/N] ");
        shop.Shell.Out.Flush();
        return shop.Shell.In.ReadLine()?.Trim() is "y" or "Y" or "yes";
    }
}
