using System.Text.RegularExpressions;
using Contam.Families;

namespace Contam.Support.Notation;

/// <summary>Reads an arrow between two parts; the grammar stands at <see cref="CaseReader"/>.</summary>
internal static partial class ArrowReader
{
    /// <summary>One joint, or two for an arrow both ways. Their numbers are given later.</summary>
    internal static IEnumerable<Joint> Read(string arrow, PartId from, PartId to, string circuit)
    {
        var joint = new Joint(0, from, to, circuit, ShopFloor.Written(1));
        if (arrow == ">")
            return [joint];
        if (arrow == "~")
            return [joint with { IsLink = true, When = EngineStates.None }];
        joint = WithModifiers(joint with { IsLink = true }, arrow[1..^1]);
        return arrow[0] == '<' ? [joint, joint with { From = to, To = from }] : [joint];
    }

    private static Joint WithModifiers(Joint joint, string modifiers)
    {
        if (modifiers is "" or "-")
            return joint;
        Match match = Modifiers().Match(modifiers);
        if (!match.Success)
            throw new FormatException($"'{modifiers}' is not what a link can say");
        foreach (Capture condition in match.Groups["condition"].Captures)
            joint = joint with { OnlyIfFailed = new PartId(condition.Value) };
        foreach (Capture passage in match.Groups["passage"].Captures)
            joint = joint with { Passage = DirectiveReader.Size(passage.Value) };
        foreach (Capture when in match.Groups["when"].Captures)
            joint = joint with { When = when.Value == "never" ? EngineStates.None : DirectiveReader.States(when.Value.Split('+')) };
        return joint;
    }

    [GeneratedRegex(@"^(?:\?(?<condition>[a-z][a-z0-9-]*)|\((?<passage>[^)]*)\)|/(?<when>[a-z+]+))+$")]
    private static partial Regex Modifiers();
}
