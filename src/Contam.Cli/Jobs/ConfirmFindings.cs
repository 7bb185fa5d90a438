using System.Collections.Immutable;
using System.CommandLine;
using Contam.Jobs;
using Contam.Reports.Text;

namespace Contam.Cli.Jobs;

/// <summary>A clean finding that a file brings counts only when somebody here stands for it: named one by one, or asked one by one at a terminal.</summary>
internal sealed class ConfirmFindings(JobShop shop)
{
    public Option<string[]> Option { get; } = FailureArguments.ListOption("--confirm-findings", "PART=DEBRIS:NAME", "who looked, for a clean finding that the file brings; once for each of them", splits: false);

    /// <summary>Who stands for which of these.</summary>
    public ImmutableArray<Confirmation> Ask(ParseResult call, ImmutableArray<CleanFinding> findings)
    {
        List<Confirmation> confirmed = [.. call.GetValue(Option)!.Select(Read)];
        if (confirmed.FirstOrDefault(one => !findings.Any(finding => finding.Part == one.Part && finding.Debris == one.Debris)) is { } stranger)
            throw new WrongUseException($"--confirm-findings {TextPage.Harmless(stranger.Part)}={TextPage.Harmless(stranger.Debris)}: the file has no such clean finding.{(findings.IsEmpty ? " It has none at all." : $" It has {string.Join("; ", findings.Select(RefusalWords.Sentence))}.")}");
        if (!shop.Shell.CanAsk)
            return [.. confirmed];
        foreach (CleanFinding finding in findings.Where(finding => !confirmed.Any(one => one.Part == finding.Part && one.Debris == finding.Debris)))
        {
            shop.Shell.Out.Write($"The file counts {RefusalWords.Sentence(finding)}. Who looked, and stands for it? [nobody] ");
            shop.Shell.Out.Flush();
            if (shop.Shell.In.ReadLine()?.Trim() is { Length: > 0 } name)
                confirmed.Add(new Confirmation(finding.Part, finding.Debris, name));
        }

        return [.. confirmed];
    }

    private static Confirmation Read(string typed)
    {
        string[] sides = typed.Split('=', 2);
        string[] rest = sides.Length == 2 ? sides[1].Split(':', 2) : [];
        return rest.Length == 2 && rest[1].Trim().Length > 0
            ? new Confirmation(sides[0], rest[0], rest[1].Trim())
            : throw new WrongUseException($"--confirm-findings {TextPage.Harmless(typed)} does not say who looked. Write PART=DEBRIS:NAME, for instance gear-housing=metal:Ada.");
    }
}
