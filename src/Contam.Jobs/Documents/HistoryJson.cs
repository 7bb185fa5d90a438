using System.Buffers;
using System.Text;
using System.Text.Json;
using Contam.Diagnosis;
using Contam.Jobs.History;
using Contam.Jobs.Reports;

namespace Contam.Jobs.Documents;

/// <summary>How often debris was looked for and found at a part, as JSON: the contract <c>contam-history/1</c>. It names no job and no customer.</summary>
public static class HistoryJson
{
    /// <summary>The answer, closed by a newline.</summary>
    public static string Write(HistoryAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var bytes = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(bytes, JobJson.Options))
        {
            writer.WriteStartObject();
            writer.WriteString("format", "contam-history/1");
            writer.WriteString("part", answer.Part);
            WriteCount(writer, answer.All);
            writer.WriteStartArray("rows");
            foreach (HistoryRow row in answer.Rows)
            {
                writer.WriteStartObject();
                writer.WriteString("family", row.Family);
                writer.WriteStartArray("failed");
                foreach (string failed in row.Failed)
                    writer.WriteStringValue(failed);
                writer.WriteEndArray();
                writer.WriteString("debris", row.Debris);
                WriteCount(writer, row.Count);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteStartArray("notCounted");
            foreach (PassedOver passed in answer.NotCounted)
            {
                writer.WriteStartObject();
                writer.WriteString("because", HistoryText.Why(passed.Worth));
                WriteCount(writer, passed.Count);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.WrittenSpan) + "\n";
    }

    private static void WriteCount(Utf8JsonWriter writer, LookCount count)
    {
        writer.WriteNumber("looks", count.Looks);
        writer.WriteNumber("found", count.Found);
    }
}
