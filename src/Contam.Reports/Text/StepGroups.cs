using System.Globalization;
using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>The steps of a plan as a person reads them: neighbours at repeated parts, alike in all but the number, stand together.</summary>
internal sealed class StepGroups(PlanDocument plan, Names names)
{
    private readonly ILookup<int, int> cautionsOn = plan.Cautions
        .SelectMany((caution, index) => caution.Steps.Select(step => (step, index)))
        .ToLookup(pair => pair.step, pair => pair.index);

    private readonly HashSet<int> looks = [.. plan.Looks.Select(look => look.Step)];

    private Dictionary<(int Caution, Phase Phase), int>? firstIn;

    /// <summary>The groups, phase by phase; every step stands in one.</summary>
    public IEnumerable<List<PlanStep>> All() => plan.Steps.GroupAdjacent(step => step.Phase).SelectMany(phase => RepeatFolding.FoldTurns(
        phase,
        step => step.Part is null ? "" : names.RepeatOf(step.Part),
        step => step.Part is null ? 0 : names.NumberOf(step.Part),
        KeyOf,
        (step, other) => step.After.Contains(other.Number)));

    /// <summary>The places of the cautions that bear on a step.</summary>
    public IEnumerable<int> CautionsOn(PlanStep step) => cautionsOn[step.Number];

    /// <summary>The places of the cautions that bear on a step and on none before it in its phase: where a sheet names them again.</summary>
    public IEnumerable<int> CautionsNewOn(PlanStep step)
    {
        firstIn ??= FirstInPhase();
        return cautionsOn[step.Number].Where(index => firstIn[(index, step.Phase)] == step.Number);
    }

    private Dictionary<(int Caution, Phase Phase), int> FirstInPhase()
    {
        var first = new Dictionary<(int, Phase), int>();
        foreach (PlanStep step in plan.Steps)
        {
            foreach (int index in cautionsOn[step.Number])
                first.TryAdd((index, step.Phase), step.Number);
        }

        return first;
    }

    /// <summary>The numbers of a group: <c>9</c>, <c>15–18</c>, or <c>19…</c> where others stand between.</summary>
    public static string NumbersOf(List<PlanStep> group)
    {
        bool areNeighbours = group[^1].Number - group[0].Number == group.Count - 1;
        return areNeighbours ? RepeatFolding.Range(group[0].Number, group[^1].Number) : group[0].Number.ToString(CultureInfo.InvariantCulture) + "…";
    }

    /// <summary>What is done, told once for the group.</summary>
    public string TextOf(List<PlanStep> group) => group.Count == 1
        ? group[0].Text
        : WithName(group[0], RepeatFolding.Range(names.NumberOf(group[0].Part!), names.NumberOf(group[^1].Part!)));

    /// <summary>How long nobody can go on with it, and with several technicians who does it and from when. Minutes at the bench stand by phase at the end.</summary>
    public IEnumerable<string> WaitsOf(List<PlanStep> group) => plan.Hours.Technicians > 1 || group[0].Technician is null ? TimesOf(group).Where(time => !time.EndsWith(" min", StringComparison.Ordinal)) : [];

    /// <summary>How long it takes, and with several technicians who does it and from when.</summary>
    public IEnumerable<string> TimesOf(List<PlanStep> group)
    {
        PlanStep first = group[0];
        string minutes = first.Minutes.ToString("0.#", CultureInfo.InvariantCulture);
        if (first.Technician is null && first.Minutes > 0)
            yield return string.Create(CultureInfo.InvariantCulture, $"{first.Minutes / 60:0.#} working h");
        else if (first.Minutes > 0)
            yield return group.Count == 1 ? $"{minutes} min" : string.Create(CultureInfo.InvariantCulture, $"{group.Count} × {minutes} min");
        if (plan.Hours.Technicians > 1 && first.Technician is { } technician)
            yield return string.Create(CultureInfo.InvariantCulture, $"technician {technician}, from {PlanSentences.Clock(first.Start)}");
    }

    private string KeyOf(PlanStep step) => string.Create(
        CultureInfo.InvariantCulture,
        $"{step.Phase} {step.Action} {step.Minutes} {step.Technician} {step.Critical} {step.Method} {LookWords.Margin(step)} {(looks.Contains(step.Number) ? step.Number : 0)} {string.Join(',', CautionsOn(step))} {WithName(step, "#")}");

    /// <summary>The text with the number of its repeated part, wherever it stands behind the name of a repeated part, turned into something else.</summary>
    private string WithName(PlanStep step, string number) =>
        step.Part is null || names.NumberOf(step.Part) == 0 ? step.Text : names.Renumber(step.Text, names.NumberOf(step.Part), number);
}
