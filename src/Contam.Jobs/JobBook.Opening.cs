using System.Collections.Immutable;
using System.Text.Json;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Plans;

namespace Contam.Jobs;

/// <summary>A job that may be opened: its question gives its plan. Only <see cref="JobBook.Prepare"/> makes one.</summary>
public sealed class JobToOpen
{
    internal JobToOpen(Opened entry, ImmutableArray<string> texts)
    {
        Entry = entry;
        Texts = texts;
    }

    internal Opened Entry { get; }

    internal ImmutableArray<string> Texts { get; }
}

/// <summary>Opening a job.</summary>
public sealed partial class JobBook
{
    /// <summary>
    /// Makes a job ready from its question, before any shop is opened or made for it. The plan is made here, from the texts that will be kept, and judged by the
    /// verifier; a plan that is brought along must be the very same, and every clean finding in it must be confirmed by somebody.
    /// </summary>
    /// <param name="question">The question.</param>
    /// <param name="head">Whose engine it is.</param>
    /// <param name="signature">Who opens it, and when.</param>
    /// <param name="file">A plan that was brought along, or <c>null</c>.</param>
    /// <returns>The job to be opened, or why not.</returns>
    /// <exception cref="ArgumentException">A place is named at which a look decides nothing, or too many are.</exception>
    public static (JobToOpen? Job, Refusal? Refusal) Prepare(JobQuestion question, JobHead head, Signature signature, PlanFile? file = null)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(signature);
        if (FaultIn(("customer", head.Customer), ("engine", head.Engine), ("technician", head.Technician), ("name", signature.By)) is { } fault)
            return (null, fault);
        ImmutableArray<string> sources = SourcesOf(question);
        var textOf = sources.DistinctBy(EntryChain.Sha256).ToDictionary(EntryChain.Sha256, StringComparer.Ordinal);
        Opened opened = WithoutPlan(question, head, signature, file);
        KeptSystem kept = KeptSystem.Of(sha256 => textOf[sha256], opened);
        if (Planned.Of(kept, opened.Question!, opened.Looks) is not { } plan)
            return (null, new PlanRefused("no part that sheds it has a way to what was found", IsAnother: false));
        string text = PlanJson.Write(plan);
        if (file is not null && Planned.Difference(file.Text, text) is { } difference)
        {
            // A plan does not say whether its looks were chosen or named; named, they give it again.
            return WithNamedLooks(question, file.Text) is { } named ? Prepare(named, head, signature, file) : (null, new PlanRefused(difference, IsAnother: true));
        }

        if (file is not null && Unconfirmed(opened.Looks, file.Confirmed) is { IsEmpty: false } unconfirmed)
            return (null, new NotConfirmed(unconfirmed));
        return Planned.WhyNot(plan, kept) is { } why
            ? (null, new PlanRefused(why, IsAnother: false))
            : (new JobToOpen(opened with { Plan = EntryChain.Sha256(text) }, [text, .. sources]), null);
    }

    /// <summary>The question with the places of a plan's looks named; <c>null</c> where they are named, there are none, or they cannot decide.</summary>
    private static JobQuestion? WithNamedLooks(JobQuestion question, string plan)
    {
        try
        {
            ImmutableArray<PartId> places = [.. PlanJson.Read(plan).Looks.SelectMany(look => look.Places).Select(place => new PartId(place))];
            if (question.LookAt is not null || places.IsEmpty)
                return null;
            HowFar.Of(new PlanRequest(question.Family, question.Standard, question.Failures, question.Debris) { Findings = question.Findings }, lookAt: places);
            return question with { LookAt = places };
        }
        catch (Exception none) when (none is JsonException or ArgumentException or KeyNotFoundException)
        {
            return null;
        }
    }

    /// <summary>Opens a job that was made ready.</summary>
    /// <exception cref="ShopException">The store cannot take it, or the very same job is there already.</exception>
    public JobAnswer Open(JobToOpen job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return JobAnswer.Written(Open(job.Entry, job.Texts), 1, [], []);
    }

    /// <summary>The first entry of a job with a plan that was made of the question before, and the texts that it names. For measurements.</summary>
    internal static (Opened Entry, ImmutableArray<string> Texts) Opening(JobQuestion question, JobHead head, Signature signature, PlanDocument plan)
    {
        string text = PlanJson.Write(plan);
        return (WithoutPlan(question, head, signature, null) with { Plan = EntryChain.Sha256(text) }, [text, .. SourcesOf(question)]);
    }

    private static ImmutableArray<string> SourcesOf(JobQuestion question) => [.. question.Family.Sources.Select(source => source.Text), .. question.StandardSources.Select(source => source.Text)];

    private static Opened WithoutPlan(JobQuestion question, JobHead head, Signature signature, PlanFile? file) => new()
    {
        At = signature.At,
        By = RecordText.Kept(signature.By ?? head.Technician),
        Customer = RecordText.Kept(head.Customer),
        Engine = RecordText.Kept(head.Engine),
        Technician = RecordText.Kept(head.Technician),
        Plan = "",
        Family = [.. question.Family.Sources.Select(KeptFileOf)],
        Standard = [.. question.StandardSources.Select(KeptFileOf)],
        Limits = KeptLimits.Of(question.Limits),
        OnlySuspected = question.Failures.IsEmpty ? true : null,
        Question = KeptQuestion.Of(question),
        Looks = [.. question.Findings.Select(finding => LookOf(finding, file))],
    };

    /// <summary>The clean looks that nobody stands for.</summary>
    internal static ImmutableArray<CleanFinding> Unconfirmed(IEnumerable<SeenAt> looks, ImmutableArray<Confirmation> confirmed) =>
    [
        .. looks.Where(look => !look.Found && !confirmed.Any(one => one.Part == look.Part && one.Debris == look.Debris && RecordText.FaultOf(one.By) is null))
            .Select(look => new CleanFinding(look.Part, look.Debris, look.LookedBy, look.LookedWhen)).Distinct(),
    ];

    private static KeptFile KeptFileOf(SourceCopy file) => new(file.Name, EntryChain.Sha256(file.Text));

    private static SeenAt LookOf(Finding finding, PlanFile? file) => SeenOf(finding) with
    {
        LookedBy = finding.By,
        LookedWhen = finding.When,
        ConfirmedBy = finding.Found ? null : file?.Confirmed.FirstOrDefault(one => one.Part == finding.Part.Value && one.Debris == finding.Debris.Name)?.By,
    };

    private static SeenAt SeenOf(Finding finding) => new(finding.Part.Value, finding.Debris.Name, finding.Found)
    {
        SizeUm = finding.Size is { IsUnlimited: false } size ? size.Micrometres : null,
        Form = finding.Form?.ToString().ToLowerInvariant(),
        Magnetic = finding.Magnetic,
    };
}
