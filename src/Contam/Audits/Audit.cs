using System.Collections.Immutable;
using Contam.Families;
using Contam.Problems;

namespace Contam.Audits;

/// <summary>What going through every failure of every family came to. Everything stands in the order of the families, then of the file.</summary>
public sealed record Audit
{
    /// <summary>The id of the standard that was planned by.</summary>
    public required string Standard { get; init; }

    /// <summary>The hash of that standard.</summary>
    public required string StandardSha256 { get; init; }

    /// <summary>The families.</summary>
    public required ImmutableArray<AuditedFamily> Families { get; init; }

    /// <summary>Every failure: each part that sheds, with each debris that it sheds.</summary>
    public required ImmutableArray<AuditedFailure> Failures { get; init; }

    /// <summary>What was seen; those of a family before those across families, and within a family by <see cref="AuditCodes.All"/>.</summary>
    public required ImmutableArray<AuditMessage> Messages { get; init; }

    /// <summary>Which kinds each debris reaches in which family, and whether the standard has a rule for all of it.</summary>
    public required ImmutableArray<AuditCell> Matrix { get; init; }

    /// <summary>The failures whose plans can take most bench hours, the dearest first; at most ten. Of the numbers of a repeated part that cost the same, the first stands for all.</summary>
    public required ImmutableArray<AuditedFailure> Costliest { get; init; }

    /// <summary>Over all failures, the share of the bench hours that hangs on looks.</summary>
    public Quartiles OnLooks => Quartiles.Of(Failures.Select(failure => failure.Hours.OnLooks));

    /// <summary>Over all failures, how many looks decide.</summary>
    public Quartiles Looks => Quartiles.Of(Failures.Select(failure => (double)failure.Hours.Looks));

    /// <summary>How many messages are errors: what must be mended.</summary>
    public int Errors => Messages.Count(message => message.Severity == Severity.Error);
}

/// <summary>A family that was gone through.</summary>
/// <param name="Id">Its id.</param>
/// <param name="File">The file, as named.</param>
/// <param name="Title">Its title.</param>
/// <param name="Sha256">The hash of what was read.</param>
/// <param name="Parts">How many parts it has.</param>
/// <param name="Failures">How many failures were gone through.</param>
public sealed record AuditedFamily(string Id, string File, string Title, string Sha256, int Parts, int Failures);

/// <summary>One failure and what its plan came to.</summary>
/// <param name="Family">The id of the family.</param>
/// <param name="Part">The id of the failed part.</param>
/// <param name="Debris">What it sheds.</param>
/// <param name="Reached">How many parts the debris reaches, the failed one included.</param>
/// <param name="Steps">How many steps the plan has, those that hang on looks included.</param>
/// <param name="Hours">Technicians' hours: what is sure, what is to be expected, and the most.</param>
/// <param name="Treatments">A short hash of what every reached part gets, so that two audits show whether any of it has changed.</param>
public sealed record AuditedFailure(string Family, string Part, string Debris, int Reached, int Steps, LookHours Hours, string Treatments)
{
    /// <summary>The most technicians' hours that the looks can lead to.</summary>
    public double BenchHours => Hours.Most;
}

/// <summary>Something that was seen.</summary>
/// <param name="Severity">An error must be mended; a warning is to be read.</param>
/// <param name="Code">One of <see cref="AuditCodes.All"/>.</param>
/// <param name="Family">The id of the family; <c>null</c> for what is seen across families.</param>
/// <param name="About">What it is about: a part (<c>injector-#</c> where it is so for every number), a failure, or a kind with a debris. With code and family this names the message.</param>
/// <param name="Place">Where it would be mended, or <c>null</c>.</param>
/// <param name="Text">What was seen, as a sentence without a full stop.</param>
/// <param name="Mend">What to do about it; empty where nothing need be done.</param>
public sealed record AuditMessage(Severity Severity, string Code, string? Family, string About, SourceSpan? Place, string Text, string Mend);

/// <summary>A cell of the coverage matrix.</summary>
/// <param name="Kind">The kind of part.</param>
/// <param name="Debris">The debris.</param>
/// <param name="Family">The id of the family.</param>
/// <param name="Covered">Whether a rule of the standard fits wherever this debris reaches a part of this kind.</param>
/// <param name="Parts">How many parts of this kind it reaches.</param>
public sealed record AuditCell(string Kind, string Debris, string Family, bool Covered, int Parts);
