using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Contam.Jobs.Entries;

/// <summary>
/// The chain of hashes through the entries of a job. Changing, leaving out or putting in an entry breaks it there.
/// What it cannot show: a whole chain made anew, or its last entries cut off together with the job's own row; against that, keep an export.
/// </summary>
internal static class EntryChain
{
    /// <summary>What stands for the hash before the first entry.</summary>
    public static string Beginning { get; } = new('0', 64);

    /// <summary>The entry that follows one of this sequence and hash.</summary>
    public static JobEntry Link(long previousSequence, string previousHash, string body)
    {
        ArgumentNullException.ThrowIfNull(previousHash);
        ArgumentNullException.ThrowIfNull(body);
        long sequence = previousSequence + 1;
        return new JobEntry(sequence, previousHash, HashOf(sequence, previousHash, body), body);
    }

    /// <summary>The first place where entries, in order, do not hang together, in words without a full stop; <c>null</c> where all do.</summary>
    /// <param name="entries">The entries.</param>
    /// <param name="after">The entry that they follow on; <c>null</c> for the beginning.</param>
    public static string? FirstBreak(IEnumerable<JobEntry> entries, JobEntry? after = null)
    {
        ArgumentNullException.ThrowIfNull(entries);
        long due = 1 + (after?.Sequence ?? 0);
        string previous = after?.Hash ?? Beginning;
        foreach (JobEntry entry in entries)
        {
            if (entry.Sequence != due)
                return $"entry {Number(due)} is missing";
            if (entry.Previous != previous)
                return $"entry {Number(due)} does not follow on the one before it: one of the two was changed";
            if (entry.Hash != HashOf(entry.Sequence, entry.Previous, entry.Body))
                return $"entry {Number(due)} was changed after it was written";
            previous = entry.Hash;
            due++;
        }

        return null;
    }

    /// <summary>SHA-256 of the UTF-8 bytes of a text, in lower-case hexadecimal.</summary>
    public static string Sha256(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string HashOf(long sequence, string previous, string body) => Sha256($"{Number(sequence)}\n{previous}\n{body}");

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
