using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Measurement.Gauging;

/// <summary>What a hold comes to.</summary>
/// <param name="GaugeLoss">Start less end, as the gauge shows it; below 0 where it rose.</param>
/// <param name="Loss">The same, less what the temperature and the atmosphere did: what a limit is held against.</param>
/// <param name="IsCorrected">Whether temperatures were given, so that <paramref name="Loss"/> is corrected for them.</param>
/// <param name="Leak">The mean leak, at the start's temperature; out of a pressure, into a vacuum; below 0 where the gauge rose instead; <c>null</c> where the volume is not known.</param>
public sealed record HoldFigures(Pressure GaugeLoss, Pressure Loss, bool IsCorrected, LeakRate? Leak);

/// <summary>A hold against a limit.</summary>
/// <param name="Figures">What it came to.</param>
/// <param name="Judgement">What that is worth.</param>
/// <param name="Notes">What must be said beside it, each once, in the order of <see cref="HoldNote"/>.</param>
public sealed record HoldJudgement(HoldFigures Figures, Judgement Judgement, ImmutableArray<HoldNote> Notes);
