using System.Collections.Immutable;
using System.CommandLine;
using Contam.Authoring;
using Contam.Cli.Starting;
using Contam.Families.Reading.Shapes;
using Contam.Problems;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Commands;

/// <summary><c>contam start</c>: a family of one's own to begin with.</summary>
internal sealed class StartCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string> folder = new("FOLDER") { Description = "a folder that is not there yet; its name is the new family's id" };
    private readonly Option<string?> like = new("--like") { Description = "begin from this shipped family", HelpName = "FAMILY" };
    private readonly Option<string[]> with = new("--with") { Description = "begin from these shipped modules", HelpName = "MODULE", Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = false };

    private readonly Option<string?> from = new("--from") { Description = "begin from a table of joints with the columns circuit, from, to (CSV); parts.csv beside it is read too", HelpName = "FILE" };
    private readonly Option<string?> partsTable = new("--parts") { Description = "with --from, the table of parts, where it is not parts.csv beside it", HelpName = "FILE" };

    public Command Build()
    {
        var command = new Command(
            "start",
            $"""
            Write a new family to begin with, from a shipped one or from modules, with comments that teach the format; or from
            tables, as a spreadsheet saves them.

            Families: {string.Join(", ", ShippedFiles.Families)}
            Modules: {string.Join(", ", ShippedFiles.Modules)}

            Columns of joints: {string.Join(", ", TableColumns.Joints.Select(column => column.Title))}
            Columns of parts: {string.Join(", ", TableColumns.Parts.Select(column => column.Title))}

            Examples:
              contam start my-gearcase --like outboard-gearcase
              contam start my-launch --with low-pressure-fuel,common-rail-fuel
              contam start my-winch --from joints.csv
            """);
        like.CompletionSources.Add(_ => ShippedFiles.Families);
        with.CompletionSources.Add(_ => ShippedFiles.Modules);
        command.Arguments.Add(folder);
        command.Options.Add(like);
        command.Options.Add(with);
        command.Options.Add(from);
        command.Options.Add(partsTable);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        string place = call.GetValue(folder)!;
        string id = IdOf(place);
        string[] modules = [.. (call.GetValue(with) ?? []).SelectMany(text => text.Split(',')).Select(name => Known(name, ShippedFiles.Modules, "module")).Distinct()];
        string? shipped = call.GetValue(like) is { } named ? Known(named, ShippedFiles.Families, "family") : null;
        string? table = call.GetValue(from);
        if ((shipped is null ? 0 : 1) + (modules.Length == 0 ? 0 : 1) + (table is null ? 0 : 1) != 1)
            throw new WrongUseException($"say what to begin from: --like with one of {string.Join(", ", ShippedFiles.Families)}; --with modules; or --from a table of joints. One of the three.");
        if (table is null && call.GetValue(partsTable) is not null)
            throw new WrongUseException("--parts goes with a table of joints. Name that with --from FILE.");

        string? made = table is not null ? FromTables.Text(id, table, call.GetValue(partsTable), loading.Limits, shell) : shipped is null ? FamilyDraft.With(modules, id) : FamilyDraft.Like(shipped, id);
        if (made is not { } text)
            return ExitCode.No;
        NewFolder.Write(place,
        [
            ($"{id}.yaml", text),
            .. ShippedFiles.WithWhatTheyUse([.. modules, .. ShippedFiles.UsedBy(text)]).Select(module => ($"modules/{module}.yaml", ShippedFiles.Module(module))),
            .. ShippedFiles.Schemas.Select(schema => ($"schema/{schema}.schema.json", ShippedFiles.Schema(schema))),
        ]);
        Tell(Path.Combine(place, id + ".yaml"), fromTables: table is not null);
        return ExitCode.Yes;
    }

    private void Tell(string file, bool fromTables)
    {
        string shown = TextPage.Harmless(file);
        shell.Out.Write($"Written: {shown}\n\n");
        ImmutableArray<Problem> problems = loading.Check(file, BuiltInStandards.HouseOverKinds);
        if (problems.Length > 0)
        {
            shell.Out.Write(fromTables ? "What is likely forgotten:\n\n" : "These modules need more than they bring. What is left for you to add:\n\n");
            ProblemText.Write(problems, shell.Out, TextLook.Plain);
            shell.Out.Write("\n");
        }

        shell.Out.Write($"""
            Next:
              contam check {shown}
                is it sound, and what is likely forgotten?
              contam parts {shown} --tree
                does every hose lead where it does on the engine?
              contam plan {shown} --failed PART --debris metal
                what would be done if this part failed?

            """);
    }

    /// <summary>The last name of the path, which must do as an id.</summary>
    internal static string IdOf(string place)
    {
        string name = Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(place)));
        var shape = new IdShape("the id of a family", "harbour-diesel-i4");
        if (shape.IsId(name))
            return name;
        string meant = shape.Mended(name) is { } mended ? $" Call the folder {mended}." : "";
        throw new WrongUseException($"{Wording.Quoted(name)} will not do as a family's id, which is lower-case letters, digits and single hyphens, begins with a letter and has at most {IdShape.Longest} characters.{meant}");
    }

    /// <summary>A shipped name, also where its file is named.</summary>
    private static string Known(string named, string[] shipped, string what)
    {
        string name = named.EndsWith(".yaml", StringComparison.Ordinal) ? Path.GetFileNameWithoutExtension(named) : named.Trim();
        if (shipped.Contains(name))
            return name;
        throw new WrongUseException($"no shipped {what} is called {Wording.Quoted(name)}.{Typed.Near(name, shipped)} There are {string.Join(", ", shipped)}.");
    }
}
