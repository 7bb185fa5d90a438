using System.Globalization;
using Contam.Diagnosis;
using Contam.Hosting;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>The talk of <c>contam trace</c>: asks for one look at a time until the source is known, nothing tells more, or the person stops.</summary>
internal sealed class Tracing
{
    private const int MostShares = 5;

    private readonly Shell shell;
    private readonly IPlanner planner;
    private readonly TextLook look;
    private readonly TextPage page;
    private readonly double sure;
    private readonly double share;
    private readonly FindingsFile? file;
    private SuspectQuestion question;

    public Tracing(Shell shell, IPlanner planner, TextLook look, SuspectQuestion question, FindingsFile? file, double sure, double share)
    {
        this.shell = shell;
        this.planner = planner;
        this.look = look;
        page = new TextPage(shell.Out, look);
        this.question = question;
        this.file = file;
        this.sure = sure;
        this.share = share;
    }

    /// <summary>Talks, and ends with the plan.</summary>
    /// <param name="again">How the trace is taken up again.</param>
    public int Run(string again)
    {
        page.Subheading($"Tracing {question.Debris.Name} in {question.Family.Id}");
        page.Paragraph("Answer found, clean, cannot tell or stop. After found may stand a size and looks: found 120um flakes not-magnetic.");
        page.Paragraph(file is null ? "Nothing is kept on disk. With --findings FILE you could stop and go on another day." : "Every answer is kept in the findings file at once; you can stop at any time.");
        SuspectAnswer answer = Suspecting.Of(question);
        ShowShares(answer, null);
        while (Looking.Plan(answer, sure).Root is { Look: { } next })
        {
            switch (Ask(next))
            {
                case { Kind: TraceAnswerKind.Stop }:
                    return Stop(again);
                case { Kind: TraceAnswerKind.CannotTell }:
                    file?.AddCannotTell(next.Part, question.Debris);
                    question = question with { CannotTell = question.CannotTell.Add(next.Part) };
                    break;
                case { Finding: { } finding }:
                    file?.Add(finding);
                    question = question with { Findings = question.Findings.Add(finding) };
                    break;
            }

            SuspectAnswer before = answer;
            answer = Suspecting.Of(question);
            ShowShares(answer, before);
        }

        return End(answer);
    }

    private TraceAnswer Ask(NextLook next)
    {
        TraceText.WriteLook(page, next, question);
        while (true)
        {
            page.Paragraph("Found, clean, cannot tell, or stop?");
            shell.Out.Flush();
            try
            {
                return TraceAnswer.Read(shell.In.ReadLine(), next.Part, question.Debris);
            }
            catch (WrongUseException wrong)
            {
                page.Paragraph(wrong.Message);
            }
        }
    }

    private void ShowShares(SuspectAnswer answer, SuspectAnswer? before)
    {
        page.Gap();
        page.Subheading(answer.Suspects.IsEmpty ? "Nobody is suspected: the family names no part that sheds it." : "Suspects");
        SuspectsText.WriteShares(page, answer, before, MostShares);
        SuspectsText.WriteContradictions(page, answer);
        if (!answer.Together.IsEmpty)
            page.Paragraph("No single part accounts for all that was found: there is more than one source.", indent: 2);
    }

    private int Stop(string again)
    {
        page.Gap();
        page.Paragraph($"Stopped. To go on: {again}{(file is null ? Typed() : "")}");
        return ExitCode.Yes;
    }

    // Without a file the answers themselves are what is taken up again.
    private string Typed() => string.Concat(question.Findings.Where(finding => finding.Debris == question.Debris).Select(finding => finding.Found
        ? $" --found {finding.Part}={finding.Debris.Name}{(finding.Size is { } size ? string.Create(CultureInfo.InvariantCulture, $":{size.Micrometres:0.######}um") : "")}{(finding.Form is { } form ? "," + form.ToString().ToLowerInvariant() : "")}{(finding.Magnetic is { } magnetic ? magnetic ? ",magnetic" : ",not-magnetic" : "")}"
        : $" --clean {finding.Part}"));

    private int End(SuspectAnswer answer)
    {
        TraceText.WriteEnd(page, answer, !answer.Suspects.IsEmpty && LookTable.IsAtLeast(answer.Suspects[0].Share, sure));
        if (!question.Findings.Any(finding => finding.Found && finding.Debris == question.Debris))
        {
            page.Paragraph($"No {question.Debris.Name} was found at any place, so that there is nothing to plan from.");
            return ExitCode.No;
        }

        var request = new PlanRequest(question.Family, question.Standard, [.. question.Failed.Distinct()], [question.Debris]) { Findings = question.Findings };
        if ((request.Failures.IsEmpty ? FailedFromFindings.Take(request, share) : request) is not { } taken)
        {
            page.Paragraph("No part that sheds it has a way to where it was found. Say in the family file what sheds it and how it gets there, or name the failed part: contam plan --failed PART.");
            return ExitCode.No;
        }

        page.Gap();
        PlanText.Write(planner.Plan(taken), question.Family, shell.Out, look);
        return ExitCode.Yes;
    }
}
