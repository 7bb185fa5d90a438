using System.CommandLine;

namespace Contam.Cli;

/// <summary>A command of contam.</summary>
internal interface ICommandSource
{
    /// <summary>The command with its options, help and action.</summary>
    Command Build();
}
