using System.Runtime.Loader;
using System.Text;
using Contam.Families.Reading.Sheets;
using Contam.Problems;
using Contam.Treatment.Reading;

namespace Contam.Tests.Families.Reading;

/// <summary>The digests of the built-in standards; <c>CONTAM_UPDATE_CASES=1</c> writes them anew.</summary>
public sealed class Digests
{
    public static TheoryData<string> BuiltIn => ["kinds", "house"];

    public static TheoryData<string> Shipped =>
        [.. Directory.EnumerateFiles(Path.Combine(CaseFile.Root, "systems"), "*.yaml", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(CaseFile.Root, file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(BuiltIn))]
    public void Are_those_of_the_standards_in_the_repository(string name)
    {
        string path = Path.Combine(CaseFile.Root, "src", "Contam", "Treatment", "Reading", "Digests", name + ".digest");
        string digest = SheetDigest.Write(Parsed(Path.Combine("systems", "standards", name + ".yaml")));
        if (CaseFile.IsUpdating)
            File.WriteAllText(path, digest);
        Assert.Equal(File.ReadAllText(path), digest);
    }

    /// <summary>Whether a start takes the standards apart shows in nothing but its time, and in whether the YAML library is loaded.</summary>
    [Fact]
    public void Spare_the_start_the_yaml_library()
    {
        var fresh = new FreshLibraries();
        try
        {
            Type standards = fresh.LoadFromAssemblyPath(typeof(BuiltInStandards).Assembly.Location).GetType(typeof(BuiltInStandards).FullName!)!;
            Assert.NotNull(standards.GetProperty(nameof(BuiltInStandards.HouseOverKinds))!.GetValue(null));
            Assert.DoesNotContain("YamlDotNet", fresh.Assemblies.Select(library => library.GetName().Name));
        }
        finally
        {
            fresh.Unload();
        }
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Say_of_a_file_what_the_yaml_library_says(string file)
    {
        Sheet parsed = Parsed(file);
        Sheet read = SheetDigest.Read(parsed.Source, Encoding.UTF8.GetBytes(SheetDigest.Write(parsed)))!;
        Assert.Equal(Told(parsed.Root), Told(read.Root));
    }

    [Theory]
    [InlineData("a: 'it''s'\nb: \"two\\nlines, a \\\\ and \\\\n\"\nc: >-\n  folded\n  text\nd: |\n  kept\n  lines\n")]
    [InlineData("a:\n- {b: , c: ''}\n- [d, [], {}]\n- \"µ — 🙂\"\n- plain text that\n  goes on\n")]
    public void Say_the_same_of_every_way_to_write_a_text(string yaml)
    {
        Sheet parsed = Parsed(SourceText.FromString("test.yaml", yaml, new ProblemList(10))!);
        Sheet read = SheetDigest.Read(parsed.Source, Encoding.UTF8.GetBytes(SheetDigest.Write(parsed)))!;
        Assert.Equal(Told(parsed.Root), Told(read.Root));
    }

    [Fact]
    public void Of_another_text_count_for_nothing()
    {
        byte[] digest = Encoding.UTF8.GetBytes(SheetDigest.Write(Parsed(SourceText.FromString("test.yaml", "a: one", new ProblemList(10))!)));
        Assert.Null(SheetDigest.Read(SourceText.FromString("test.yaml", "a: two", new ProblemList(10))!, digest));
    }

    private static Sheet Parsed(string file)
    {
        var problems = new ProblemList(10);
        return Parsed(SourceText.FromBytes(file, File.ReadAllBytes(Path.Combine(CaseFile.Root, file)), problems)!);
    }

    private static Sheet Parsed(SourceText source)
    {
        var problems = new ProblemList(10);
        Sheet sheet = SheetParser.Parse(source, new ReadBudget(ReadLimits.Default), problems)!;
        Assert.Empty(problems.ToSorted());
        return sheet;
    }

    private static string Told(SheetNode node) => node switch
    {
        TextNode text => $"{text.Start}-{text.End} {text.IsPlain} {text.Value}\n",
        ListNode list => $"{list.Start} [\n{string.Concat(list.Items.Select(Told))}]\n",
        WholeMap map => $"{map.Start} {{\n{string.Concat(map.Entries.Select(entry => Told(entry.Key) + Told(entry.Value)))}}}\n",
        _ => "broken\n",
    };

    /// <summary>The product's libraries once more, with nothing read yet.</summary>
    private sealed class FreshLibraries() : AssemblyLoadContext("fresh", isCollectible: true)
    {
        protected override System.Reflection.Assembly? Load(System.Reflection.AssemblyName name)
        {
            string path = Path.Combine(AppContext.BaseDirectory, name.Name + ".dll");
            return File.Exists(path) ? LoadFromAssemblyPath(path) : null;
        }
    }
}
