using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>Writes JSON Schema (draft 2020-12) from shapes. Forms are written once, under <c>$defs</c>, and referred to.</summary>
internal sealed class SchemaWriter
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        IndentSize = 2,
        NewLine = "\n",
        // Only markup would need more escapes; units such as µm stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly Utf8JsonWriter json;
    private readonly Queue<FormShape> due = new();
    private readonly HashSet<FormShape> known = [];

    private SchemaWriter(Utf8JsonWriter json) => this.json = json;

    /// <summary>The schema of a file whose outermost value is this form, with a newline at its end.</summary>
    public static string Write(FormShape file, string title)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Options))
            new SchemaWriter(json).WriteFile(file, title);
        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    /// <summary>Writes the <c>type</c>.</summary>
    public void Type(string type) => json.WriteString("type", type);

    /// <summary>Writes a keyword with a text.</summary>
    public void Text(string keyword, string text) => json.WriteString(keyword, text);

    /// <summary>Writes a keyword with texts.</summary>
    public void Texts(string keyword, IEnumerable<string> texts)
    {
        json.WriteStartArray(keyword);
        foreach (string text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }

    /// <summary>Writes a keyword with a whole number.</summary>
    public void Number(string keyword, long number) => json.WriteNumber(keyword, number);

    /// <summary>Writes a keyword with true or false.</summary>
    public void Flag(string keyword, bool flag) => json.WriteBoolean(keyword, flag);

    /// <summary>Writes a keyword with a schema.</summary>
    public void Nested(string keyword, Action<SchemaWriter> write)
    {
        json.WriteStartObject(keyword);
        write(this);
        json.WriteEndObject();
    }

    /// <summary>Writes that any of these schemas may fit.</summary>
    public void AnyOf(params ReadOnlySpan<Action<SchemaWriter>> choices)
    {
        json.WriteStartArray("anyOf");
        foreach (Action<SchemaWriter> choice in choices)
        {
            json.WriteStartObject();
            choice(this);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Refers to a form, which is written later.</summary>
    public void Refer(FormShape form)
    {
        json.WriteString("$ref", "#/$defs/" + form.Name);
        if (known.Add(form))
            due.Enqueue(form);
    }

    private void WriteFile(FormShape file, string title)
    {
        json.WriteStartObject();
        json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
        json.WriteString("title", title);
        WriteForm(file);
        json.WriteStartObject("$defs");
        while (due.TryDequeue(out FormShape? form))
        {
            json.WriteStartObject(form.Name);
            if (form.Short is Key alone)
                AnyOf(alone.AnyShape.WriteSchema, within => within.WriteForm(form));
            else
                WriteForm(form);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    private void WriteForm(FormShape form)
    {
        if (form.Means.Length > 0)
            json.WriteString("description", form.Means);
        Type("object");
        json.WriteStartObject("properties");
        foreach (Key key in form.Keys)
            WriteKey(key);
        json.WriteEndObject();
        if (form.Required.Length > 0)
            Texts("required", form.Required.Select(key => key.Name));
        if (form.AtLeast > 0)
            Number("minProperties", form.AtLeast);
        Flag("additionalProperties", false);
    }

    private void WriteKey(Key key)
    {
        json.WriteStartObject(key.Name);
        json.WriteString("description", key.Means);
        json.WriteStartArray("examples");
        WriteExample(key);
        json.WriteEndArray();
        key.AnyShape.WriteSchema(this);
        json.WriteEndObject();
    }

    private void WriteExample(Key key)
    {
        var problems = new ProblemList(1);
        SourceText? source = SourceText.FromString(key.Name, key.Example, problems);
        Sheet? sheet = source is null ? null : SheetParser.Parse(source, new ReadBudget(ReadLimits.Default), problems);
        if (sheet is null)
            throw new InvalidOperationException($"the example of {key.Name} is not sound: {problems.ToSorted()[0].Text}");
        WriteValue(sheet.Root);
    }

    // Calls itself as deep as an example of ours is nested.
    private void WriteValue(SheetNode node)
    {
        switch (node)
        {
            case MapNode map:
                json.WriteStartObject();
                foreach ((TextNode written, SheetNode value) in map.Entries)
                {
                    json.WritePropertyName(written.Value);
                    WriteValue(value);
                }

                json.WriteEndObject();
                break;
            case ListNode list:
                json.WriteStartArray();
                foreach (SheetNode item in list.Items)
                    WriteValue(item);
                json.WriteEndArray();
                break;
            case TextNode { IsPlain: true, Value: "true" or "false" } flag:
                json.WriteBooleanValue(flag.Value == "true");
                break;
            case TextNode { IsPlain: true } number when NumberShape.IsPlainNumber(number.Value):
                json.WriteNumberValue(decimal.Parse(number.Value, System.Globalization.CultureInfo.InvariantCulture));
                break;
            case TextNode text:
                json.WriteStringValue(text.Value);
                break;
        }
    }
}
