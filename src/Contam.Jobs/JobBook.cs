using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Jobs;

/// <summary>What to add to a job: entries, and the texts that they name by hash.</summary>
/// <param name="Bodies">The entries, in order; none for nothing to add.</param>
/// <param name="Texts">The texts.</param>
internal sealed record Decision(ImmutableArray<EntryBody> Bodies, ImmutableArray<string> Texts)
{
    /// <summary>One entry without texts.</summary>
    public static Decision Of(params ImmutableArray<EntryBody> bodies) => new(bodies, []);
}

/// <summary>
/// The book of a shop's jobs: reads them, and adds to them. The one door to a store: entries and stores are not to be had from outside, so that whatever is
/// written has gone through the rules of the record.
/// </summary>
public sealed partial class JobBook : IDisposable
{
    private const int IdLength = 8;
    private const int TriesUnlocked = 3;

    private readonly Dictionary<string, PlanDocument> planOf = new(StringComparer.Ordinal);
    private readonly Dictionary<string, KeptSystem> systemOf = new(StringComparer.Ordinal);
    private readonly IJobStore store;
    private JobRecord? lastRead;

    internal JobBook(IJobStore store)
    {
        this.store = store;
    }

    /// <summary>Where the jobs are kept, in words; without a password.</summary>
    public string Place => store.Place;

    internal IJobStore Store => store;

    /// <summary>The book of the shop at this place.</summary>
    /// <param name="place">A file, or <c>postgres://USER@HOST/DATABASE</c>.</param>
    /// <param name="use">What it is opened for.</param>
    /// <exception cref="ShopException">It cannot be used; the message says why and what to do, and shows no password.</exception>
    public static JobBook Open(string place, ShopUse use) => new(Shops.Open(place, use));

    /// <summary>Every job, the one last written to first; then by id.</summary>
    public ImmutableArray<JobSummary> List() => store.List();

    /// <summary>The family and the standard that a job keeps.</summary>
    /// <exception cref="ShopException">A text is gone, or is no longer read as what it was.</exception>
    public KeptSystem SystemOf(JobRecord job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return SystemOf(job.State.Opened);
    }

    internal KeptSystem SystemOf(Opened opened)
    {
        string key = string.Join(' ', opened.Family.Concat(opened.Standard).Select(file => $"{file.Name} {file.Sha256}"));
        return systemOf.TryGetValue(key, out KeptSystem? known) ? known : systemOf[key] = KeptSystem.Of(Text, opened);
    }

    /// <summary>Lets go of the store.</summary>
    public void Dispose() => store.Dispose();

    /// <summary>Keeps a new job. Its id is the beginning of its first entry's hash.</summary>
    /// <exception cref="ShopException">The very same job is there already.</exception>
    internal JobRecord Open(Opened opened, ImmutableArray<string> texts)
    {
        JobEntry first = EntryChain.Link(0, EntryChain.Beginning, EntryJson.Write(opened));
        string id = first.Hash[..IdLength];
        foreach (string text in texts.Where(text => EntryChain.Sha256(text) == opened.Plan))
            planOf[opened.Plan] = PlanJson.Read(text);
        JobState state = JobFold.Fold([opened], PlanOf);
        JobSummary summary = JobSummary.Of(id, state, first, opened);
        if (!store.Create(new JobAddition([first], summary) { Texts = texts }))
            throw new ShopException(ShopFault.Refused, $"job {id} is there already, opened with the same words at the same moment. contam job show --job {id} shows it.");
        return new JobRecord(summary, [first], [opened], state);
    }

    /// <summary>The job that a person names by its id or the beginning of it; without a name, the only one that is open.</summary>
    /// <exception cref="ShopException">There is none, or more than one.</exception>
    public JobSummary Find(string? named)
    {
        if (named is { Length: IdLength } && store.Find(named) is { } exact)
            return exact;
        JobSummary[] fit = [.. store.List().Where(job => named is null ? job.State == "open" : named.Length > 0 && job.Id.StartsWith(named, StringComparison.Ordinal))];
        if (fit.Length == 1)
            return fit[0];
        string which = string.Join(", ", fit.Take(5).Select(job => job.Id)) + (fit.Length > 5 ? ", …" : "");
        throw new ShopException(ShopFault.Refused, (named, fit.Length) switch
        {
            (null, 0) => "no job is open. Name one with --job ID; contam job list shows them.",
            (null, _) => $"several jobs are open: {which}. Say which with --job ID.",
            (_, 0) => $"there is no job {TextPage.Harmless(named)}. contam job list shows them.",
            _ => $"{TextPage.Harmless(named)} could be {which}. Write more of it.",
        });
    }

    /// <summary>A job with all that it is.</summary>
    /// <exception cref="ShopException">It is not there, or what is kept of it does not hang together; then nothing may be built on it.</exception>
    public JobRecord Read(string id)
    {
        JobSummary summary = store.Find(id) ?? throw new ShopException(ShopFault.Refused, $"there is no job {TextPage.Harmless(id)}. contam job list shows them.");
        // What was read before stands: entries are only ever added.
        JobRecord? known = lastRead is { } last && last.Id == id && last.Summary.Sequence <= summary.Sequence ? last : null;
        ImmutableArray<JobEntry> added = store.Entries(id, out string? damage, after: known?.Summary.Sequence ?? 0);
        ImmutableArray<JobEntry> entries = known is null ? added : [.. known.Entries, .. added];
        if ((damage ?? EntryChain.FirstBreak(added, known?.Entries[^1]) ?? AgainstRow(entries, summary)) is { } wrong)
            throw new ShopException(ShopFault.Damaged, $"job {id} in {store.Place} is not as it was written: {wrong}. Nothing was changed. contam job check says more, contam job export saves what can be read.");
        if (known is not null && added.IsEmpty)
            return known;
        ImmutableArray<EntryBody> bodies = [.. known is null ? [] : known.Bodies, .. added.Select(entry => BodyOf(id, entry))];
        JobState state = JobFold.Fold(bodies, PlanOf);
        // Somebody may have added since the row was read. The record is that of the entries, so that nothing is decided on less than it is added to.
        JobSummary asRead = entries.Length == summary.Sequence ? summary : JobSummary.Of(id, state, entries[^1], bodies[^1]);
        return lastRead = new JobRecord(asRead, entries, bodies, state);
    }

    /// <summary>What of a job's entries does not go with its row, which was read before them; <c>null</c> for nothing.</summary>
    private static string? AgainstRow(ImmutableArray<JobEntry> entries, JobSummary row) =>
        entries.Length < row.Sequence ? "an entry is missing at its end"
        : entries.IsEmpty || entries[(int)row.Sequence - 1].Hash != row.Hash ? "its last entry is not the one that its row names"
        : null;

    /// <summary>
    /// Adds what is decided of a job as it stands. Where somebody else was quicker the job is read and decided anew; where somebody was so time and again,
    /// it is read and decided while nobody else can write, so that a bench among many that write without a pause has its turn too.
    /// </summary>
    /// <param name="id">The job.</param>
    /// <param name="decide">What to add, given the job; <c>null</c> for nothing. May be asked more than once.</param>
    /// <returns>The job after it, or <c>null</c> where nothing was to be added.</returns>
    internal JobRecord? Add(string id, Func<JobRecord, Decision?> decide)
    {
        ArgumentNullException.ThrowIfNull(decide);
        for (int attempt = 0; attempt < TriesUnlocked; attempt++)
        {
            JobRecord job = Read(id);
            if (decide(job) is not { Bodies.IsEmpty: false } decision)
                return null;
            if (TryAdd(job, decision) is { } after)
                return after;
        }

        (JobAddition Added, JobRecord After)? made = null;
        JobAddition? written = store.Append(id, _ =>
        {
            JobRecord job = Read(id);
            made = decide(job) is { Bodies.IsEmpty: false } decision ? Addition(job, decision) : null;
            return made?.Added;
        });
        return written is null ? null : lastRead = made!.Value.After;
    }

    /// <summary>Adds to a job as it was read; <c>null</c>, and nothing added, where somebody else was quicker.</summary>
    internal JobRecord? TryAdd(JobRecord job, Decision decision)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(decision);
        (JobAddition added, JobRecord after) = Addition(job, decision);
        return store.Append(job.Id, head => head.Hash == job.Summary.Hash ? added : null) is null ? null : lastRead = after;
    }

    /// <summary>Adds an entry that changes nothing but the record (a note, a photo), without reading the job. The sequence that it got.</summary>
    internal long AddToRecord(string id, EntryBody body)
    {
        if (body is not (Noted or Photographed))
            throw new ArgumentException("only notes and photos change nothing", nameof(body));
        JobAddition? written = store.Append(id, head => Link(head, [body]) is var link ? new JobAddition(link, head.After(link[0], body.At)) : null);
        return written?.Summary.Sequence ?? throw new ShopException(ShopFault.Refused, $"there is no job {id}. contam job list shows them.");
    }

    /// <summary>A text that a job keeps.</summary>
    /// <exception cref="ShopException">It is not there, or not what its hash says.</exception>
    internal string Text(string sha256)
    {
        string? text = store.Text(sha256);
        return text is not null && EntryChain.Sha256(text) == sha256
            ? text
            : throw new ShopException(ShopFault.Damaged, $"a text that a job in {store.Place} keeps (SHA-256 {sha256}) is {(text is null ? "missing" : "changed")}. Nothing was written. contam job check says which jobs need it; an export of one of them has it.");
    }

    /// <summary>The plan of this hash.</summary>
    internal PlanDocument PlanOf(string sha256)
    {
        if (planOf.TryGetValue(sha256, out PlanDocument? known))
            return known;
        string text = Text(sha256);
        try
        {
            return planOf[sha256] = PlanJson.Read(text);
        }
        catch (JsonException unknown)
        {
            throw new ShopException(ShopFault.Newer, $"a plan in {store.Place} is not one that this contam understands: {unknown.Message}. Nothing was changed. Use the contam that made it, or open a new job.", unknown);
        }
    }

    private EntryBody BodyOf(string id, JobEntry entry)
    {
        try
        {
            return EntryJson.Read(entry.Body);
        }
        catch (JsonException unknown)
        {
            throw new ShopException(ShopFault.Newer, $"entry {entry.Sequence.ToString(CultureInfo.InvariantCulture)} of job {id} in {store.Place} is not one that this contam understands. Was it written by a later one? ({unknown.Message})", unknown);
        }
    }

    /// <summary>What a decision adds to a job, and the job after it.</summary>
    private (JobAddition Added, JobRecord After) Addition(JobRecord job, Decision decision)
    {
        foreach (string text in decision.Texts.Where(text => decision.Bodies.OfType<Replanned>().Any(one => one.Plan == EntryChain.Sha256(text))))
            planOf[EntryChain.Sha256(text)] = PlanJson.Read(text);
        ImmutableArray<EntryBody> bodies = [.. job.Bodies, .. decision.Bodies];
        JobState state = JobFold.Fold(bodies, PlanOf);
        // The gate is asked again after everything that is written: what shuts it takes the release back, in the same change and for everybody to see.
        if (job.IsReleased && ReleaseGate.Missing(state, SystemOf(job)) is { IsEmpty: false } missing && bodies[^1] is not Withdrawn)
        {
            bodies = bodies.Add(new Withdrawn { At = bodies[^1].At, By = bodies[^1].By, Because = [.. missing.Select(one => one.Text)] });
            state = JobFold.Fold(bodies, PlanOf);
        }

        ImmutableArray<JobEntry> added = Link(job.Summary, bodies[job.Bodies.Length..]);
        JobSummary summary = JobSummary.Of(job.Id, state, added[^1], bodies[^1]);
        return (new JobAddition(added, summary) { Texts = decision.Texts }, new JobRecord(summary, [.. job.Entries, .. added], bodies, state));
    }

    private static ImmutableArray<JobEntry> Link(JobSummary head, ImmutableArray<EntryBody> bodies)
    {
        var entries = ImmutableArray.CreateBuilder<JobEntry>(bodies.Length);
        (long sequence, string hash) = (head.Sequence, head.Hash);
        foreach (EntryBody body in bodies)
        {
            JobEntry entry = EntryChain.Link(sequence, hash, EntryJson.Write(body));
            entries.Add(entry);
            (sequence, hash) = (entry.Sequence, entry.Hash);
        }

        return entries.MoveToImmutable();
    }
}
