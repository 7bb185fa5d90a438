using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Measurement.Wording;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Words a job for the person who does it: what, with what, until when, and what would make one stop. Texts come from the standard, the closest that fits;
/// the frame of the procedure is worded here.
/// </summary>
internal sealed class StepWriter
{
    /// <summary>What a text of the standard may leave open, in the order in which it is filled in.</summary>
    private static readonly string[] Placeholders = ["{part}", "{parts}", "{kind}", "{debris}", "{circuit}", "{size}", "{who}", "{days}", "{beyond}", "{how}", "{seals}"];

    private readonly ProcedureRequest request;
    private readonly Bearing bearing;
    private readonly FrameTexts frame;
    private readonly GuardTexts guards;
    private readonly FlushFigures flushes;
    private readonly StepWording[] closestFirst;
    private readonly ILookup<PartId, Joint> jointsFrom;

    public StepWriter(ProcedureRequest request, ProcedureDraft draft, Bearing bearing)
    {
        this.request = request;
        this.bearing = bearing;
        frame = new FrameTexts(request);
        guards = new GuardTexts(request, draft);
        flushes = new FlushFigures(request.Family);
        jointsFrom = request.Family.Joints.ToLookup(joint => joint.From);
        closestFirst = [.. request.Standard.Texts.OrderByDescending(text => Bearing.Closeness(text.For))];
    }

    public string Write(Job job)
    {
        string? fixedText = frame.Write(job);
        if (fixedText is not null)
            return fixedText;
        StepWording? wording = closestFirst.FirstOrDefault(text => bearing.Fits(text.For, job));
        string say = wording is null ? General(job) : Fill(wording.Say, job);
        string text = Sentences.Clause(say);
        if (wording is { Until.Length: > 0 })
            text += ", until " + Sentences.Clause(Fill(wording.Until, job), "until");
        text = Sentences.Close(text);
        if (job.ForAccess)
            text += " It is only in the way: keep it clean and capped.";
        text += Figures(job);
        if (job.IsOutside)
            text += $" Done at the {Clean(job.Part!.SendOut!.Who)}: tick it from their report.";
        if (job.Blank.Length > 0)
            text += " First blank off " + Sentences.List(job.Blank.Select(part => Sentences.InSentence(part.Name))) + ", so that nothing is carried there.";
        if (wording is { StopIf.Length: > 0 })
            text += " Stop if " + Sentences.Clause(Fill(wording.StopIf, job), "stop if") + ".";
        return text + guards.Write(job);
    }

    /// <summary>The running hours after which a job is due; <c>null</c> where it comes before the first start.</summary>
    public double? DueAfterRunningHours(Job job) => frame.DueAfterRunningHours(job);

    /// <summary>What the flow of a flush, or the reading of a test, must come to, where the family gives the figures; else empty.</summary>
    private string Figures(Job job)
    {
        string? figures = job switch
        {
            { IsOutside: true } => null,
            { Action: StepAction.Flush } => flushes.For(job.At),
            { Action: StepAction.Test, Part: { } part } => LimitFigures.For(request.Family, part),
            _ => null,
        };
        return figures is null ? "" : " " + Sentences.Close(figures);
    }

    private string Fill(string template, Job job)
    {
        if (!template.Contains('{', StringComparison.Ordinal))
            return template;
        string text = template;
        foreach (string placeholder in Placeholders)
        {
            // What the text does not use costs nothing.
            if (text.Contains(placeholder, StringComparison.Ordinal))
                text = text.Replace(placeholder, ValueOf(placeholder, job), StringComparison.Ordinal);
        }

        return text;
    }

    private string ValueOf(string placeholder, Job job)
    {
        Part? first = job.At.FirstOrDefault();
        return placeholder switch
        {
            "{part}" or "{parts}" => job.At.IsEmpty ? job.Topic : Sentences.List(job.At.Select(part => Sentences.InSentence(part.Name))),
            "{kind}" => first?.Kind.Name.Replace('-', ' ') ?? "",
            "{debris}" => DebrisAt(job.At),
            "{circuit}" => job.Action == StepAction.MakeSafe ? job.Topic : Sentences.List(job.At.SelectMany(bearing.CircuitsOf).Select(circuit => circuit.Name).Distinct()),
            "{size}" => SizeAt(job.At),
            "{who}" => first?.SendOut?.Who is { Length: > 0 } who ? Sentences.Clause(who) : "the outside workshop",
            "{days}" => (first?.SendOut?.Days ?? 5).ToString(CultureInfo.InvariantCulture),
            "{beyond}" => Beyond(job.At),
            "{how}" => Sentences.Clause(first?.Inspect?.How is { Length: > 0 } how ? how : "open it and look with a good light"),
            "{seals}" => job.Seals.IsEmpty ? "no seals" : SealList(job.Seals),
            _ => throw new ArgumentOutOfRangeException(nameof(placeholder), placeholder, "not a placeholder"),
        };
    }

    private string DebrisAt(ImmutableArray<Part> parts)
    {
        string[] names = [.. parts.SelectMany(bearing.DebrisAt).Select(debris => debris.Name).Distinct(StringComparer.Ordinal)];
        return names.Length > 0 ? Sentences.List(names) : Sentences.List(request.Spreads.Select(spread => spread.Debris.Name));
    }

    private string SizeAt(ImmutableArray<Part> parts)
    {
        ParticleSize[] sizes = [.. request.Spreads.SelectMany(spread => parts.Select(part => spread.Find(part.Id)?.Reach)).OfType<ParticleSize>()];
        return sizes.Length == 0 || sizes.Max().IsUnlimited ? "any size" : string.Create(CultureInfo.InvariantCulture, $"up to {sizes.Max().Micrometres} µm");
    }

    private string Beyond(ImmutableArray<Part> parts)
    {
        var inside = parts.Select(part => part.Id).ToHashSet();
        string[] names =
        [
            .. parts.SelectMany(part => jointsFrom[part.Id])
                .Where(joint => !inside.Contains(joint.To))
                .Select(joint => Sentences.InSentence(request.Family[joint.To].Name))
                .Distinct(StringComparer.Ordinal),
        ];
        return names.Length == 0 ? "nothing" : Sentences.List(names);
    }

    private static string SealList(IEnumerable<string> seals) =>
        Sentences.List(seals.GroupBy(seal => seal, StringComparer.Ordinal).Select(group => (group.Count() == 1 ? "" : group.Count().ToString(CultureInfo.InvariantCulture) + " × ") + group.Key.Replace('-', ' ')));

    private static string Clean(string who) => who.Length > 0 ? Sentences.Clause(who) : "outside workshop";

    /// <summary>What a standard without texts gets.</summary>
    private static string General(Job job)
    {
        string parts = Sentences.List(job.At.Select(part => Sentences.InSentence(part.Name)));
        return job.Action switch
        {
            StepAction.MakeSafe => $"let the pressure off the {job.Topic} circuit, drain it and catch what comes out",
            StepAction.Inspect => $"look at {parts} with a good light",
            StepAction.Remove => $"take off {parts} and cap every opening at once",
            StepAction.Flush => $"flush {parts}, out through a filter or to waste, never round, until what comes out, caught on white cloth, is free of particles",
            StepAction.Clean => $"clean {parts} by hand, until a white cloth wiped over every surface stays clean",
            StepAction.Test => $"test {parts}",
            StepAction.Replace => $"hold the new {parts} against the old, and make it ready",
            StepAction.Refit => job.Seals.IsEmpty ? $"refit {parts}" : $"refit {parts} with new {SealList(job.Seals)}",
            StepAction.SendOut => $"send out {parts}",
            _ => parts,
        };
    }
}
