using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace Contam.Families.Reading.Sheets;

/// <summary>Opens files without ever waiting: a pipe that nobody writes to, or a terminal, would hold its reader for good.</summary>
internal static class Unblocked
{
    /// <summary>
    /// The file, open for reading, or <c>null</c> where it is a pipe, a terminal or another device that cannot be gone back in. Other failures are
    /// those of <see cref="FileStream"/>.
    /// </summary>
    public static FileStream? Open(string path)
    {
        // Whatever has a length is a file. What has none may be anything at all, and the runtime does not say what; opening a pipe would wait.
        bool isFile = new FileInfo(path) is { Exists: false } or { Length: > 0 };
        int flags = OperatingSystem.IsLinux() ? 0x800 : OperatingSystem.IsMacOS() ? 0x4 : -1;
        if (isFile || flags < 0)
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);

        int descriptor = OpenNow(Encoding.UTF8.GetBytes(path + "\0"), flags);
        if (descriptor < 0)
            throw new UnauthorizedAccessException();
        var stream = new FileStream(new SafeFileHandle(descriptor, ownsHandle: true), FileAccess.Read);
        if (stream.CanSeek)
            return stream;
        stream.Dispose();
        return null;
    }

    // POSIX open(2) for reading; the flag is O_NONBLOCK, which differs between systems.
    [DllImport("libc", EntryPoint = "open")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int OpenNow(byte[] path, int flags);
}
