using System.Globalization;
using System.Text;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>
/// A findings file that grows by one finding at a time. What stands in it stays as it is, comments too. Each time the whole is written beside it and put
/// in its place at once, so that whatever happens there is either the old file or the new one.
/// </summary>
internal sealed class FindingsFile
{
    private readonly string path;

    private FindingsFile(string path) => this.path = path;

    /// <summary>The file, which need not be there yet.</summary>
    /// <exception cref="WrongUseException">A line cannot be added to what stands in it, or it cannot be read.</exception>
    public static FindingsFile Open(string path, Family family, Catalogue catalogue, Debris debris)
    {
        var file = new FindingsFile(path);
        string probe = Encoding.UTF8.GetString(file.With(Line(new Finding(family.Parts[0].Id, debris, Found: false))));
        if (!FindingsReader.ReadText(probe, path, family, catalogue, [debris]).IsSound)
            throw new WrongUseException($"{TextPage.Harmless(path)} cannot be added to: write its findings one below the other, each beginning with `- `.");
        return file;
    }

    public void Add(Finding finding) => Write(Line(finding));

    public void AddCannotTell(PartId part, Debris debris) => Write($"- {{part: {part}, debris: {debris.Name}, cannot-tell: true}}\n");

    private static string Line(Finding finding)
    {
        var keys = new List<string> { $"part: {finding.Part}", $"debris: {finding.Debris.Name}", $"found: {(finding.Found ? "true" : "false")}" };
        if (finding.Size is { IsUnlimited: false } size)
            keys.Add(string.Create(CultureInfo.InvariantCulture, $"size: {size.Micrometres:0.######} um"));
        if (finding.Form is { } form)
            keys.Add($"form: {form.ToString().ToLowerInvariant()}");
        if (finding.Magnetic is { } magnetic)
            keys.Add($"magnetic: {(magnetic ? "true" : "false")}");
        return $"- {{{string.Join(", ", keys)}}}\n";
    }

    /// <summary>What stands in the file now, with a line behind it. Read anew each time, as somebody else may have written to it.</summary>
    private byte[] With(string line)
    {
        try
        {
            byte[] before = File.Exists(path) ? File.ReadAllBytes(path) : [];
            byte[] between = before is [.., not (byte)'\n'] ? [(byte)'\n'] : [];
            return [.. before, .. between, .. Encoding.UTF8.GetBytes(line)];
        }
        catch (Exception cannot) when (IsOfTheDisk(cannot))
        {
            throw new WrongUseException($"{TextPage.Harmless(path)} cannot be read: {TextPage.Harmless(cannot.Message)} Check the name and the folder.");
        }
    }

    private void Write(string line)
    {
        byte[] text = With(line);
        try
        {
            // A link stays a link: what it leads to is replaced.
            string target = File.Exists(path) ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path : path;
            string beside = string.Create(CultureInfo.InvariantCulture, $"{target}.{Environment.ProcessId}.new");
            using (var stream = new FileStream(beside, FileMode.Create, FileAccess.Write))
            {
                stream.Write(text);
                stream.Flush(flushToDisk: true);
            }

            if (!OperatingSystem.IsWindows() && File.Exists(target))
                File.SetUnixFileMode(beside, File.GetUnixFileMode(target));
            File.Move(beside, target, overwrite: true);
        }
        catch (Exception cannot) when (IsOfTheDisk(cannot))
        {
            throw new WrongUseException($"{TextPage.Harmless(path)} cannot be written: {TextPage.Harmless(cannot.Message)} The last answer is not kept; those before it are.");
        }
    }

    private static bool IsOfTheDisk(Exception cannot) => cannot is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;
}
