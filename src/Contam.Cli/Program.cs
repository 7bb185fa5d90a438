using System.CommandLine;
using Contam.Cli;
using Contam.Cli.Commands;

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
            var loading = new Loading(shell);
            ICommandSource[] commands =
            [
                new StartCommand(shell, loading),
                new DescribeCommand(shell, loading),
                new CheckCommand(shell, loading),
                new PartsCommand(shell, loading),
                new DrawCommand(shell, loading),
                new PlanCommand(shell, loading),
                new VerifyCommand(shell, loading),
                new WhyCommand(shell, loading),
                new LooksCommand(shell, loading),
                new StopLineCommand(shell, loading),
                new SuspectsCommand(shell, loading),
                new TraceCommand(shell, loading),
                new AuditCommand(shell, loading),
                new CompareCommand(shell, loading),
                new StandardCommand(shell, loading),
                new DrillCommand(shell, loading),
                new FlushCommand(shell, loading),
                new GaugeCommand(shell, loading),
                new JobCommand(shell, loading),
                new CompletionCommand(shell),
                new ManCommand(shell),
            ];
            var root = new RootCommand("How far the debris of a failed engine part has gone, what must be done with every part it could have reached, and in what order.") { HelpName = Name };
            foreach (ICommandSource source in commands)
                root.Subcommands.Add(source.Build());
            CommonOptions.AddTo(root);
            return Outcomes.Run(root, args, shell, call => loading.Limits = LimitOption.Of(call));
        }
    }
}
