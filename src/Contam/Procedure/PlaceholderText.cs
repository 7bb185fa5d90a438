using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Measurement.Wording;

namespace Contam.Procedure;

/// <summary>Fills in what a text of the standard leaves open.</summary>
internal sealed class PlaceholderText
{
    private const double UsualDaysOut = 5;
    private const int MostNamed = 8;
    private const string HowClause = ": {how}";

    // In the order in which they are filled in.
    private static readonly string[] Placeholders =
    [
        "{part}", "{parts}", "{kind}", "{debris}", "{circuit}", "{fluid}", "{litres}", "{size}", "{who}", "{days}", "{hours}", "{beyond}", "{upstream}", "{limit}", "{seals}", "{how}",
    ];

    private readonly ProcedureRequest request;
    private readonly Bearing bearing;
    private readonly FrameBook frame;
    private readonly Upstream upstream;
    private readonly ILookup<PartId, Joint> jointsFrom;
    private readonly HashSet<PartId> worked;
    private readonly Dictionary<string, Job> howSaidAt = new(StringComparer.Ordinal);

    public PlaceholderText(ProcedureRequest request, ProcedureDraft draft, Bearing bearing, FrameBook frame)
    {
        this.request = request;
        this.bearing = bearing;
        this.frame = frame;
        upstream = new Upstream(request);
        jointsFrom = request.Family.Joints.ToLookup(joint => joint.From);
        worked = [.. draft.Graph.Jobs.Where(job => job.Frame is null).SelectMany(job => job.At).Select(part => part.Id)];
    }

    /// <summary>The text with every placeholder filled in for this job.</summary>
    public string Fill(string template, Job job)
    {
        if (!template.Contains('{', StringComparison.Ordinal))
            return template;
        string text = WithoutNothing(template, job);
        foreach (string placeholder in Placeholders)
        {
            // What the text does not use costs nothing.
            if (text.Contains(placeholder, StringComparison.Ordinal))
                text = text.Replace(placeholder, ValueOf(placeholder, job), StringComparison.Ordinal);
        }

        return text;
    }

    // Where nobody can say how, or where it may come from, nothing is said of it.
    private string WithoutNothing(string template, Job job)
    {
        Part? first = job.At.FirstOrDefault();
        if (template.Contains(HowClause, StringComparison.Ordinal) && How(job, first).Length == 0)
            return template.Replace(HowClause, "", StringComparison.Ordinal);
        if (template.Contains("{upstream}", StringComparison.Ordinal) && (first is null || upstream.ThatSheds(first).Count == 0))
            return string.Join(' ', template.Split(". ").Where(sentence => !sentence.Contains("{upstream}", StringComparison.Ordinal)).Select(Sentences.Close));
        return template;
    }

    private string ValueOf(string placeholder, Job job)
    {
        Part? first = job.At.FirstOrDefault();
        return placeholder switch
        {
            "{part}" or "{parts}" => job.At.IsEmpty ? job.Topic.Replace('-', ' ') : Sentences.ListUpTo(MostNamed, Sentences.FoldedNames(job.At)),
            "{kind}" => first?.Kind.Name.Replace('-', ' ') ?? "",
            "{debris}" => DebrisAt(job.At),
            "{circuit}" => Sentences.List(CircuitsOf(job).Select(circuit => circuit.Name.Replace('-', ' ')).Distinct()),
            "{fluid}" => Fluid(job),
            "{litres}" => Litres(job),
            "{size}" => SizeAt(job.At),
            "{who}" => first?.SendOut?.Who is { Length: > 0 } who ? Sentences.Clause(who) : "outside workshop",
            "{days}" => Days(job, first),
            "{hours}" => (request.Standard.FirstRunningHours ?? TimeSpan.FromHours(5)).TotalHours.ToString("0.#", CultureInfo.InvariantCulture),
            "{beyond}" => Beyond(job.At),
            "{upstream}" => first is null ? "none" : Sentences.ListUpTo(MostNamed, upstream.ThatSheds(first)),
            "{limit}" => first is null ? "" : (job.Frame?.Step is FrameNames.Hold or FrameNames.HoldGas ? LimitFigures.ForHold(request.Family, first) : LimitFigures.For(request.Family, first)) ?? "",
            "{how}" => How(job, first),
            "{seals}" => SealList(job.Seals),
            _ => throw new ArgumentOutOfRangeException(nameof(placeholder), placeholder, "not a placeholder"),
        };
    }

    private IEnumerable<Circuit> CircuitsOf(Job job) => job.Circuits.IsEmpty ? job.At.SelectMany(bearing.CircuitsOf) : job.Circuits;

    private string Fluid(Job job)
    {
        if (job.Circuits.IsEmpty)
            return bearing.CircuitOfWork(job) is { } circuit ? NameOf(circuit) : "";
        return Sentences.List(job.Circuits.Select(NameOf).Distinct(StringComparer.Ordinal));

        static string NameOf(Circuit circuit) => (circuit.Fluid ?? FluidSort.Air).Replace('-', ' ');
    }

    // How much is filled in: what the parts of these circuits hold, as far as the family says.
    private string Litres(Job job)
    {
        double litres = job.Circuits.Where(circuit => circuit.Parts.Any(worked.Contains)).SelectMany(circuit => circuit.Parts).Distinct().Sum(id => request.Family[id].Volume?.Litres ?? 0);
        return litres > 0 ? litres.ToString("0.#", CultureInfo.InvariantCulture) + " L" : "to the mark";
    }

    private static string Days(Job job, Part? first) => (job.Action == StepAction.Note
        ? first?.Lead?.TotalDays ?? 0
        : first?.SendOut?.Days ?? UsualDaysOut).ToString("0.#", CultureInfo.InvariantCulture);

    // How a look is done is said at the first parts that it is for; other parts are looked at as these are.
    private string How(Job job, Part? first)
    {
        string how = first?.Inspect?.How is { Length: > 0 } said ? said : frame.Find(FrameSection.WithStep, FrameNames.How, [], [.. job.At])?.Say ?? "";
        if (how.Length == 0)
            return "";
        if (first is null || !howSaidAt.TryGetValue(how, out Job? before))
        {
            howSaidAt[how] = job;
            return Sentences.Clause(how);
        }

        // A reference that is longer than what it refers to helps nobody.
        bool isSame = before.At[0].Id == first.Id || first.RepeatOf is { } repeat && before.At[0].RepeatOf == repeat;
        return isSame || frame.Find(FrameSection.WithStep, FrameNames.HowAgain, [], [.. job.At]) is not { } again ? Sentences.Clause(how)
            : Shorter(Sentences.Clause(Fill(again.Say, before)), Sentences.Clause(how));
    }

    private static string Shorter(string text, string other) => text.Count(one => one == ' ') < other.Count(one => one == ' ') ? text : other;

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
        Part[] beyond = [.. parts.SelectMany(part => jointsFrom[part.Id]).Where(joint => !inside.Contains(joint.To)).Select(joint => request.Family[joint.To]).Distinct()];
        return beyond.Length == 0 ? "nothing" : Sentences.Names(beyond);
    }

    private static string SealList(IEnumerable<string> seals) =>
        Sentences.List(NumberedNames.Folded(seals.GroupBy(seal => seal, StringComparer.Ordinal).Select(group => (group.Count() == 1 ? "" : group.Count().ToString(CultureInfo.InvariantCulture) + " × ") + group.Key.Replace('-', ' '))));
}
