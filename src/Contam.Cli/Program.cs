using System.CommandLine;
using Contam.Cli;
using Microsoft.Extensions.DependencyInjection;

Shell shell = Shell.OfProcess();
return Outcomes.Printed(shell, () => ContamCommand.Run(args, shell));

namespace Contam.Cli
{
    /// <summary>The whole command: composes what it needs, parses, runs, and turns every outcome into an exit status.</summary>
    internal static class ContamCommand
    {
        /// <summary>What the command is called, whatever the file that holds it.</summary>
        public const string Name = "contam";

        public static int Run(string[] args, Shell shell)
        {
            using ServiceProvider services = Composition.Of(shell);
            var root = new RootCommand("How far the debris of a failed engine part has gone, what must be done with every part it could have reached, and in what order.") { HelpName = Name };
            foreach (ICommandSource source in services.GetServices<ICommandSource>())
                root.Subcommands.Add(source.Build());
            CommonOptions.AddTo(root);
            return Outcomes.Run(root, args, shell, call => services.GetRequiredService<Loading>().Limits = LimitOption.Of(call));
        }
    }
}
