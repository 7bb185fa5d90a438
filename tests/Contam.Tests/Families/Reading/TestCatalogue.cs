using Contam.Families;
using Contam.Families.Reading;
using Contam.Problems;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Families.Reading;

/// <summary>A few kinds, so that these tests do not depend on the built-in ones.</summary>
internal static class TestCatalogue
{
    private const string Text = """
        format: 1
        standard: test-kinds
        kinds:
          tank: {removable: false, fluid-may-end: true}
          hose: {removable: true, minutes: {remove: 5, refit: 6}}
          separator: {removable: true, filter: true, seals: [kind-seal]}
          filter: {removable: true, filter: true}
          pump: {removable: true}
          injection-pump: {removable: true}
          rail: {removable: true}
          injector: {removable: true}
          cylinder: {removable: false, joins-fluids: true}
          sump: {removable: true}
          bearing: {removable: true}
        debris:
          sealant: {has-size: true, hard: false}
        """;

    public static ShopStandard Standard { get; } = StandardReader.ReadText(Text, "test-kinds.yaml", new Catalogue([], [])).Value!;

    public static Catalogue Value { get; } = Standard.CatalogueOf();

    /// <summary>Problems as <c>place: text | mend [code]</c>, one a line; what has no place begins with a dash; other places follow in brackets.</summary>
    public static string Told(IEnumerable<Problem> problems) => string.Join('\n', problems.Select(problem =>
        (problem.Severity == Severity.Warning ? "warning " : "")
        + $"{problem.Place?.ToString() ?? "-"}: {problem.Text} | {problem.Mend} [{problem.Code}]"
        + (problem.Related.IsEmpty ? "" : $" (see {string.Join(", ", problem.Related)})")));

    public static Outcome<Family> Read(string text) => FamilyReader.ReadText(text, "f.yaml", Value);
}
