using System.Collections.Immutable;
using Contam.Audits;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Audits;

/// <summary>Small families with one fault planted in each. All of it is invented.</summary>
internal static class Audited
{
    /// <summary>An oil circuit in which nothing is amiss, but for what is put in.</summary>
    /// <param name="parts">Further parts.</param>
    /// <param name="runs">Further runs.</param>
    /// <param name="id">The id of the family.</param>
    /// <param name="line">Another line of the part that debris reaches first.</param>
    public static string Winch(string parts = "", string runs = "", string id = "winch", string line = "line: {kind: hose, inspect: {minutes: 5, shows: good}}") =>
        $$$"""
        format: 1
        family: {{{id}}}
        parts:
          sump: {kind: sump}
          pump: {kind: pump, sheds: {metal: common}}
          {{{line}}}
          motor: {kind: hydraulic-motor}
          far-hose: {kind: hose}
          far-pipe: {kind: pipe}
          cooler: {kind: cooler}
          {{{parts}}}
        circuits:
          oil:
            runs:
              - [sump, pump, line, motor, sump]
              - [far-hose, far-pipe, cooler, far-hose]
              {{{runs}}}
        """;

    public static Audit Of(params string[] families) => Of("", families);

    /// <param name="standard">The shop's own standard, laid over the house's; empty for none.</param>
    /// <param name="families">The families.</param>
    public static Audit Of(string standard, string[] families)
    {
        ShopStandard rules = standard.Length == 0
            ? BuiltInStandards.HouseOverKinds
            : Sound(StandardReader.ReadText(standard, "shop.yaml")).Over(BuiltInStandards.HouseOverKinds);
        return Auditing.Of(new AuditQuestion([.. families.Select(text => Family(text, rules))], rules));
    }

    public static Family Family(string text, ShopStandard? rules = null) =>
        Sound(FamilyReader.ReadText(text, "engine.yaml", (rules ?? BuiltInStandards.HouseOverKinds).CatalogueOf()));

    /// <summary>What is said under this code, a line each.</summary>
    public static string[] Told(this Audit audit, string code) => [.. audit.Messages.Where(message => message.Code == code).Select(message => message.Text)];

    private static T Sound<T>(Outcome<T> outcome)
        where T : class => outcome.Value ?? throw new InvalidOperationException(string.Join('\n', outcome.Problems.Select(problem => $"{problem.Place}: {problem.Text}")));
}
