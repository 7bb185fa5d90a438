using Contam.Families.Reading.Sheets;

namespace Contam.Cli.Starting;

/// <summary>The modules that come with the command, for families that name them without having their files.</summary>
internal sealed class ShippedModules : IShippedFiles
{
    public static readonly ShippedModules All = new();

    public IReadOnlyList<string> Modules => ShippedFiles.Modules;

    public string? TextOf(string name) => ShippedFiles.Modules.Contains(name) ? ShippedFiles.Module(name) : null;
}
