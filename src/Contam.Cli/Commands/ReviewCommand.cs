using System.CommandLine;
using System.Globalization;
using Contam.Cli.Reviews;
using Contam.Cli.Starting;
using Contam.Families;
using Contam.Reports.Json;
using Contam.Reports.Reviews;
using Contam.Reports.Text;
using Contam.Reviews;

namespace Contam.Cli.Commands;

/// <summary><c>contam review</c>: what somebody else should check at the machine before a family is trusted.</summary>
internal sealed class ReviewCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string> family = new("FAMILY") { Description = "family file, or the name of a family that comes with contam" };
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<string?> sign = new("--sign") { Description = "the sheet is ticked: keep that NAME has reviewed the family as it stands, beside its file", HelpName = "NAME" };
    private readonly Option<string?> note = new("--note") { Description = "what belongs to the signature: which machine, what was not seen", HelpName = "TEXT" };
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the sheet", "text", "markdown", "html");

    public Command Build()
    {
        var command = new Command(
            "review",
            """
            A sheet for somebody else to check at the machine before the family is trusted: the joints on which most plans hang, each
            circuit's walk, each wall between fluids, each return, each barrier's figure, and all that is not known.

            With --sign the review is kept in a folder beside the file (winch.reviews beside winch.yaml), with the files as they were; nothing
            signed is ever written over. A plan says whether its family was reviewed, by whom, and what has changed since.

            Examples:
              contam review systems/families/harbour-diesel-i4.yaml --format html > review.html
              contam review winch.yaml --sign "Ada Quay" --note "port winch; motor drain not seen"
            """);
        command.Arguments.Add(family);
        command.Options.Add(standard);
        command.Options.Add(sign);
        command.Options.Add(note);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (loading.Standard(call.GetValue(standard)) is not { } rules || loading.Family(call.GetValue(family)!, rules) is not { } read)
            return ExitCode.WrongUse;
        if (call.GetValue(sign) is { } name)
            return Sign(call, read, name);
        if (call.GetValue(note) is not null)
            throw new WrongUseException("a note belongs to a signature. Add --sign NAME, or leave --note out.");
        FamilyReview review = Reviewing.Of(read);
        TextLook look = CommonOptions.LookOf(call, shell);
        switch (call.GetValue(format))
        {
            case "markdown":
                ReviewMarkdown.Write(review, shell.Out, look);
                break;
            case "html":
                ReviewHtml.Write(review, shell.Out, look);
                break;
            default:
                ReviewText.Write(review, shell.Out, look);
                break;
        }

        return ExitCode.Yes;
    }

    private int Sign(ParseResult call, Family read, string name)
    {
        string file = call.GetValue(family)!;
        if (NamedFile.ShippedFamily(file) is not null)
            throw new WrongUseException($"{file} comes with contam and is invented: there is no machine to hold it against. A family of your own begins with contam describe FOLDER or contam start FOLDER --like {file}.");
        string noted = call.GetValue(note)?.Trim() ?? "";
        RefuseUnseen("--sign", name.Trim(), 100);
        RefuseUnseen("--note", noted, 1000);
        if (name.Trim().Length == 0)
            throw new WrongUseException("a signature needs a name: --sign NAME.");
        DateTimeOffset now = shell.Clock.GetLocalNow();
        string kept = new ReviewFolder(file).Keep(new SignedReview(read.Id, name.Trim(), now.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture), noted, read.Sha256, read.Sources));
        shell.Out.Write(TextPage.Harmless($"{name.Trim()} has signed that {read.Id} was held against the machine, as its files stand now. Kept in {kept}.") + "\n");
        return ExitCode.Yes;
    }

    private static void RefuseUnseen(string option, string text, int most)
    {
        if (text.Length > most || text.Any(char.IsControl))
            throw new WrongUseException(string.Create(CultureInfo.InvariantCulture, $"{option} takes one line of at most {most} characters that can be seen."));
    }
}
