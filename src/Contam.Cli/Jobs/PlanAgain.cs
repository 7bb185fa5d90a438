using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Reports;
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

    /// <summary>Takes the new plan without a question; for every command that may lead to one.</summary>
    public Option<bool> Yes => yes;

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
        KeptSystem kept = book.SystemOf(job);
        Catalogue catalogue = kept.Standard.CatalogueOf();
        ImmutableArray<Debris> asked = [.. catalogue.Debris.Where(debris => job.Plan.Debris.Contains(debris.Name))];
        ImmutableArray<Finding> findings = [.. seen(new QuestionNames(kept.Family, catalogue), asked)];
        Signature signed = shop.Signed(call);
        if (call.GetResult(later) is not null && call.GetValue(later))
            return shop.Tell(book.Look(job.Id, findings, hasFailed, signed), _ => "Written down. contam job replan plans with it.");
        return Offer(call, book, job.Id, findings, hasFailed);
    });

    /// <summary>Plans again with what no plan has been made with yet, and asks whether to take it.</summary>
    public int Replan(ParseResult call, JobBook book, string id) => Offer(call, book, id, [], hasFailed: false);

    private int Offer(ParseResult call, JobBook book, string id, ImmutableArray<Finding> findings, bool hasFailed)
    {
        Signature signed = shop.Signed(call);
        (Proposal? proposal, Refusal? refusal) = book.Propose(id, findings, hasFailed, signed);
        if (refusal is not null)
        {
            JobShop.RefuseWrongUse(refusal);
            shop.Say(RefusalWords.Of(refusal));
            return ExitCode.No;
        }

        ChangeText.Write(proposal!.Change, shop.Shell.Out, CommonOptions.LookOf(call, shop.Shell));
        if (!call.GetValue(yes) && !IsAgreed())
        {
            shop.Say("Nothing is changed. With --yes it is taken.");
            return ExitCode.No;
        }

        JobAnswer taken = book.Take(proposal, signed);
        shop.Keep(taken);
        // What opens again was shown before the question.
        shop.Say(taken.Refusal is { } why ? RefusalWords.Of(why) : "Taken.");
        return taken.IsAccepted ? ExitCode.Yes : ExitCode.No;
    }

    private bool IsAgreed()
    {
        if (!shop.Shell.CanAsk)
            return false;
        shop.Shell.Out.Write("Take it? [y/N] ");
        shop.Shell.Out.Flush();
        return shop.Shell.In.ReadLine()?.Trim() is "y" or "Y" or "yes";
    }
}
