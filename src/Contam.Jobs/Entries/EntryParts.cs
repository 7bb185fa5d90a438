using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Jobs.Entries;

/// <summary>A text that the job keeps.</summary>
/// <param name="Name">The file's name, relative to the first one's folder.</param>
/// <param name="Sha256">The hash of its text.</param>
internal sealed record KeptFile(string Name, string Sha256);

/// <summary>A step as it stood when it was ticked, so that an entry can be read without its plan.</summary>
/// <param name="Number">Its number then.</param>
/// <param name="Key">What makes it the same step in another plan; see <see cref="Work.StepKey"/>.</param>
/// <param name="Text">What the technician read.</param>
internal sealed record StepStamp(int Number, string Key, string Text);

/// <summary>What somebody saw at a part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Debris">The debris that was looked for.</param>
/// <param name="Found">Whether it was found; else the part was clean of it.</param>
internal sealed record SeenAt(string Part, string Debris, bool Found)
{
    /// <summary>The size seen in µm, or <c>null</c> for not said.</summary>
    public double? SizeUm { get; init; }

    /// <summary>How it looks (flakes, slivers, grains, fuzz), or <c>null</c> for not said.</summary>
    public string? Form { get; init; }

    /// <summary>Whether it is magnetic, or <c>null</c> for not said.</summary>
    public bool? Magnetic { get; init; }

    /// <summary>Whether the part itself has failed.</summary>
    public bool Failed { get; init; }

    /// <summary>Whether the part had been flushed, cleaned or renewed in this job before the look; <c>null</c> for no.</summary>
    public bool? AfterWork { get; init; }

    /// <summary>Who looked, where that is not who wrote the entry; else <c>null</c>.</summary>
    public string? LookedBy { get; init; }

    /// <summary>When, as written, where that is not when the entry was written; else <c>null</c>.</summary>
    public string? LookedWhen { get; init; }

    /// <summary>Who stands for a clean finding that a file brought; <c>null</c> where none had to be confirmed.</summary>
    public string? ConfirmedBy { get; init; }
}

/// <summary>A step that was done and is open again.</summary>
/// <param name="Key">Which.</param>
/// <param name="Because">Why, as one clause.</param>
internal sealed record OpenAgain(string Key, string Because);

/// <summary>A step that an earlier plan left due.</summary>
/// <param name="Key">Which.</param>
/// <param name="Part">Its part.</param>
/// <param name="Text">What the technician reads.</param>
/// <param name="Minutes">A technician's minutes.</param>
/// <param name="After">The keys of the steps before it that are still there.</param>
internal sealed record CarriedStep(string Key, string Part, string Text, double Minutes, ImmutableArray<string> After);

/// <summary>What a job was opened with, beside family, standard and looks.</summary>
/// <param name="Failed">Ids of the parts that were named as failed; empty where they were taken from what was found.</param>
/// <param name="Debris">Names of the debris.</param>
/// <param name="Technicians">How many technicians.</param>
/// <param name="Share">Where no part was named: the share from which a suspect counts as failed; else <c>null</c>.</param>
internal sealed record KeptQuestion(ImmutableArray<string> Failed, ImmutableArray<string> Debris, int Technicians, double? Share)
{
    /// <summary>The most looks that may decide how far to go; <c>null</c> for none, as in a job that was opened before there were any.</summary>
    public int? MostLooks { get; init; }

    /// <summary>Ids of the places whose looks decide, where they were named; else <c>null</c>.</summary>
    public ImmutableArray<string>? LookAt { get; init; }

    /// <summary>What these parts are said to have shed, by themselves; a part that is not here shed all the debris. <c>null</c> where it is said of none.</summary>
    public ImmutableArray<PlanFailure>? Shed { get; init; }

    /// <summary>What failed, for the plan, whose form of them is kept too.</summary>
    public static KeptQuestion Of(JobQuestion question)
    {
        ImmutableArray<PlanFailure> said = [.. question.Failures.Where(failure => failure.Debris is not null || failure.UpTo is not null).SelectMany(failure => PlanFailures.Of([failure], question.Debris))];
        return new KeptQuestion(
            [.. question.Failures.PartsOf().Select(part => part.Value)],
            [.. question.Debris.Select(debris => debris.Name)],
            question.Technicians,
            question.Failures.IsEmpty ? question.Share : null)
        {
            Shed = said.IsEmpty ? null : said,
            MostLooks = question.MostLooks,
            LookAt = question.LookAt is { } places ? [.. places.Select(place => place.Value)] : null,
        };
    }

    /// <summary>What failed, with what each part shed.</summary>
    /// <param name="find">The debris of a name.</param>
    public ImmutableArray<PartFailure> Failures(Func<string, Debris> find)
    {
        ImmutableArray<PlanFailure> said = Shed ?? [];
        return
        [
            .. Failed.Where(part => !said.Any(failure => failure.Part == part)).Select(part => new PartFailure(new PartId(part))),
            .. said.Select(failure => failure.Asked(find)),
        ];
    }
}

/// <summary>How a deciding look stands.</summary>
/// <param name="Look">Its letter.</param>
/// <param name="Standing"><c>due</c>, <c>waits</c>, <c>not-due</c>, <c>settled</c>, <c>clean</c>, <c>void</c>, <c>found</c> or <c>in-doubt</c>; see <see cref="Work.LookStanding"/>.</param>
internal sealed record LookStands(string Look, string Standing)
{
    /// <summary>The part where the find was made that disproves a clean outcome of it; <c>null</c> where nothing does.</summary>
    public string? DisprovedAt { get; init; }
}
