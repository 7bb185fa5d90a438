using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Cli.Tests.Sheets;

/// <summary>Sessions of <c>contam plan --format html</c>.</summary>
public sealed partial class A_bench_sheet
{
    private const string Diesel = "systems/families/harbour-diesel-i4.yaml";
    private const string Pump = $"plan {Diesel} --failed injection-pump --debris metal";

    /// <summary>Of every shipped family the first part that sheds, with the first debris that it sheds.</summary>
    public static TheoryData<string> Failures =>
    [
        .. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal).Select(file =>
        {
            Family family = FamilyReader.ReadFile(file, BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
            Part failed = family.Parts.First(part => !part.Sheds.IsEmpty);
            return $"plan systems/families/{Path.GetFileName(file)} --failed {failed.Id} --debris {failed.Sheds[0].Debris.Name}";
        }),
    ];

    [Theory]
    [MemberData(nameof(Failures))]
    public void Has_all_that_the_plan_has(string words)
    {
        string html = CommandSession.Of(words + " --format html").Out;
        using JsonDocument plan = JsonDocument.Parse(CommandSession.Of(words + " --format json").Out);
        string[] ids = [.. Ids().Matches(html).Select(match => match.Groups["id"].Value)];
        string read = Read(html);

        Assert.Equal(ids.Distinct(StringComparer.Ordinal), ids);
        Assert.All(All(plan, "steps"), step => Assert.Contains($"tick-{step.GetProperty("number").GetInt32()}", ids));
        Assert.All(All(plan, "parts"), part => Assert.Contains($"part-{part.GetProperty("id").GetString()}", ids));
        Assert.All(All(plan, "parts"), part => Assert.Contains(part.GetProperty("name").GetString()!, read, StringComparison.Ordinal));
        Assert.All(All(plan, "cautions"), caution => Assert.Contains(Spaced(caution.GetProperty("text").GetString()!), read, StringComparison.Ordinal));
        Assert.All(All(plan, "order"), line => Assert.Contains(line.GetProperty("item").GetString()!, read, StringComparison.Ordinal));
        // A step that stands for one part alone is worded on the sheet as it is in the plan; those of a repeated part share their words.
        JsonElement[] alone = [.. All(plan, "steps").Where(step => step.GetProperty("part").ValueKind == JsonValueKind.Null)];
        Assert.NotEmpty(alone);
        // The step of a deciding look begins with its letter: LOOK A at the strainer.
        int[] looks = [.. All(plan, "looks").Select(look => look.GetProperty("step").GetInt32())];
        Assert.All(alone, step =>
        {
            string text = step.GetProperty("text").GetString()!;
            bool isLook = looks.Contains(step.GetProperty("number").GetInt32()) && text.StartsWith("Look ", StringComparison.Ordinal);
            Assert.Contains(Spaced(isLook ? text["Look".Length..] : text), read, StringComparison.Ordinal);
        });
    }

    [Theory]
    [MemberData(nameof(Failures))]
    public void Asks_for_nothing_outside_itself(string words)
    {
        string html = CommandSession.Of(words + " --format html").Out;

        Assert.Equal(html, CommandSession.Of(words + " --format html").Out);
        Assert.DoesNotContain("://", html.Replace("xmlns=\"http://www.w3.org/2000/svg\"", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", WebUtility.HtmlDecode(html), StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)<(link|img|iframe|object|embed|form)\\b|\\bsrc=|@import|url\\(", html);
        Assert.All(Links().Matches(html), link => Assert.Contains($"id=\"{link.Groups["to"].Value}\"", html, StringComparison.Ordinal));
    }

    [Fact]
    public void Tells_the_way_to_a_part_hop_by_hop()
    {
        string html = CommandSession.Of(Pump + " --format html").Out;
        using JsonDocument plan = JsonDocument.Parse(CommandSession.Of(Pump + " --format json").Out);

        Assert.All(All(plan, "parts"), part =>
        {
            string row = html[html.IndexOf($"id=\"part-{part.GetProperty("id").GetString()}\"", StringComparison.Ordinal)..];
            row = row[..row.IndexOf("</tr>", StringComparison.Ordinal)];
            string way = string.Join(' ', part.GetProperty("path").EnumerateArray().Select(id => id.GetString()));
            Assert.Contains($"data-way=\"{way}\"", row, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Says_what_each_step_comes_after_and_who_does_it()
    {
        string html = CommandSession.Of(Pump + " --technicians 2 --format html").Out;
        using JsonDocument plan = JsonDocument.Parse(CommandSession.Of(Pump + " --technicians 2 --format json").Out);

        Assert.Contains("id=\"by-person\"", html, StringComparison.Ordinal);
        Assert.All(All(plan, "steps"), step =>
        {
            string after = string.Join(' ', step.GetProperty("after").EnumerateArray().Select(number => number.GetInt32()));
            string box = Regex.Match(html, $"<input[^>]*id=\"tick-{step.GetProperty("number").GetInt32()}\"[^>]*>").Value;
            if (after.Length > 0)
                Assert.Contains($"data-after=\"{after}\"", box, StringComparison.Ordinal);
            else
                Assert.DoesNotContain("data-after=\"1", box, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Goes_by_the_units_asked_for() =>
        Assert.Contains("through fuel tank (up to 15.75 thou)", Read(CommandSession.Of(Pump + " --format html --units imperial").Out), StringComparison.Ordinal);

    private static JsonElement[] All(JsonDocument plan, string list) => [.. plan.RootElement.GetProperty(list).EnumerateArray()];

    private static string Read(string html) => Spaced(WebUtility.HtmlDecode(Tags().Replace(Unread().Replace(html, ""), " ")));

    private static string Spaced(string text) => Spaces().Replace(text, " ");

    [GeneratedRegex("<(script|style)>.*?</\\1>", RegexOptions.Singleline)]
    private static partial Regex Unread();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex("\\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(" id=\"(?<id>[^\"]+)\"")]
    private static partial Regex Ids();

    [GeneratedRegex("href=\"#(?<to>[^\"]+)\"")]
    private static partial Regex Links();
}
