using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Treatment.Reading;

namespace Contam.Jobs;

/// <summary>A new plan that is offered for a job as it was read, for a person to say yes or no to.</summary>
public sealed class Proposal
{
    internal Proposal(JobRecord job, PlanChange change, ImmutableArray<Looked> looks)
    {
        Job = job;
        Change = change;
        Looks = looks;
    }

    /// <summary>The job as it was read.</summary>
    public JobRecord Job { get; }

    /// <summary>What the new plan changes.</summary>
    public PlanChange Change { get; }

    internal ImmutableArray<Looked> Looks { get; }
}

/// <summary>Looks, and plans that are made with them.</summary>
public sealed partial class JobBook
{
    /// <summary>Looks are written down; the job is not released before a plan has been made with them.</summary>
    /// <param name="id">The job.</param>
    /// <param name="findings">What was seen.</param>
    /// <param name="hasFailed">Whether the parts where debris was found have failed themselves.</param>
    /// <param name="signature">Who looked, and when.</param>
    public JobAnswer Look(string id, ImmutableArray<Finding> findings, bool hasFailed, Signature signature)
    {
        ArgumentNullException.ThrowIfNull(signature);
        if (FaultIn(("name", signature.By)) is { } fault)
            return JobAnswer.Refused(fault);
        return Decide(id, signature, (job, _) => Rule(job, findings, hasFailed, signature, out ImmutableArray<Looked> looks) is { } why ? (null, why) : (new Decision([.. looks], []), null));
    }

    /// <summary>A look that decides how far to go was made, or could not be; and with it its step is done. Written together, or not at all.</summary>
    /// <param name="id">The job.</param>
    /// <param name="letter">The look's letter.</param>
    /// <param name="outcome">What it came to.</param>
    /// <param name="finds">What was found, where something was; of parts and debris that there are.</param>
    /// <param name="isAgain">Whether it takes the place of what was said before.</param>
    /// <param name="signature">Who looked, and when.</param>
    /// <param name="words">What is said of the step.</param>
    public JobAnswer Decide(string id, string letter, LookOutcome outcome, ImmutableArray<Finding> finds, bool isAgain, Signature signature, TickWords? words = null)
    {
        ArgumentNullException.ThrowIfNull(signature);
        words ??= new TickWords();
        if (FaultIn(("name", signature.By), ("note", words.Note), ("reason", words.Anyway)) is { } fault)
            return JobAnswer.Refused(fault);
        return Decide(id, signature, (job, by) =>
        {
            KeptSystem kept = SystemOf(job);
            if (UnknownIn(kept, finds) is { } unknown)
                return (null, unknown);
            Ruling ruling = LookRules.Decide(job.State, kept, letter, outcome, [.. finds.Select(SeenOf)], isAgain, signature.At, by);
            if (ruling.Body is not { } decided)
                return (null, ruling.Refusal);
            JobState then = JobFold.Fold(job.Bodies.Add(decided), PlanOf);
            if (then.Steps.All.FirstOrDefault(step => step.Looks.Contains(letter)) is not { } made || !then.IsOpen(made) || made.Looks.Any(look => !LookStandings.IsDecided(then.StandingOf(look))))
                return (Decision.Of(decided), null);
            Ruling tick = WorkRules.Tick(then, kept, made.Number, words with { Note = KeptOrNone(words.Note), Anyway = KeptOrNone(words.Anyway) }, signature.At, by);
            return tick.Body is { } ticked ? (Decision.Of(decided, ticked), null) : (null, tick.Refusal);
        });
    }

    private static NoSuchThing? UnknownIn(KeptSystem kept, ImmutableArray<Finding> findings)
    {
        Catalogue catalogue = kept.Standard.CatalogueOf();
        foreach (Finding finding in findings)
        {
            if (kept.Family.Find(finding.Part) is null)
                return new NoSuchThing(NamedThing.Part, finding.Part.Value, [.. kept.Family.Parts.Select(part => part.Id.Value)]);
            if (catalogue.FindDebris(finding.Debris.Name) is null)
                return new NoSuchThing(NamedThing.Debris, finding.Debris.Name, [.. catalogue.Debris.Select(debris => debris.Name)]);
        }

        return null;
    }

    /// <summary>What planning again would change, with these looks and with those that no plan has been made with yet. Nothing is written.</summary>
    /// <returns>The proposal, or why there is none.</returns>
    public (Proposal? Proposal, Refusal? Refusal) Propose(string id, ImmutableArray<Finding> findings, bool hasFailed, Signature signature)
    {
        ArgumentNullException.ThrowIfNull(signature);
        if (FaultIn(("name", signature.By)) is { } fault)
            return (null, fault);
        JobRecord job = Read(id);
        if (Rule(job, findings, hasFailed, signature, out ImmutableArray<Looked> looks) is { } why)
            return (null, why);
        KeptSystem kept = SystemOf(job);
        ImmutableArray<LookTaken> taken = [.. looks.Select((look, index) => new LookTaken(job.Summary.Sequence + 1 + index, look.Seen, look.By, IsAnswered: false))];
        return (new Proposal(job, Rework.Of(job.State, kept.Family, kept.Standard, taken), looks), null);
    }

    /// <summary>Takes a proposal. What was shown is what is taken: were the job another by now, it would be the difference to something else.</summary>
    public JobAnswer Take(Proposal proposal, Signature signature)
    {
        ArgumentNullException.ThrowIfNull(proposal);
        ArgumentNullException.ThrowIfNull(signature);
        if (FaultIn(("name", signature.By)) is { } fault)
            return JobAnswer.Refused(fault);
        string plan = PlanJson.Write(proposal.Change.Plan);
        Replanned replanned = Rework.Entry(proposal.Change, plan, signature.At, RecordText.Kept(signature.By ?? proposal.Job.Technician));
        return TryAdd(proposal.Job, new Decision([.. proposal.Looks, replanned], [plan])) is { } after ? Answer(proposal.Job, after) : JobAnswer.Refused(new WrittenMeanwhile());
    }

    private Refusal? Rule(JobRecord job, ImmutableArray<Finding> findings, bool hasFailed, Signature signature, out ImmutableArray<Looked> looks)
    {
        KeptSystem kept = SystemOf(job);
        var taken = ImmutableArray.CreateBuilder<Looked>();
        looks = [];
        if (UnknownIn(kept, findings) is { } unknown)
            return unknown;
        foreach (Finding finding in findings)
        {
            Ruling ruling = WorkRules.Look(job.State, SeenOf(finding) with { Failed = hasFailed && finding.Found }, signature.At, RecordText.Kept(signature.By ?? job.Technician));
            if (ruling.Refusal is { } why)
                return why;
            taken.Add((Looked)ruling.Body!);
        }

        looks = taken.ToImmutable();
        return null;
    }
}
