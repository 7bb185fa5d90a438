using System.Text.RegularExpressions;
using Contam.Support;
using Contam.Tests.Families.Reading;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Procedure;

/// <summary>Every text of the standards that come with the library, held to the rules of writing.</summary>
public sealed partial class Words_of_the_standards
{
    private static readonly ShopStandard House = BuiltInStandards.HouseOverKinds;

    private static IEnumerable<string> Procedural =>
    [
        .. House.Texts.SelectMany(text => new[] { text.Say, text.Until, text.StopIf }),
        .. House.Methods.SelectMany(method => new[] { method.Say, method.Until, method.StopIf }),
        .. House.Frame.SelectMany(step => new[] { step.Say, step.Until, step.StopIf }),
    ];

    private static IEnumerable<string> Descriptive =>
        [.. House.Cautions.Select(caution => caution.Say), .. House.Rules.Select(rule => rule.Because), .. House.Kinds.Select(kind => kind.About)];

    [Fact]
    public void Have_short_sentences()
    {
        Assert.Equal([], Procedural.SelectMany(WritingRules.Sentences).Where(sentence => WritingRules.Words(sentence) > WritingRules.MostInProcedure));
        Assert.Equal([], Descriptive.SelectMany(WritingRules.Sentences).Where(sentence => WritingRules.Words(sentence) > WritingRules.MostInDescription));
    }

    [Fact]
    public void Are_words_of_today() =>
        Assert.Equal([], Procedural.Concat(Descriptive).SelectMany(text => WritingRules.BannedIn(text).Select(word => $"{word}: {text}")));

    [Fact]
    public void Keep_a_step_to_one_line() =>
        Assert.Equal([], House.Texts.Where(text => WritingRules.Words(text.Say) > WritingRules.MostInProcedure).Select(text => text.Say));

    /// <summary>A method that nobody uses is a text that nobody reads.</summary>
    [Fact]
    public void Use_every_method()
    {
        var used = House.Texts.Select(text => text.Method).Concat(House.Frame.Select(step => step.Method)).OfType<string>().ToHashSet();
        Assert.Equal([], House.Methods.Select(method => method.Id).Distinct().Except(used));
    }

    /// <summary>Circuits are named by whoever describes a family; the house knows what runs in them.</summary>
    [Fact]
    public void Name_no_circuit() => Assert.DoesNotContain(
        House.Texts.Select(text => text.For).Concat(House.Methods.Select(method => method.For)).Concat(House.Frame.Select(step => step.For)).Concat(House.Cautions.Select(caution => caution.For)),
        target => target.Circuit is not null);

    /// <summary>What a technician reads is in a standard, where a shop can change it: the procedure's code holds no sentence.</summary>
    [Fact]
    public void Are_nowhere_in_the_code()
    {
        string folder = Path.Combine(CaseFile.Root, "src", "Contam", "Procedure");
        string[] lines = [.. Directory.GetFiles(folder, "*.cs").SelectMany(File.ReadAllLines).Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && !line.Contains("Exception", StringComparison.Ordinal) && !line.Contains(": base(", StringComparison.Ordinal))];
        Assert.True(lines.Length > 500);
        Assert.Equal([], lines.SelectMany(line => Literal().Matches(line).Select(match => match.Value)).Where(text => FourWords().IsMatch(text)));
    }

    [GeneratedRegex("\"[^\"]*\"")]
    private static partial Regex Literal();

    [GeneratedRegex(@"[A-Za-z']+,? [A-Za-z']+,? [A-Za-z']+,? [A-Za-z']+")]
    private static partial Regex FourWords();
}
