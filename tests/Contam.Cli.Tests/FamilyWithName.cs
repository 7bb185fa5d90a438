namespace Contam.Cli.Tests;

/// <summary>A small family in which whatever a person may name has this name, be it an attack.</summary>
internal static class FamilyWithName
{
    /// <summary>What the command answers about it; <c>{0}</c> stands for the family's file.</summary>
    public static CommandSession Ask(string name, string command) => CommandSession.About(Text(name), file => command.Replace("{0}", file, StringComparison.Ordinal));

    private static string Text(string name) => $$$"""
        format: 1
        family: engine
        title: {{{Quoted(name)}}}
        about: {{{Quoted(name)}}}
        parts:
          tank: {kind: tank, inspect: {minutes: 2, shows: good, how: {{{Quoted(name)}}}}}
          pump: {name: {{{Quoted(name)}}}, kind: injection-pump, sheds: {metal: common}, inspect: {minutes: 3, shows: fair}}
          rail: {name: {{{Quoted(name + " 2")}}}, kind: rail, access: [pump]}
          injector: {name: {{{Quoted(name + " 3")}}}, kind: injector, access: [rail]}
        circuits:
          fuel: {fluid: diesel, runs: [[tank, pump, rail, injector, tank]]}
        fluids: {diesel: {}}

        """;

    private static string Quoted(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";
}
