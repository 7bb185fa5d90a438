using System.Globalization;
using Contam.Proof;

namespace Contam.Reports.Text;

/// <summary>Whether a plan is complete and in a safe order, for a person.</summary>
public static class VerifyText
{
    /// <summary>Writes each claim, and what its failing would mean at the bench.</summary>
    public static void Write(Verification verification, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(verification);
        var page = new TextPage(writer, look);
        page.Subheading(verification.Holds ? "The plan holds: complete, and in a safe order." : "The plan does not hold. Do not work by it.");
        foreach (Claim claim in verification.Claims)
            page.Row(2, (claim.Holds ? "holds" : "FAILS", 6), (Words(claim.Kind), 44), (claim.Where ?? "", 0));
        if (verification.Histories > 1)
            page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"Every outcome of every look has been played: {verification.Histories} histories."));
    }

    private static string Words(ClaimKind claim) => claim switch
    {
        ClaimKind.Closed => "nothing that the debris can reach is left out",
        ClaimKind.Grounded => "every part listed has a way from the failure",
        ClaimKind.Treated => "every part has the steps it needs, no others",
        ClaimKind.Ordered => "played through, the steps end clean",
        _ => "this is the family that was planned for",
    };
}
