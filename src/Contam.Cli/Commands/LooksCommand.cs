using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Plans;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Commands;

/// <summary><c>contam looks</c>: how far to go, by a few looks that decide.</summary>
internal sealed class LooksCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly FailureArguments failure = new();
    private readonly Option<int?> most = new("--looks") { Description = $"the most looks, 0 to {HowFar.MostLooks} (default: as many as pay)", HelpName = "N" };
    private readonly Option<string[]> lookAt = FailureArguments.ListOption("--look-at", "PART[,PART]", "look at these places, and say what hangs on each");
    private readonly Option<string> format = CommonOptions.OneOf("--format", "form of the answer", "text", "json");

    public Command Build()
    {
        var command = new Command(
            "looks",
            """
            How far to go: the few looks that decide most, what is sure whatever they show, and what each part needs as they come out.
            Whatever the looks show, every part that debris could have reached then is treated.

            Example:
              contam looks systems/families/harbour-reverse-gear.yaml --failed output-gear --debris metal
            """);
        failure.AddTo(command);
        command.Options.Add(most);
        command.Options.Add(lookAt);
        command.Options.Add(format);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        if (loading.Read(call, failure) is not { } asked)
            return ExitCode.WrongUse;
        int count = call.GetValue(most) ?? HowFar.MostLooks;
        if (count is < 0 or > HowFar.MostLooks)
            throw new WrongUseException($"--looks: 0 to {HowFar.MostLooks} was expected, got {count}.");
        ImmutableArray<PartId>? places = call.GetValue(lookAt) is { Length: > 0 } named ? [.. named.Select(id => PlaceOf(asked.Family, id)).Distinct()] : null;
        var request = new PlanRequest(asked.Family, asked.Standard, asked.Failed, asked.Debris) { Findings = asked.Findings };
        LooksAnswer answer;
        try
        {
            answer = HowFar.Of(request, count, places);
        }
        catch (ArgumentException wrong) when (places is not null)
        {
            throw new WrongUseException($"--look-at: {wrong.Message.Split(" (Parameter", StringSplitOptions.None)[0]}. Name other places, or leave the option out to have them chosen.");
        }

        if (call.GetValue(format) == "json")
            shell.Out.Write(LooksJson.Write(answer, asked.Family));
        else
            LooksText.Write(answer, request, shell.Out, CommonOptions.LookOf(call, shell));
        return ExitCode.Yes;
    }

    private static PartId PlaceOf(Family family, string id) => family.Find(new PartId(id))?.Id
        ?? throw new WrongUseException($"--look-at: {family.Id} has no part {Problems.Wording.Quoted(id)}. `contam parts` lists them.");
}
