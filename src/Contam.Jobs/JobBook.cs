using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Jobs;

/// <summary>What to add to a job: entries, and the texts that they name by hash.</summary>
/// <param name="Bodies">The entries, in order; none for nothing to add.</param>
/// <param name="Texts">The texts.</param>
public sealed record Decision(ImmutableArray<EntryBody> Bodies, ImmutableArray<string> Texts)
{
    /// <summary>One entry without texts.</summary>
    public static Decision Of(params ImmutableArray<EntryBody> bodies) => new(bodies, []);
}

/// <summary>The book of a shop's jobs: reads them, and adds to them. The one door between the commands and a store.</summary>
public sealed class JobBook(IJobStore store)
{
    private const int IdLength = 8;
    private const int MostTries = 200;

    private readonly Dictionary<string, PlanDocument> planOf = new(StringComparer.Ordinal);

    /// <summary>Where the jobs are kept.</summary>
    public IJobStore Store => store;

    /// <summary>Keeps a new job. Its id is the beginning of its first entry's hash.</summary>
    /// <exception cref="ShopException">The very same job is there already.</exception>
    public JobRecord Open(Opened opened, ImmutableArray<string> texts)
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
        ImmutableArray<JobEntry> entries = [.. store.Entries(id, out string? damage)];
        // Somebody may have added between the two reads; what is kept so far is one state of the job, and so is what is there now.
        if (entries.Length > 0 && entries[^1].Sequence > summary.Sequence)
            summary = store.Find(id)!;
        if ((damage ?? EntryChain.FirstBreak(entries) ?? (entries.IsEmpty || entries[^1].Hash != summary.Hash && entries[^1].Sequence >= summary.Sequence ? "its last entry is not the one that its row names" : null)) is { } wrong)
            throw new ShopException(ShopFault.Damaged, $"job {id} in {store.Place} is not as it was written: {wrong}. Nothing was changed. contam job check says more, contam job export saves what can be read.");
        ImmutableArray<EntryBody> bodies = [.. entries.Select(entry => BodyOf(id, entry))];
        return new JobRecord(summary, entries, bodies, JobFold.Fold(bodies, PlanOf));
    }

    /// <summary>Adds what is decided of a job as it stands. Where somebody else was quicker the job is read and decided anew.</summary>
    /// <param name="id">The job.</param>
    /// <param name="decide">What to add, given the job; <c>null</c> for nothing. May be asked more than once.</param>
    /// <returns>The job after it, or <c>null</c> where nothing was to be added.</returns>
    public JobRecord? Add(string id, Func<JobRecord, Decision?> decide)
    {
        ArgumentNullException.ThrowIfNull(decide);
        for (int attempt = 0; attempt < MostTries; attempt++)
        {
            JobRecord job = Read(id);
            if (decide(job) is not { Bodies.IsEmpty: false } decision)
                return null;
            if (TryAdd(job, decision) is { } after)
                return after;
        }

        throw new ShopException(ShopFault.Locked, $"job {id} is being written to without a pause. Nothing was written. Do it again.");
    }

    /// <summary>Adds to a job as it was read; <c>null</c>, and nothing added, where somebody else was quicker.</summary>
    public JobRecord? TryAdd(JobRecord job, Decision decision)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(decision);
        ImmutableArray<JobEntry> added = Link(job.Summary, decision.Bodies);
        foreach (string text in decision.Texts.Where(text => decision.Bodies.OfType<Replanned>().Any(one => one.Plan == EntryChain.Sha256(text))))
            planOf[EntryChain.Sha256(text)] = PlanJson.Read(text);
        ImmutableArray<EntryBody> bodies = [.. job.Bodies, .. decision.Bodies];
        JobState state = JobFold.Fold(bodies, PlanOf);
        JobSummary summary = JobSummary.Of(job.Id, state, added[^1], decision.Bodies[^1]);
        JobAddition? written = store.Append(job.Id, head => head.Hash == job.Summary.Hash ? new JobAddition(added, summary) { Texts = decision.Texts } : null);
        return written is null ? null : new JobRecord(summary, [.. job.Entries, .. added], bodies, state);
    }

    /// <summary>Adds an entry that changes nothing but the record (a note, a photo), without reading the job. The sequence that it got.</summary>
    public long AddToRecord(string id, EntryBody body)
    {
        if (body is not (Noted or Photographed))
            throw new ArgumentException("only notes and photos change nothing", nameof(body));
        JobAddition? written = store.Append(id, head => Link(head, [body]) is var link ? new JobAddition(link, head.After(link[0], body.At)) : null);
        return written?.Summary.Sequence ?? throw new ShopException(ShopFault.Refused, $"there is no job {id}. contam job list shows them.");
    }

    /// <summary>A text that a job keeps.</summary>
    /// <exception cref="ShopException">It is not there, or not what its hash says.</exception>
    public string Text(string sha256)
    {
        string? text = store.Text(sha256);
        return text is not null && EntryChain.Sha256(text) == sha256
            ? text
            : throw new ShopException(ShopFault.Damaged, $"a text that a job in {store.Place} keeps (SHA-256 {sha256}) is {(text is null ? "missing" : "changed")}. Nothing was written. contam job check says which jobs need it; an export of one of them has it.");
    }

    /// <summary>The plan of this hash.</summary>
    public PlanDocument PlanOf(string sha256)
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
            throw new ShopException(ShopFault.Newer, $"a plan in {store.Place} is not one that this contam understands: {unknown.Message}", unknown);
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
