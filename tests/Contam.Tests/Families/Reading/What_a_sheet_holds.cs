using System.Text.RegularExpressions;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Tests.Families.Reading;

/// <summary>Whatever stands in a text that nothing is said against stands in its sheet too: the YAML library has been seen to drop a value without a word.</summary>
public sealed partial class What_a_sheet_holds
{
    [Fact]
    public void Is_all_that_its_text_says()
    {
        string family = File.ReadAllText(CaseFile.PathOf("Families/Reading/Golden/harbour.yaml"));
        var random = new Random(31);
        int sound = 0;
        for (int i = 0; i < 6_000; i++)
        {
            string text = Mutated_texts.Mutate(family, random);
            if (LeftOutOf(text) is not string left)
                continue;
            Assert.True(left.Length == 0, $"{left} is in no value of text {i}");
            sound++;
        }

        Assert.InRange(sound, 1_000, 5_900);
    }

    [Fact]
    public void Is_all_that_its_text_says_where_a_key_is_missing()
    {
        string family = File.ReadAllText(CaseFile.PathOf("Families/Reading/Golden/harbour.yaml"));
        MatchCollection keys = KeyOfLine().Matches(family);
        Assert.NotEmpty(keys);
        Assert.All(keys, key => Assert.Contains(LeftOutOf(family.Remove(key.Index, key.Length)), (string?[])[null, ""]));
        Assert.Null(LeftOutOf("parts:\n  : {kind: tank}\n"));
        Assert.Null(LeftOutOf("parts:\n  : tank\ncircuits: {}\n"));
    }

    [Theory]
    [InlineData("a: b # c\n", "")]
    [InlineData("a: [b, \"c\", 'd']\n? e\n: >-\n  f\n  g\n", "")]
    public void Leaves_out_comments_and_signs_alone(string text, string left) => Assert.Equal(left, LeftOutOf(text));

    /// <summary>What of a text is in no value, comments and the signs of YAML left aside; <c>null</c> where there is something to tell of it.</summary>
    private static string? LeftOutOf(string text)
    {
        var problems = new ProblemList(10);
        if (SourceText.FromString("f.yaml", text, problems) is not SourceText source
            || SheetParser.Parse(source, new ReadBudget(ReadLimits.Default), problems) is not Sheet sheet || problems.Count > 0)
            return null;
        char[] rest = source.Text.ToCharArray();
        var waiting = new Stack<SheetNode>([sheet.Root]);
        while (waiting.TryPop(out SheetNode? node))
        {
            if (node is TextNode { End: int end, Start: int start })
                Array.Fill(rest, ' ', start, end - start);
            foreach (SheetNode within in node is ListNode list ? list.Items : [])
                waiting.Push(within);
            foreach ((TextNode key, SheetNode value) in node is MapNode map ? map.Entries : [])
            {
                waiting.Push(key);
                waiting.Push(value);
            }
        }

        return SignOrComment().Replace(new string(rest), "");
    }

    [GeneratedRegex("(?<=^ *)[a-z][^ :\n]*(?=:)", RegexOptions.Multiline)]
    private static partial Regex KeyOfLine();

    [GeneratedRegex(@"(?<=^|[\s\]}])#.*$|^(---|\.\.\.)(?=\s|$)|^%.*$|[\s\uFEFF{}\[\],:?-]", RegexOptions.Multiline)]
    private static partial Regex SignOrComment();
}
