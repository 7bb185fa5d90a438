using Contam.Families;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Wording;

namespace Contam.Measurement.Gauging;

/// <summary>
/// Judges a cleanliness code. A higher number is never milder, so the lowest and the highest code that the reading could be show every
/// verdict that it holds.
/// </summary>
internal static class CodeJudge
{
    internal static Sum<Judgement> Judge(Limit limit, CleanlinessCode reading)
    {
        Fault? fault = ThresholdFault(limit, limit.Good, "good", Comparison.AtMost, Comparison.Below)
            ?? (limit.Reject is null ? null : ThresholdFault(limit, limit.Reject, "reject", Comparison.AtLeast, Comparison.Above));
        if (fault is not null)
            return fault;
        Verdict mildest = Of(limit, reading, number => number?.Number ?? 0);
        Verdict worst = Of(limit, reading, number => number?.UpTo ?? CleanlinessScale.AboveTable);
        Verdict answer = mildest == worst ? worst : Verdict.Undecided;
        return new Judgement(answer, mildest, worst, VerdictText.Because(limit, reading.ToString(), answer, mildest, worst));
    }

    private static Verdict Of(Limit limit, CleanlinessCode reading, Func<CleanlinessNumber?, int> read)
    {
        (int at4, int at6, int at14) = (read(reading.At4), read(reading.At6), read(reading.At14));
        if (limit.Reject is { Code: { } reject } && (Over(limit.Reject, at4, reject.At4) || Over(limit.Reject, at6, reject.At6) || Over(limit.Reject, at14, reject.At14)))
            return Verdict.Reject;
        (int At4, int At6, int At14) good = limit.Good.Code!.Value;
        if (Under(limit.Good, at4, good.At4) && Under(limit.Good, at6, good.At6) && Under(limit.Good, at14, good.At14))
            return Verdict.Good;
        return limit.Reject is null ? Verdict.Reject : Verdict.Marginal;
    }

    private static bool Under(Threshold good, int number, int wanted) =>
        good.Comparison == Comparison.AtMost ? number <= wanted : number < wanted;

    private static bool Over(Threshold reject, int number, int wanted) =>
        reject.Comparison == Comparison.AtLeast ? number >= wanted : number > wanted;

    private static Fault? ThresholdFault(Limit limit, Threshold threshold, string side, Comparison closed, Comparison open)
    {
        if (threshold.Code is null)
            return new Fault($"{limit.Id} has no code to hold a reading against ({threshold.Text})");
        return threshold.Comparison == closed || threshold.Comparison == open ? null
            : new Fault($"{limit.Id} has {side} {threshold.Text}, but a lower code is cleaner");
    }
}
