using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Contam.Reports.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Reviews;

/// <summary>
/// The signed reviews of a family file, in a folder beside it: <c>winch.reviews</c> beside <c>winch.yaml</c>. They go where the file goes, be it a copy, a
/// network folder or version control, and need no shop. Each is a file of its own that is never written again, so that no signature can take away another.
/// </summary>
internal sealed class ReviewFolder(string familyFile)
{
    private readonly string folder = Path.ChangeExtension(familyFile, ".reviews");

    /// <summary>Whether anything was signed here.</summary>
    public bool Exists => Directory.Exists(folder);

    /// <summary>All reviews in the order in which they were signed; what cannot be read is told and not counted.</summary>
    public ImmutableArray<SignedReview> Read(TextWriter problems)
    {
        if (!Exists)
            return [];
        var all = ImmutableArray.CreateBuilder<SignedReview>();
        foreach (string file in Files())
        {
            try
            {
                all.Add(ReviewJson.Read(InputFile.ReadText(file)));
            }
            catch (Exception cannot) when (cannot is WrongUseException or JsonException)
            {
                problems.Write($"contam: {TextPage.Harmless(file)} is no signed review and is not counted: {(cannot is JsonException json ? JsonWords.Of(json) : TextPage.Harmless(cannot.Message))}\n");
            }
        }

        return all.ToImmutable();
    }

    /// <summary>Keeps a review; the file that now holds it.</summary>
    /// <exception cref="WrongUseException">It cannot be written. Nothing is lost that was there.</exception>
    public string Keep(SignedReview review)
    {
        try
        {
            Directory.CreateDirectory(folder);
            string beside = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $".{Environment.ProcessId}.new"));
            try
            {
                using (var stream = new FileStream(beside, FileMode.Create, FileAccess.Write))
                {
                    stream.Write(Encoding.UTF8.GetBytes(ReviewJson.Write(review)));
                    stream.Flush(flushToDisk: true);
                }

                for (int number = Files().Length + 1; ; number++)
                {
                    string file = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{number:0000}.json"));
                    if (File.Exists(file))
                        continue;
                    try
                    {
                        // Never over another, also where somebody else signs at this moment.
                        File.Move(beside, file, overwrite: false);
                        return file;
                    }
                    catch (IOException) when (File.Exists(file))
                    {
                        // Somebody else was first; theirs stays.
                    }
                }
            }
            finally
            {
                File.Delete(beside);
            }
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new WrongUseException($"the review cannot be kept in {TextPage.Harmless(folder)}: {TextPage.Harmless(cannot.Message).TrimEnd('.')}. Nothing was signed; what was signed before is as it was.");
        }
    }

    private string[] Files()
    {
        try
        {
            return [.. Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal)];
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException)
        {
            throw new WrongUseException($"{TextPage.Harmless(folder)} cannot be gone through: {TextPage.Harmless(cannot.Message).TrimEnd('.')}. It holds the signed reviews.");
        }
    }
}
