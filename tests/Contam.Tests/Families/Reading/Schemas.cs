using Contam.Families.Reading;
using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Tests.Families.Reading;

/// <summary>The schemas in <c>systems/schema</c> are written by the library; <c>CONTAM_UPDATE_CASES=1</c> writes them anew.</summary>
public sealed class Schemas
{
    public static TheoryData<string> Files => ["family", "module", "standard"];

    [Theory]
    [MemberData(nameof(Files))]
    public void Are_those_in_the_repository(string name)
    {
        string path = Path.Combine(CaseFile.Root, "systems", "schema", name + ".schema.json");
        string text = name switch
        {
            "family" => SchemaText.Family(),
            "module" => SchemaText.Module(),
            _ => SchemaText.Standard(),
        };
        if (CaseFile.IsUpdating)
            File.WriteAllText(path, text);
        Assert.Equal(File.ReadAllText(path), text);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Show_examples_that_the_readers_take(string name)
    {
        FormShape file = name switch
        {
            "family" => FamilyKeys.FamilyFile,
            "module" => FamilyKeys.ModuleFile,
            _ => StandardFile.Form,
        };
        var due = new Queue<FormShape>([file]);
        var seen = new HashSet<FormShape>([file]);
        int examples = 0;
        while (due.TryDequeue(out FormShape? form))
        {
            foreach (Key key in form.Keys)
            {
                var problems = new ProblemList(10);
                SourceText source = SourceText.FromString(key.Name, key.Example, problems)!;
                Sheet sheet = SheetParser.Parse(source, new ReadBudget(ReadLimits.Default), problems)!;
                key.AnyShape.ReadBoxed(sheet.Root, new SheetContext(sheet, problems));
                Assert.Equal("", TestCatalogue.Told(problems.ToSorted()));
                examples++;
                foreach (FormShape within in FormsIn(key.AnyShape).Where(seen.Add))
                    due.Enqueue(within);
            }
        }

        // Every form that the schema refers to was looked at.
        string text = SchemaWriter.Write(file, "");
        Assert.Equal(text.Split("\"$ref\": \"").Skip(1).Select(rest => rest[..rest.IndexOf('"')]).Distinct().Count(), seen.Count - 1);
        Assert.True(examples > 20);
    }

    [Fact]
    public void Say_what_every_key_means_in_a_phrase()
    {
        foreach (Key key in FamilyKeys.FamilyFile.Keys.Concat(PartKeys.Part.Keys).Concat(FlowKeys.Link.Keys).Concat(StandardFile.Form.Keys))
        {
            Assert.True(char.IsUpper(key.Means[0]), key.Name);
            Assert.False(key.Means.EndsWith('.'), key.Name);
        }
    }

    // A shape tells its forms only by writing them into a schema.
    private static IEnumerable<FormShape> FormsIn(Shape shape) => shape switch
    {
        FormShape form => [form],
        _ => FormsOf.TryGetValue(shape, out FormShape? form) ? [form] : [],
    };

    private static readonly Dictionary<Shape, FormShape> FormsOf = new()
    {
        [FamilyKeys.Use.AnyShape] = FamilyKeys.UseForm,
        [FamilyKeys.Adjust.AnyShape] = PartKeys.Adjustment,
        [FamilyKeys.Fluids.AnyShape] = FlowKeys.Fluid,
        [FamilyKeys.Parts.AnyShape] = PartKeys.Part,
        [FamilyKeys.Circuits.AnyShape] = FlowKeys.Circuit,
        [FamilyKeys.Links.AnyShape] = FlowKeys.Link,
        [FamilyKeys.Limits.AnyShape] = LimitKeys.Limit,
        [PartKeys.Sheds.AnyShape] = PartKeys.Shed,
        [StandardKeys.Kinds.AnyShape] = KindKeys.Kind,
        [StandardKeys.Debris.AnyShape] = StandardKeys.DebrisForm,
        [StandardKeys.Rules.AnyShape] = StandardKeys.Rule,
        [StandardKeys.PassesOn.AnyShape] = StandardKeys.PassingOn,
        [StandardKeys.Times.AnyShape] = MinutesKeys.Shape,
        [StandardKeys.Cautions.AnyShape] = StandardKeys.Caution,
        [TextKeys.Texts.AnyShape] = TextKeys.StepText,
        [TextKeys.Methods.AnyShape] = TextKeys.Method,
        [TextKeys.Supplies.AnyShape] = TextKeys.Supply,
        [TextKeys.FrameSections[0].Key.AnyShape] = TextKeys.FrameStep,
    };
}
