namespace Contam.Cli.Jobs;

/// <summary>Where a person's data lies on this system, whether or not the folder is there yet. Never in the folder that happens to be the current one.</summary>
internal static class DataFolder
{
    /// <summary>The shop's file where none is named.</summary>
    /// <param name="setting">The environment variable of a name.</param>
    /// <exception cref="WrongUseException">The system does not say where a person's data lies.</exception>
    public static string ShopFile(Func<string, string?> setting) =>
        Path.Combine(Of(setting, OperatingSystem.IsWindows(), OperatingSystem.IsMacOS()) ?? throw new WrongUseException("this system does not say where your data lies: HOME is not set. Name the shop with --shop FILE, or in CONTAM_SHOP."), "contam", "shop.db");

    /// <summary>
    /// The folder: <c>XDG_DATA_HOME</c>, else <c>.local/share</c> at home (XDG Base Directory Specification 0.8: a relative path there is to be passed over);
    /// on macOS <c>Library/Application Support</c>; on Windows <c>LOCALAPPDATA</c>. <c>null</c> where none of them is said.
    /// </summary>
    internal static string? Of(Func<string, string?> setting, bool isWindows, bool isMac)
    {
        if (isWindows)
            return Absolute(setting("LOCALAPPDATA"));
        if (!isMac && Absolute(setting("XDG_DATA_HOME")) is { } data)
            return data;
        return Absolute(setting("HOME")) is { } home ? isMac ? $"{home}/Library/Application Support" : $"{home}/.local/share" : null;
    }

    private static string? Absolute(string? path) => path is { Length: > 0 } && Path.IsPathFullyQualified(path) ? path : null;
}
