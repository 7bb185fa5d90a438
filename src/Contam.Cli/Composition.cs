using Contam.Cli.Commands;
using Contam.Cli.Jobs;
using Contam.Hosting;
using Microsoft.Extensions.DependencyInjection;

namespace Contam.Cli;

/// <summary>What the command is made of: the library's services as any host has them, and one service for each command, in the order in which help lists them.</summary>
internal static class Composition
{
    /// <summary>Composes the command for a shell, by its clock. By factories alone: nothing is looked up by reflection, so native builds keep all of it.</summary>
    public static ServiceProvider Of(Shell shell) => new ServiceCollection()
            .AddSingleton(shell.Clock)
            .AddContam()
            .AddSingleton(_ => new Loading(shell))
            .AddSingleton(services => new OpenShops(shell, Get<IJobBooks>(services)))
            .AddSingleton<ICommandSource>(services => new StartCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new DescribeCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new CheckCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new PartsCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new DrawCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new ReviewCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new PlanCommand(shell, Get<Loading>(services), Get<IPlanner>(services)))
            .AddSingleton<ICommandSource>(services => new VerifyCommand(shell, Get<Loading>(services), Get<IPlanVerifier>(services)))
            .AddSingleton<ICommandSource>(services => new WhyCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new LooksCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new StopLineCommand(shell, Get<Loading>(services), Get<OpenShops>(services)))
            .AddSingleton<ICommandSource>(services => new SuspectsCommand(shell, Get<Loading>(services), Get<OpenShops>(services)))
            .AddSingleton<ICommandSource>(services => new TraceCommand(shell, Get<Loading>(services), Get<OpenShops>(services), Get<IPlanner>(services)))
            .AddSingleton<ICommandSource>(services => new AuditCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new CompareCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new StandardCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new DrillCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new FlushCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new GaugeCommand(shell, Get<Loading>(services)))
            .AddSingleton<ICommandSource>(services => new JobCommand(shell, Get<Loading>(services), Get<OpenShops>(services)))
            .AddSingleton<ICommandSource>(_ => new CompletionCommand(shell))
            .AddSingleton<ICommandSource>(_ => new ManCommand(shell))
            .BuildServiceProvider();

    private static T Get<T>(IServiceProvider services)
        where T : notnull => services.GetRequiredService<T>();
}
