using System.Collections.Immutable;
using Contam.Proof;

namespace Contam.Reports.Json;

/// <summary>Whether a plan is complete and in a safe order, as JSON: the contract <c>contam-verify/1</c>.</summary>
public static class VerifyJson
{
    /// <summary>The answer as JSON, closed by a newline.</summary>
    public static string Write(Verification verification)
    {
        ArgumentNullException.ThrowIfNull(verification);
        return ReportJson.Write(
            new VerifyAnswer("contam-verify/1", verification.Holds, verification.Histories, [.. verification.Claims.Select(claim => new VerifyClaim(claim.Kind, claim.Holds, claim.Where))]),
            ReportJson.Context.VerifyAnswer);
    }
}

internal sealed record VerifyAnswer(string Format, bool Holds, int Histories, ImmutableArray<VerifyClaim> Claims);

internal sealed record VerifyClaim(ClaimKind Claim, bool Holds, string? Where);
