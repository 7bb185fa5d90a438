using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Minutes for each task: what the part says, else the standard's times for its kind, else the kind's own, else a general figure.
/// </summary>
internal sealed class WorkTimes
{
    /// <summary>General figures where nobody says anything; common practice, no source.</summary>
    private static readonly TaskMinutes General = new() { Inspect = 10, Remove = 20, Flush = 20, Clean = 20, Test = 15, Replace = 15, Refit = 25 };

    private readonly Dictionary<string, TaskMinutes> ofKind = new(StringComparer.Ordinal);

    public WorkTimes(ShopStandard standard)
    {
        foreach ((string kind, TaskMinutes minutes) in standard.Times)
            ofKind[kind] = minutes;
        WorkingDayMinutes = (standard.WorkingDay ?? TimeSpan.FromHours(8)).TotalMinutes;
    }

    /// <summary>The length of a working day in minutes.</summary>
    public double WorkingDayMinutes { get; }

    public double Of(Part part, StepAction action) => Of(Said(part).Over(General), action) ?? 0;

    /// <summary>Whether the part, the standard or the kind says how long this takes, so that no general figure stands in.</summary>
    public bool IsSaid(Part part, StepAction action) => Of(General, action) is null || Of(Said(part), action) is not null;

    private TaskMinutes Said(Part part) => part.Minutes.Over(new TaskMinutes { Inspect = part.Inspect?.Minutes })
        .Over(ofKind.GetValueOrDefault(part.Kind.Name, TaskMinutes.None)).Over(part.Kind.Minutes);

    private static double? Of(TaskMinutes minutes, StepAction action) => action switch
    {
        StepAction.Inspect => minutes.Inspect,
        StepAction.Remove => minutes.Remove,
        StepAction.Flush => minutes.Flush,
        StepAction.Clean => minutes.Clean,
        StepAction.Test => minutes.Test,
        StepAction.Replace => minutes.Replace,
        StepAction.Refit => minutes.Refit,
        _ => null,
    };

    /// <summary>Working minutes away at an outside workshop. Where the family says no days, five are taken: common practice, no source.</summary>
    public double Away(SendOut sendOut) => (sendOut.Days ?? 5) * WorkingDayMinutes;
}
