using System.Text;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Problems;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Families.Reading;

/// <summary>Sound files with random damage, the same on every run.</summary>
public sealed class Mutated_texts
{
    private const int Texts = 2_000;

    private static readonly string[] Pieces =
    [
        "\t", "\r", "\n", "\n\n", "  ", "- ", ": ", ",", "[", "]", "{", "}", "\"", "'", "|", ">", ">-\n", "&a ", "*a", "!t ", "!", "<<: ", "# ", "#", "-#", "---\n", "...\n",
        "%YAML 1.2\n", "? ", "\0", "\u0007", "\uFEFF", "\u2028", "\uD83D", "µ", "🙂", "~", "null", "-1", "1e999", "9,5 mm", "\\", "\\u0000", "format: 2\n", "count: 99999\n", "@", "`", "=",
    ];

    [Fact]
    public void Are_answered_and_never_thrown_at()
    {
        string family = File.ReadAllText(CaseFile.PathOf("Families/Reading/Golden/harbour.yaml"));
        string standard = CaseFile.Read("Treatment/Reading/standards.cases").Single(one => one.Name == "a sound one").Files[0].Text;
        var random = new Random(20_000);
        int unsound = 0;
        for (int i = 0; i < Texts; i++)
        {
            bool isFamily = i % 3 != 0;
            string text = Mutate(isFamily ? family : standard, random);
            (bool isSound, IReadOnlyList<Problem> problems) = isFamily ? ReadFamily(text) : ReadStandard(text);
            Assert.Equal(isSound, problems.All(problem => problem.Severity != Severity.Error));
            string[] lines = text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
            foreach (Problem problem in problems)
                AssertInside(problem, lines);
            unsound += isSound ? 0 : 1;
        }

        // Damage that never shows would make this test worth nothing.
        Assert.InRange(unsound, Texts / 2, Texts - 1);
    }

    private static (bool, IReadOnlyList<Problem>) ReadFamily(string text)
    {
        // A name in no folder that exists: modules are not found, and nothing outside is read.
        Outcome<Family> outcome = FamilyReader.ReadText(text, "no-such-folder/f.yaml", TestCatalogue.Value);
        return (outcome.IsSound, outcome.Problems);
    }

    private static (bool, IReadOnlyList<Problem>) ReadStandard(string text)
    {
        Outcome<ShopStandard> outcome = StandardReader.ReadText(text, "s.yaml", TestCatalogue.Value);
        return (outcome.IsSound, outcome.Problems);
    }

    /// <summary>The text with a few random damages.</summary>
    internal static string Mutate(string text, Random random)
    {
        var mutated = new StringBuilder(text);
        int changes = random.Next(1, 4);
        for (int i = 0; i < changes; i++)
        {
            int at = random.Next(mutated.Length + 1);
            int length = Math.Min(random.Next(1, 30), mutated.Length - at);
            switch (random.Next(5))
            {
                case 0:
                    mutated.Remove(at, length);
                    break;
                case 1:
                    mutated.Insert(at, Pieces[random.Next(Pieces.Length)]);
                    break;
                case 2:
                    mutated.Insert(at, mutated.ToString(at, length));
                    break;
                case 3:
                    if (at < mutated.Length)
                        mutated[at] = (char)random.Next(' ', 127);
                    break;
                default:
                    mutated.Length = at;
                    break;
            }
        }

        return mutated.ToString();
    }

    private static void AssertInside(Problem problem, string[] lines)
    {
        if (problem.Place is not SourceSpan place)
            return;
        Assert.InRange(place.Line, 1, lines.Length);
        Assert.InRange(place.Column, 1, lines[place.Line - 1].Length + 1);
        Assert.NotEqual("", problem.Text);
        Assert.DoesNotContain('\n', problem.Text);
        Assert.DoesNotContain('\n', problem.Mend);
        Assert.NotNull(ProblemCodes.Find(problem.Code));
    }
}
