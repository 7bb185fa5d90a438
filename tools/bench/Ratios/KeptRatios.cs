using System.Text.Encodings.Web;
using System.Text.Json;

namespace Contam.Bench.Ratios;

/// <summary>The ratios that are kept; the table of the README is made from them.</summary>
internal static class KeptRatios
{
    private static readonly string File = Path.Combine("tools", "bench", "ratios.json");

    /// <summary>All of them, by name.</summary>
    public static OrderedDictionary<string, double> Read()
    {
        using JsonDocument kept = JsonDocument.Parse(System.IO.File.ReadAllText(File));
        return new(kept.RootElement.EnumerateObject().Select(one => KeyValuePair.Create(one.Name, one.Value.GetDouble())));
    }

    /// <summary>Keeps these in place of those of the same names; the others stay as they are.</summary>
    public static void Put(IEnumerable<KeyValuePair<string, double>> ratios)
    {
        OrderedDictionary<string, double> all = System.IO.File.Exists(File) ? Read() : [];
        all["cores"] = Environment.ProcessorCount;
        foreach ((string name, double ratio) in ratios)
            all[name] = Math.Round(ratio, 2);
        using FileStream file = System.IO.File.Create(File);
        using var writer = new Utf8JsonWriter(file, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        writer.WriteStartObject();
        foreach ((string name, double ratio) in all)
            writer.WriteNumber(name, ratio);
        writer.WriteEndObject();
        writer.Flush();
        file.WriteByte((byte)'\n');
    }
}
