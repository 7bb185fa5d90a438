using System.Security;
using Contam.Problems;

namespace Contam.Families.Reading.Sheets;

/// <summary>Reads a file from disk. The only place of the library that does.</summary>
internal static class SourceFile
{
    /// <summary>
    /// The text of a file, or <c>null</c> where it cannot be had; then a problem says why.
    /// </summary>
    /// <param name="path">Where it is.</param>
    /// <param name="name">Its name in messages and places.</param>
    /// <param name="budget">How much may still be read; what is read is taken off.</param>
    /// <param name="askedAt">Where the file is asked for, or <c>null</c> for the command itself.</param>
    /// <param name="problems">Takes what goes wrong.</param>
    public static SourceText? Read(string path, string name, ReadBudget budget, SourceSpan? askedAt, ProblemList problems)
    {
        try
        {
            if (Directory.Exists(path))
            {
                problems.Add(SheetProblems.FileIsFolder(name, askedAt));
                return null;
            }

            using FileStream? stream = Unblocked.Open(path);
            if (stream is null)
            {
                problems.Add(SheetProblems.FileIsPipe(name, askedAt));
                return null;
            }

            byte[]? bytes = ReadWhole(stream, budget.BytesLeft);
            if (bytes is null)
            {
                problems.Add(SheetProblems.FileTooLarge(name, budget.Limits.FileBytes, askedAt));
                return null;
            }

            budget.BytesLeft -= bytes.Length;
            return SourceText.FromBytes(name, bytes, problems);
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            problems.Add(SheetProblems.FileMissing(name, askedAt));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or SecurityException)
        {
            problems.Add(SheetProblems.FileUnreadable(name, fault is UnauthorizedAccessException, askedAt));
        }

        return null;
    }

    /// <summary>A text as if it were a file's, or <c>null</c> where it is too large or no text; then a problem says why.</summary>
    public static SourceText? FromText(string text, string name, ReadBudget budget, ProblemList problems)
    {
        int bytes = text.Length > budget.BytesLeft ? int.MaxValue : System.Text.Encoding.UTF8.GetByteCount(text);
        if (bytes > budget.BytesLeft)
        {
            problems.Add(SheetProblems.FileTooLarge(name, budget.Limits.FileBytes, null));
            return null;
        }

        budget.BytesLeft -= bytes;
        return SourceText.FromString(name, text, problems);
    }

    /// <summary>The name of a path in places: as the person gave it, with <c>/</c> between folders.</summary>
    public static string NameOf(string path) =>
        Path.DirectorySeparatorChar == '/' ? path : path.Replace(Path.DirectorySeparatorChar, '/');

    /// <summary>All bytes, or <c>null</c> where there are more than allowed. The length that a file claims is only a hint: it may be a device, or grow.</summary>
    private static byte[]? ReadWhole(FileStream stream, int most)
    {
        byte[] bytes = new byte[Math.Clamp(stream.CanSeek ? stream.Length : 0, 1, Math.Clamp(most, 1, Array.MaxLength))];
        int length = 0;
        while (true)
        {
            length += stream.ReadAtLeast(bytes.AsSpan(length), bytes.Length - length, throwOnEndOfStream: false);
            int more = length < bytes.Length ? -1 : stream.ReadByte();
            if (more < 0)
                return length > most ? null : length == bytes.Length ? bytes : bytes[..length];
            if (length >= most || length == Array.MaxLength)
                return null;
            Array.Resize(ref bytes, (int)Math.Min(Math.Max(8192, 2L * length), Array.MaxLength));
            bytes[length++] = (byte)more;
        }
    }
}
