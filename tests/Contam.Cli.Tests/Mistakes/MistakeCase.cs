using System.Text;

namespace Contam.Cli.Tests.Mistakes;

/// <summary>One mistake of the table: what is changed in the file, or how the command is called, and what is answered.</summary>
internal sealed record MistakeCase(string Title, string? Found, string Written, string[] Words, string Said)
{
    private static readonly object Gate = new();

    /// <summary>Whether the mistake stands in the file, so that its place is due.</summary>
    public bool IsInFile => Found is not null;

    public static IReadOnlyList<MistakeCase> All(string path)
    {
        lock (Gate)
            return [.. File.ReadAllText(path).Split("\n== ").Skip(1).Select(Read)];
    }

    /// <summary>The file with the mistake in it. <c>@circuits</c> stands for that section and all behind it.</summary>
    public string Applied(string sound)
    {
        if (Found is null)
            return sound;
        if (Found == "@circuits")
            return sound[..sound.IndexOf("\ncircuits:", StringComparison.Ordinal)];
        string found = Found.Replace("\\n", "\n", StringComparison.Ordinal);
        int at = sound.IndexOf(found, StringComparison.Ordinal);
        Assert.True(at >= 0 && sound.IndexOf(found, at + 1, StringComparison.Ordinal) < 0, $"`{found}` does not stand once in the file");
        return sound[..at] + Written + sound[(at + found.Length)..];
    }

    /// <summary>Puts what is answered now into the table.</summary>
    public static void Update(string path, MistakeCase one, string said)
    {
        lock (Gate)
        {
            string text = File.ReadAllText(path);
            int start = text.IndexOf($"\n== {one.Title}\n", StringComparison.Ordinal);
            int next = text.IndexOf("\n== ", start + 1, StringComparison.Ordinal);
            string block = next < 0 ? text[start..] : text[start..next];
            var kept = new StringBuilder();
            foreach (string line in block.TrimEnd('\n').Split('\n').Where(line => !line.StartsWith('>')))
                kept.Append(line).Append('\n');
            foreach (string line in said.TrimEnd('\n').Split('\n'))
                kept.Append(line.Length == 0 ? ">" : "> " + line).Append('\n');
            File.WriteAllText(path, text[..start] + kept + (next < 0 ? "" : text[next..]));
        }
    }

    private static MistakeCase Read(string block)
    {
        string[] lines = block.Split('\n');
        string? found = lines.FirstOrDefault(line => line.StartsWith("- ", StringComparison.Ordinal))?[2..];
        string written = string.Join('\n', lines.Where(line => line.StartsWith('+')).Select(line => line.Length < 2 ? "" : line[2..])).Replace("\\t", "\t", StringComparison.Ordinal);
        string call = lines.FirstOrDefault(line => line.StartsWith('$'))?[1..].Trim() ?? "check engine.yaml";
        string said = string.Concat(lines.Where(line => line.StartsWith('>')).Select(line => (line.Length < 2 ? "" : line[2..]) + "\n"));
        return new MistakeCase(lines[0], found, written, WordsOf(call), said);
    }

    // As a shell would: words parted by spaces, those in double quotes together.
    private static string[] WordsOf(string call) => [.. call.Split('"').SelectMany((piece, index) => index % 2 == 1 ? [piece] : piece.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
}
