using System.Security;
using System.Text;
using Contam.Families.Reading.Sheets;

namespace Contam.Families.Reading;

/// <summary>The first bytes of a file as text: enough to choose a reader by, which then says everything that is to be said of it.</summary>
public static class FileBeginning
{
    /// <summary>
    /// At most this many bytes of the file, read as UTF-8; empty where the file cannot be had, and for a pipe, which could be read only once.
    /// Never waits, and never takes in more however large the file or long its lines.
    /// </summary>
    /// <param name="path">Where the file is.</param>
    /// <param name="bytes">How many, at least 1.</param>
    public static string Of(string path, int bytes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bytes, 1);
        try
        {
            using FileStream? stream = Unblocked.Open(path);
            if (stream is null)
                return "";
            byte[] beginning = new byte[bytes];
            int taken = stream.ReadAtLeast(beginning, bytes, throwOnEndOfStream: false);
            return Encoding.UTF8.GetString(beginning, 0, taken);
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or SecurityException)
        {
            return "";
        }
    }
}
