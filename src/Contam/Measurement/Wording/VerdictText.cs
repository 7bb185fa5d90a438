using Contam.Families;

namespace Contam.Measurement.Wording;

/// <summary>How a verdict's reason is worded.</summary>
internal static class VerdictText
{
    /// <summary>The reason as one clause, with the limit as it is written in the file.</summary>
    /// <param name="limit">The limit.</param>
    /// <param name="reading">The reading as shown, with unit and uncertainty.</param>
    /// <param name="answer">The verdict.</param>
    /// <param name="mildest">The mildest it could be.</param>
    /// <param name="worst">The worst it could be.</param>
    internal static string Because(Limit limit, string reading, Verdict answer, Verdict mildest, Verdict worst) => answer switch
    {
        Verdict.Good => $"{reading} is good: {limit.Good.Text}",
        Verdict.Marginal => $"{reading} is neither good ({limit.Good.Text}) nor rejected ({limit.Reject!.Text})",
        Verdict.Reject when limit.Reject is null => $"{reading} is not good ({limit.Good.Text}), and nothing between good and reject is allowed",
        Verdict.Reject => $"{reading} is rejected: {limit.Reject.Text}",
        _ => $"{reading} could be {Word(mildest)} or {Word(worst)} ({Both(limit)})",
    };

    private static string Both(Limit limit) =>
        limit.Reject is null ? $"good {limit.Good.Text}" : $"good {limit.Good.Text}, reject {limit.Reject.Text}";

    private static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Good => "good",
        Verdict.Marginal => "marginal",
        _ => "rejected",
    };
}
