using System.CommandLine;
using System.Globalization;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Cli;

/// <summary><c>--limit NAME=NUMBER</c>: how much is taken in from files, where the usual is too little.</summary>
internal static class LimitOption
{
    /// <summary>Deeper than this no file may stand in itself, whatever is asked for: each level takes room on the program's own stack.</summary>
    private const int DeepestNesting = 1_000;

    /// <summary>Every limit by its name, with how it is set and what it is at first.</summary>
    internal static readonly (string Name, Func<ReadLimits, int> Of, Func<ReadLimits, int, ReadLimits> With)[] All =
    [
        ("bytes", limits => limits.FileBytes, (limits, most) => limits with { FileBytes = most }),
        ("values", limits => limits.Values, (limits, most) => limits with { Values = most }),
        ("nesting", limits => limits.Nesting, (limits, most) => limits with { Nesting = most }),
        ("parts", limits => limits.Parts, (limits, most) => limits with { Parts = most }),
        ("joints", limits => limits.Joints, (limits, most) => limits with { Joints = most }),
        ("count", limits => limits.Count, (limits, most) => limits with { Count = most }),
        ("module-depth", limits => limits.ModuleDepth, (limits, most) => limits with { ModuleDepth = most }),
        ("module-uses", limits => limits.ModuleUses, (limits, most) => limits with { ModuleUses = most }),
        ("problems", limits => limits.Problems, (limits, most) => limits with { Problems = most }),
    ];

    private static readonly Option<string[]> Asked = new("--limit")
    {
        Description = $"how much is taken in from files, where the usual is too little: {string.Join(", ", All.Select(limit => limit.Name))}",
        HelpName = "NAME=NUMBER",
        Recursive = true,
        DefaultValueFactory = _ => [],
    };

    public static void AddTo(RootCommand root) => root.Options.Add(Asked);

    /// <summary>The limits that this call asks for, over the usual ones.</summary>
    /// <exception cref="WrongUseException">A limit is unknown, or is no number that it can be.</exception>
    public static ReadLimits Of(ParseResult call)
    {
        ReadLimits limits = ReadLimits.Default;
        foreach (string asked in call.GetValue(Asked) ?? [])
        {
            string name = asked.Split('=')[0];
            int place = Array.FindIndex(All, limit => limit.Name == name);
            if (place < 0)
                throw new WrongUseException($"no limit is called {Wording.Quoted(name)}.{Typed.Near(name, All.Select(limit => limit.Name))} There are {string.Join(", ", All.Select(limit => limit.Name))}.");

            int most = name == "nesting" ? DeepestNesting : int.MaxValue;
            if (!int.TryParse(asked.AsSpan(Math.Min(asked.Length, name.Length + 1)), NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number < 1 || number > most)
                throw new WrongUseException($"{Wording.Quoted(asked)} is no limit. Write a whole number from 1 to {most.ToString(CultureInfo.InvariantCulture)}: --limit {name}={All[place].Of(ReadLimits.Default).ToString(CultureInfo.InvariantCulture)}");
            limits = All[place].With(limits, number);
        }

        return limits;
    }
}
