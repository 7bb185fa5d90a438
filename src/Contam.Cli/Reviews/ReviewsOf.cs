using System.Collections.Immutable;
using Contam.Cli.Starting;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Plans;
using Contam.Reports.Json;
using Contam.Reports.Reviews;
using Contam.Reviews;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Cli.Reviews;

/// <summary>What the signed reviews of a family file come to today.</summary>
internal sealed class ReviewsOf(Shell shell, Loading loading)
{
    /// <summary>
    /// What a plan says of them. <c>null</c>, and nothing is said, for a family that comes with contam and was never signed: it is invented, so there is no
    /// machine to hold it against.
    /// </summary>
    /// <param name="named">The file as it was named.</param>
    /// <param name="family">The family in it.</param>
    /// <param name="standard">The standard whose kinds it names.</param>
    public PlanReview? Of(string named, Family family, ShopStandard standard)
    {
        if (NamedFile.ShippedFamily(named) is not null)
            return null;
        ImmutableArray<SignedReview> all = new ReviewFolder(named).Read(shell.Error);
        if (all.IsEmpty)
            return IsShipped(family) ? null : new PlanReview();
        SignedReview? same = all.LastOrDefault(review => review.Sha256 == family.Sha256);
        SignedReview last = same ?? all[^1];
        return new PlanReview
        {
            By = last.By,
            On = last.At.Length >= 10 ? last.At[..10] : last.At,
            Note = last.Note.Length > 0 ? last.Note : null,
            IsCurrent = same is not null,
            Changes = same is null ? Since(last, family, standard) : [],
        };
    }

    private ImmutableArray<string> Since(SignedReview review, Family family, ShopStandard standard)
    {
        if (KeptFamily.Read(review.Sources, standard.CatalogueOf(), loading.Limits, ShippedModules.All).Value is not { } before)
            return ["what it was cannot be read any more, so all of it"];
        return DifferenceWords.OfDescription(FamilyDifference.Between(before, family), before, family);
    }

    private static bool IsShipped(Family family) =>
        ShippedFiles.Families.Contains(family.Id) && family.Sources.Length > 0 && family.Sources[0].Text == ShippedFiles.Family(family.Id);
}
