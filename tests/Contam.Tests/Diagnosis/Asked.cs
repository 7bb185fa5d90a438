using System.Globalization;
using Contam.Diagnosis;
using Contam.Families;
using Contam.Support;
using Contam.Support.Notation;

namespace Contam.Tests.Diagnosis;

/// <summary>Suspects of a system in the notation.</summary>
internal static class Asked
{
    public static SuspectAnswer Of(string text, Func<Finding, Finding>? looks = null, Func<Part, Part>? parts = null)
    {
        TestCase asked = CaseReader.Read(text);
        Family family = parts is null ? asked.Family : SystemBuilder.Build(asked.Family.Parts.Select(parts), asked.Family.Joints, asked.Family.States);
        return Suspecting.Of(new SuspectQuestion(family, asked.Asked[0], asked.Standard)
        {
            Findings = [.. asked.Findings.Select(finding => looks is null ? finding : looks(finding))],
            Failed = asked.Failed,
        });
    }

    /// <summary><c>pump 0.4737, gear 0.5263</c>, by falling share.</summary>
    public static string Shares(SuspectAnswer answer) =>
        string.Join(", ", answer.Suspects.Select(suspect => string.Create(CultureInfo.InvariantCulture, $"{suspect.Part} {suspect.Share:0.####}")));

    /// <summary>How the findings bear on one suspect.</summary>
    public static string Sorts(SuspectAnswer answer, string part) =>
        string.Join(", ", answer.Suspects.Single(suspect => suspect.Part.Value == part).Evidence.Select(one => one.Sort));
}
