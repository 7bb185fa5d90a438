namespace Contam.Families.Reading.Sheets;

/// <summary>Knows files that are no text by the bytes that they begin with.</summary>
internal static class OtherForm
{
    /// <summary>The same of a file on disk; <c>null</c> also where it cannot be had.</summary>
    public static string? OfFile(string path)
    {
        try
        {
            using FileStream? stream = Unblocked.Open(path);
            if (stream is null)
                return null;
            byte[] beginning = new byte[16];
            return Of(beginning.AsSpan(0, stream.ReadAtLeast(beginning, beginning.Length, throwOnEndOfStream: false)));
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }

    /// <summary>What the file is, for instance <c>a PDF document</c>; <c>null</c> where it may be a text. The marks are those of each format's own specification.</summary>
    public static string? Of(ReadOnlySpan<byte> bytes) => bytes switch
    {
        _ when bytes.StartsWith("%PDF-"u8) => "a PDF document",
        _ when bytes.StartsWith("PK\x03\x04"u8) => "a zip archive, as spreadsheets and word processors write",
        _ when bytes.StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]) => "a document of a spreadsheet or word processor",
        _ when bytes.StartsWith("{\\rtf"u8) => "a document of a word processor",
        _ when bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G']) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) || bytes.StartsWith("GIF8"u8) => "a picture",
        _ when bytes.StartsWith((ReadOnlySpan<byte>)[0x1F, 0x8B]) => "a compressed file",
        _ when bytes.StartsWith("SQLite format 3"u8) => "a database",
        _ => null,
    };
}
