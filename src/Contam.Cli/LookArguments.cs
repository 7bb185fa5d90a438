using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Plans;
using Contam.Problems;

namespace Contam.Cli;

/// <summary>Which looks decide: how many, or where.</summary>
internal sealed class LookArguments
{
    private readonly Option<int?> most = new("--looks") { Description = $"the most looks that decide how far to go, 0 to {HowFar.MostLooks} (default: as many as pay)", HelpName = "N" };
    private readonly Option<string[]> lookAt = FailureArguments.ListOption("--look-at", "PART[,PART]", "let the looks at these places decide");

    public Option Most => most;

    public Option LookAt => lookAt;

    public void AddTo(Command command)
    {
        command.Options.Add(most);
        command.Options.Add(lookAt);
    }

    /// <summary>The request with the looks that are asked for.</summary>
    /// <exception cref="WrongUseException">There are not so many looks, or the family has no such place.</exception>
    public PlanRequest Into(PlanRequest request, ParseResult call)
    {
        int count = call.GetValue(most) ?? HowFar.MostLooks;
        if (count is < 0 or > HowFar.MostLooks)
            throw new WrongUseException($"--looks: 0 to {HowFar.MostLooks} was expected, got {count}.");
        ImmutableArray<PartId>? places = call.GetValue(lookAt) is { Length: > 0 } named ? [.. named.Select(id => PlaceOf(request.Family, id)).Distinct()] : null;
        return request with { MostLooks = count, LookAt = places };
    }

    /// <summary>What is answered for the request; where a named place decides nothing, why.</summary>
    /// <exception cref="WrongUseException">A named place decides nothing.</exception>
    public static T Answer<T>(PlanRequest request, Func<PlanRequest, T> ask)
    {
        try
        {
            return ask(request);
        }
        catch (ArgumentException wrong) when (request.LookAt is not null)
        {
            throw new WrongUseException($"--look-at: {wrong.Message.Split(" (Parameter", StringSplitOptions.None)[0]}. Name other places, or leave the option out to have them chosen.");
        }
    }

    private static PartId PlaceOf(Family family, string id) => family.Find(new PartId(id))?.Id
        ?? throw new WrongUseException($"--look-at: {family.Id} has no part {Wording.Quoted(id)}. `contam parts` lists them.");
}
