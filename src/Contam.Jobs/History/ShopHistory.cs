using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using System.Text.Json;
using Contam.Diagnosis;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Spread;
using Contam.Treatment.Reading;

namespace Contam.Jobs.History;

/// <summary>
/// What was looked for and found over all jobs of a shop. Reads the entries that open jobs and those that tell of looks, and no others; whether a place was
/// exposed is judged by the family that each job keeps, from its failed parts alone, so that a find does not make its own place exposed.
/// Cost: linear in those entries; a reading for each family text and a spread for each failure. Jobs are gone through side by side, and the answer does not
/// depend on how many at once; the store is asked by one at a time.
/// </summary>
public sealed class ShopHistory
{
    private readonly JobBook book;
    private readonly Lock asking = new();
    private readonly ConcurrentDictionary<string, Lazy<KeptSystem?>> systemOf = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<HashSet<PartId>>> exposedOf = new(StringComparer.Ordinal);

    private ShopHistory(JobBook book)
    {
        this.book = book;
    }

    /// <summary>Every look at the parts that are asked for, by job, then in order.</summary>
    /// <param name="book">The shop's book.</param>
    /// <param name="isAsked">Whether a look in a job is wanted; looks that are not cost next to nothing. Asked from several threads.</param>
    /// <param name="atOnce">How many jobs at most are gone through at once; -1 for as many as the machine has processors.</param>
    internal static ImmutableArray<PastLook> Of(JobBook book, Func<JobSummary, SeenAt, bool> isAsked, int atOnce = -1)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(isAsked);
        var history = new ShopHistory(book);
        EntryOfJob[][] jobs = [.. book.Store.EntriesOfKind("opened", "looked", "decided").GroupBy(one => one.Job.Id, StringComparer.Ordinal).Select(job => job.ToArray())];
        var looks = new PastLook[jobs.Length][];
        try
        {
            // Each job is written to its own place, so the order is that of the jobs, whoever finishes first.
            Parallel.For(0, jobs.Length, new ParallelOptions { MaxDegreeOfParallelism = atOnce }, place => looks[place] = [.. history.LooksOf(jobs[place], isAsked)]);
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }

        return [.. looks.SelectMany(ofJob => ofJob)];
    }

    /// <summary>The counts for the parts of one family, in its order; of all its looks those that count.</summary>
    /// <param name="book">The shop's book.</param>
    /// <param name="family">The family. Jobs of the same id count, whatever was changed in its file since.</param>
    /// <param name="debris">The debris that is asked about.</param>
    public static LookHistory CountsFor(JobBook book, Family family, ImmutableArray<Debris> debris)
    {
        ArgumentNullException.ThrowIfNull(family);
        PastLook[] counted = [.. Of(book, (job, seen) => job.Family == family.Id && debris.Any(one => one.Name == seen.Debris) && family.Find(new PartId(seen.Part)) is not null).Where(look => look.Worth == PastLookWorth.Counts)];
        ILookup<(string, string), PastLook> at = counted.ToLookup(look => (look.Seen.Part, look.Seen.Debris));
        return new LookHistory(
            [
                .. family.Parts.SelectMany(part => debris.Select(one => new PlaceCount(part.Id, one, CountOf(at[(part.Id.Value, one.Name)])))).Where(place => place.Count.Looks > 0),
            ],
            counted.Select(look => look.Job.Id).Distinct(StringComparer.Ordinal).Count());
    }

    /// <summary>How often something was found in these looks.</summary>
    internal static LookCount CountOf(IEnumerable<PastLook> looks) => looks.Aggregate(default(LookCount), (sum, look) => sum + new LookCount(look.Seen.Found ? 1 : 0, 1));

    private IEnumerable<PastLook> LooksOf(EntryOfJob[] entries, Func<JobSummary, SeenAt, bool> isAsked)
    {
        JobSummary job = entries[0].Job;
        EntryBody[] bodies = [.. entries.Select(one => BodyOf(one.Entry)).OfType<EntryBody>()];
        SeenAt[] seen = [.. bodies.SelectMany(SeenIn)];
        if (!seen.Any(one => isAsked(job, one)))
            yield break;
        Opened? opened = bodies.OfType<Opened>().FirstOrDefault();
        // What was only suspected when the plan was made is no known source; what was seen to have failed since is one.
        ImmutableArray<string> failed = opened?.OnlySuspected == true
            ? [.. seen.Where(one => one.Failed).Select(one => one.Part).Distinct(StringComparer.Ordinal)]
            : [.. job.Failed.Split(',', StringSplitOptions.RemoveEmptyEntries)];
        var before = new HashSet<(string, string)>();
        foreach (SeenAt one in seen)
        {
            bool isFirst = before.Add((one.Part, one.Debris));
            if (isAsked(job, one))
                yield return new PastLook(job, one, failed, WorthOf(one, isFirst, opened, failed));
        }
    }

    private static IEnumerable<SeenAt> SeenIn(EntryBody body) => body switch
    {
        Opened one => one.Looks,
        Looked one => [one.Seen],
        Decided one => one.Seen,
        _ => [],
    };

    private PastLookWorth WorthOf(SeenAt seen, bool isFirst, Opened? opened, ImmutableArray<string> failed)
    {
        if (!isFirst)
            return PastLookWorth.Again;
        if (seen.AfterWork == true)
            return PastLookWorth.AfterWork;
        if (failed.Contains(seen.Part))
            return PastLookWorth.FailedItself;
        if (failed.IsEmpty)
            return PastLookWorth.SourceUnknown;
        if (opened is null || SystemOf(opened) is not { } kept || kept.Standard.CatalogueOf().FindDebris(seen.Debris) is not { } debris)
            return PastLookWorth.Unreadable;
        ImmutableArray<PartFailure> sources = [.. SaidOf(opened, kept, failed).Where(failure => failure.Debris is null ? kept.Family.Find(failure.Part)?.ShedOf(debris) is not null : failure.Sheds(debris))];
        if (sources.IsEmpty)
            return PastLookWorth.SourceUnknown;
        return ExposedTo(opened, kept.Family, sources, debris).Contains(new PartId(seen.Part)) ? PastLookWorth.Counts : PastLookWorth.NotExposed;
    }

    /// <summary>The failed parts with what the job says that each shed; a part of which it says nothing sheds what its family says.</summary>
    private static IEnumerable<PartFailure> SaidOf(Opened opened, KeptSystem kept, ImmutableArray<string> failed)
    {
        Catalogue catalogue = kept.Standard.CatalogueOf();
        PlanFailure[] said = [.. (opened.Question?.Shed ?? []).Where(failure => failure.Debris.All(name => catalogue.FindDebris(name) is not null))];
        return failed.SelectMany(part => said.Where(failure => failure.Part == part).Select(failure => failure.Asked(name => catalogue.FindDebris(name)!)).DefaultIfEmpty(new PartFailure(new PartId(part))));
    }

    private HashSet<PartId> ExposedTo(Opened opened, Family family, ImmutableArray<PartFailure> sources, Debris debris)
    {
        string key = $"{KeyOf(opened)} {debris.Name} {string.Join(',', sources.Select(source => $"{source.Part}:{source.SizeOf(family[source.Part], debris)}"))}";
        return exposedOf.GetOrAdd(key, _ => new Lazy<HashSet<PartId>>(() =>
        {
            DebrisSpread spread = Spreading.Of(new SpreadQuestion(family, sources, debris));
            return [.. spread.Parts.Where(part => part.Grade == Grade.Exposed).Select(part => part.Part)];
        })).Value;
    }

    private KeptSystem? SystemOf(Opened opened) => systemOf.GetOrAdd(KeyOf(opened), _ => new Lazy<KeptSystem?>(() => Kept(opened))).Value;

    private KeptSystem? Kept(Opened opened)
    {
        try
        {
            return KeptSystem.Of(Text, opened);
        }
        catch (ShopException unread) when (unread.Fault is ShopFault.Damaged or ShopFault.Newer)
        {
            // One job that cannot be read does not take the history of the others; contam job check names it.
            return null;
        }
    }

    private string Text(string sha256)
    {
        lock (asking)
            return book.Text(sha256);
    }

    private static string KeyOf(Opened opened) => string.Join(' ', opened.Family.Concat(opened.Standard).Select(file => file.Sha256));

    private static EntryBody? BodyOf(JobEntry entry)
    {
        try
        {
            return EntryJson.Read(entry.Body);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
