using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>How a part or a circuit says that what a check warns of is meant so.</summary>
internal static class MeantKeys
{
    private static readonly IdShape Code = new("the code of a lint", "dead-end");

    public static readonly Key<ImmutableArray<Entry<string, string>>> Meant = new(new EntriesShape<string, string>(
        Code, new WordsShape { MustSay = true }, "a mapping from codes of lints to reasons", Code.Pattern))
    {
        Name = "meant", Means = "Warnings of `check` that are meant so here, by code, each with the reason", Example = "{dead-end: the drain ends over the side}",
    };

    /// <summary>What was written; each entry whose code is no lint's gets a problem and is left out.</summary>
    public static ImmutableArray<Meant> Read(ImmutableArray<Entry<string, string>> entries, ProblemList problems)
    {
        var read = ImmutableArray.CreateBuilder<Meant>();
        foreach (Entry<string, string> entry in entries)
        {
            if (ProblemCodes.Find(entry.Key.Value) is not { IsLint: true })
                problems.Add(FamilyProblems.UnknownLint(entry.Key.Place, entry.Key.Value, problems.NearTo(entry.Key.Value, ProblemCodes.Lints.Select(lint => lint.Code))));
            else if (entry.Value.Value is string why)
                read.Add(new Meant(entry.Key.Value, why, entry.Key.Place));
        }

        return read.DrainToImmutable();
    }
}
