using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Audits;

/// <summary>
/// Goes through every part that can shed × every debris that it sheds × every family: a plan for each, judged by the verifier and the step simulator.
/// <para>Cost: a plan and its proof for every failure; failures are gone through side by side, and the answer does not depend on how many at once.</para>
/// </summary>
public static class Auditing
{
    /// <summary>Answers the question.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><see cref="AuditQuestion.Jobs"/> is below 1.</exception>
    public static Audit Of(AuditQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentOutOfRangeException.ThrowIfLessThan(question.Jobs, 1);
        (int Family, Part Part, Debris Debris)[] asked =
        [
            .. question.Families.SelectMany((family, index) => family.Parts.SelectMany(part => part.Sheds.Select(shed => (index, part, shed.Debris)))),
        ];
        var runs = new FailureRun[asked.Length];
        int done = 0;
        // Each failure is written to its own place, so the order of the answer is that of the question, whoever finishes first.
        Parallel.For(0, asked.Length, new ParallelOptions { MaxDegreeOfParallelism = question.Jobs }, place =>
        {
            (int family, Part part, Debris debris) = asked[place];
            runs[place] = FailureRun.Of(question.Families[family], question.Standard, part, debris);
            question.Progress?.Invoke(Interlocked.Increment(ref done), asked.Length);
        });

        ImmutableArray<FailureRun>[] ofFamily = [.. question.Families.Select((_, index) => runs.Where((_, place) => asked[place].Family == index).ToImmutableArray())];
        return new Audit
        {
            Standard = question.Standard.Id,
            StandardSha256 = question.Standard.Sha256,
            Families = [.. question.Families.Select((family, index) => new AuditedFamily(family.Id, family.File, family.Title, family.Sha256, family.Parts.Length, ofFamily[index].Length))],
            Failures = [.. runs.Select(run => run.Answer)],
            Costliest =
            [
                .. runs.DistinctBy(run => (run.Answer.Family, run.Part.RepeatOf ?? run.Part.Id.Value, run.Debris.Name, run.Answer.BenchHours))
                    .Select(run => run.Answer).OrderByDescending(failure => failure.BenchHours).Take(10),
            ],
            Messages =
            [
                .. question.Families.SelectMany((family, index) => new FamilyAudit(family, ofFamily[index]).Messages()),
                .. AcrossFamilies.Messages(question.Families, ofFamily),
            ],
            Matrix = AcrossFamilies.Matrix(question.Families, ofFamily),
        };
    }
}
