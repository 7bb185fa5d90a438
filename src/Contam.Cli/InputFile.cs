using System.Security;
using System.Security.Cryptography;
using System.Text;
using Contam.Families.Reading.Sheets;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>
/// Opens every file that a person names and that is no family, module, standard or findings sheet (those have their own limits): with a size that is not
/// passed, and never a pipe or a device, which may give without end or wait for good.
/// </summary>
internal static class InputFile
{
    /// <summary>Most bytes of a text: a plan of the largest family that is read by default takes a tenth.</summary>
    public const int MostBytes = 256 * 1024 * 1024;

    private const long MostPictureBytes = 4L * 1024 * 1024 * 1024;

    /// <summary>The text of a file, which must be UTF-8.</summary>
    /// <exception cref="WrongUseException">It cannot be read; the message says why and what to do.</exception>
    public static string ReadText(string file) => Opened(file, stream =>
    {
        var bytes = new MemoryStream((int)Math.Min(stream.Length, MostBytes));
        CopyAtMost(stream, bytes, MostBytes, file);
        try
        {
            ReadOnlySpan<byte> all = bytes.GetBuffer().AsSpan(0, (int)bytes.Length);
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(all.StartsWith("\uFEFF"u8) ? all[3..] : all);
        }
        catch (DecoderFallbackException)
        {
            throw new WrongUseException($"{TextPage.Harmless(file)} is no text in UTF-8. Give the file as it was written.");
        }
    });

    /// <summary>SHA-256 of a file in lower-case hexadecimal, and how many bytes it has.</summary>
    public static (string Sha256, long Bytes) HashOf(string file) => Opened(file, stream =>
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        byte[] piece = new byte[81920];
        long length = 0;
        while (stream.Read(piece) is > 0 and var read)
        {
            hash.AppendData(piece.AsSpan(0, read));
            if ((length += read) > MostPictureBytes)
                throw new WrongUseException($"{TextPage.Harmless(file)} is larger than {MostPictureBytes >> 30} GiB. Name the picture.");
        }

        return (Convert.ToHexStringLower(hash.GetHashAndReset()), length);
    });

    private static T Opened<T>(string file, Func<FileStream, T> read)
    {
        string name = TextPage.Harmless(file);
        try
        {
            if (Directory.Exists(file))
                throw new WrongUseException($"{name} is a folder. Name a file in it.");
            using FileStream? stream = Unblocked.Open(file);
            // A device that can be gone back in, as the one that gives zeros without end, has no length either.
            if (stream is null || stream is { Length: 0 } && stream.ReadByte() >= 0)
                throw new WrongUseException($"{name} is a pipe or a device. Give a file.");
            return read(stream);
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or SecurityException)
        {
            throw new WrongUseException($"{name} cannot be read: {(cannot is FileNotFoundException or DirectoryNotFoundException ? "it is not there" : cannot is UnauthorizedAccessException ? "you may not" : TextPage.Harmless(cannot.Message).TrimEnd('.'))}. Check the name and the folder.");
        }
    }

    private static void CopyAtMost(Stream from, MemoryStream to, int most, string file)
    {
        byte[] piece = new byte[81920];
        while (from.Read(piece) is > 0 and var read)
        {
            if (to.Length + read > most)
                throw new WrongUseException($"{TextPage.Harmless(file)} is larger than {most >> 20} MiB, which nothing that contam writes is. Check the name.");
            to.Write(piece, 0, read);
        }
    }
}
