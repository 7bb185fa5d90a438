using System.Text;
using Contam.Authoring;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Starting;

/// <summary>
/// A family that is being described: its file, and beside it the answers, so that it can be taken up again. Each answer is on disk before the next question. The file is written
/// beside itself and put in its place at once, so that whatever happens there is either the old file or the new one.
/// </summary>
internal sealed class DescribedFolder : IInterviewer
{
    /// <summary>Where the answers are, in the folder.</summary>
    public const string AnswersName = "answers.txt";

    private readonly Shell shell;
    private readonly TextPage page;
    private readonly TextLook look;
    private readonly string answersFile;
    private readonly List<(string Key, string Answer)> answers = [];
    private readonly Stack<(string Before, string After)> sitting = new();
    private string known;

    private DescribedFolder(Shell shell, TextLook look, string file, string answersFile)
    {
        this.shell = shell;
        this.look = look;
        page = new TextPage(shell.Out, look);
        File = file;
        this.answersFile = answersFile;
        known = Read(file);
    }

    /// <summary>The family file.</summary>
    public string File { get; }

    /// <summary>How many questions were put in this sitting.</summary>
    public int Asked { get; private set; }

    /// <inheritdoc/>
    public string Text => Current();

    /// <summary>The folder of this name: begun, or taken up again, be it written by hand.</summary>
    /// <exception cref="WrongUseException">It cannot be read or made, or holds no family, several, or one that cannot be read.</exception>
    public static DescribedFolder Open(Shell shell, TextLook look, string folder, Func<string, string> idOf)
    {
        if (!Directory.Exists(folder))
        {
            string id = idOf(folder);
            NewFolder.Write(folder, [
                ($"{id}.yaml", $"# yaml-language-server: $schema=schema/family.schema.json\n# Described at the machine with contam describe. Let somebody else hold every joint against the machine before it is trusted.\nformat: 1\nfamily: {id}\ntitle: {char.ToUpperInvariant(id[0])}{id[1..].Replace('-', ' ')}\n"),
                (AnswersName, ""),
                .. ShippedFiles.Schemas.Select(schema => ($"schema/{schema}.schema.json", ShippedFiles.Schema(schema))),
            ]);
        }

        string[] families = [.. Directory.EnumerateFiles(folder, "*.yaml").Where(FamilyFiles.IsFamily).Order(StringComparer.Ordinal)];
        if (families.Length != 1)
            throw new WrongUseException($"{TextPage.Harmless(folder)} holds {(families.Length == 0 ? "no family file" : "several family files")}. Name a folder with one, or a folder that is not there yet.");
        var described = new DescribedFolder(shell, look, families[0], Path.Combine(folder, AnswersName));
        Catalogue catalogue = BuiltInStandards.HouseOverKinds.CatalogueOf();
        Outcome<Family> read = FamilyReader.ReadText(described.known, families[0], catalogue, shipped: ShippedModules.All);
        if (read.Value is not { } family)
        {
            ProblemText.Write(read.Problems, shell.Error, TextLook.Plain);
            throw new WrongUseException($"{TextPage.Harmless(families[0])} cannot be read as it stands. Correct it first; contam check says the same.");
        }

        described.TakeUp(family);
        return described;
    }

    /// <inheritdoc/>
    public string? Ask(string question, string hint)
    {
        Asked++;
        page.Gap();
        page.Paragraph(question);
        page.Paragraph(hint, indent: 2);
        shell.Out.Write("> ");
        shell.Out.Flush();
        if (shell.In.ReadLine() is not { } line)
        {
            shell.Out.Write("\n");
            return null;
        }

        string clean = string.Concat(line.Replace('\t', ' ').EnumerateRunes().Where(rune => !Rune.IsControl(rune)).Select(rune => rune.ToString())).Trim();
        if (clean.Length != line.Trim().Length)
            Tell($"Characters that cannot be seen were left out. Taken as: {clean}");
        return clean;
    }

    /// <inheritdoc/>
    public void Tell(string text) => page.Paragraph(text, indent: 2);

    /// <inheritdoc/>
    public string? Kept(string key) => answers.FindLast(one => one.Key == key) is { Key: not null } kept ? kept.Answer : null;

    /// <inheritdoc/>
    public void Keep(string key, string answer, Func<string, string?>? edit)
    {
        string before = Current();
        string after = edit?.Invoke(before) ?? before;
        // The file first: an answer that is in the file and not among the answers is only asked again.
        if (after != before)
            Write(File, after);
        known = after;
        Write(answersFile, Lines([.. answers, (key, answer)]));
        answers.Add((key, answer));
        sitting.Push((before, after));
    }

    /// <inheritdoc/>
    public bool Undo()
    {
        if (sitting.Count == 0)
            return false;
        (string before, string after) = sitting.Peek();
        if (Current() != after)
        {
            Tell("The file was changed by somebody else since. Nothing was taken back.");
            return false;
        }

        sitting.Pop();
        (string key, _) = answers[^1];
        Write(File, before);
        known = before;
        Write(answersFile, Lines(answers[..^1]));
        answers.RemoveAt(answers.Count - 1);
        Tell($"Taken back: {key}.");
        return true;
    }

    /// <inheritdoc/>
    public void ShowTree()
    {
        if (Read(Current(), File) is { Circuits.IsEmpty: false } family)
            CircuitTree.Write(family, shell.Out, look);
        else
            Tell("There is no circuit yet.");
    }

    /// <inheritdoc/>
    Family? IInterviewer.Read(string text) => Read(text, File);

    private static Family? Read(string text, string file) => FamilyReader.ReadText(text, file, BuiltInStandards.HouseOverKinds.CatalogueOf(), shipped: ShippedModules.All).Value;

    private void TakeUp(Family family)
    {
        if (System.IO.File.Exists(answersFile))
        {
            foreach (string[] pair in Read(answersFile).Split('\n').Select(line => line.Split('\t')).Where(pair => pair.Length == 2))
                answers.Add((pair[0], pair[1]));
        }
        else
        {
            answers.Add((Interview.Before, string.Join(' ', family.Parts.Select(part => part.Id))));
        }
    }

    /// <summary>What stands in the file now; told where somebody else has changed it.</summary>
    private string Current()
    {
        string now = Read(File);
        if (now != known)
        {
            Tell("The file was changed by somebody else meanwhile. What they wrote is kept.");
            known = now;
        }

        return now;
    }

    private static string Lines(IEnumerable<(string Key, string Answer)> all) => string.Concat(all.Select(one => $"{one.Key}\t{one.Answer}\n"));

    private static string Read(string file) => InputFile.ReadText(file);

    private static void Write(string file, string text)
    {
        string beside = $"{file}.{Environment.ProcessId}.new";
        try
        {
            using (var stream = new FileStream(beside, FileMode.Create, FileAccess.Write))
            {
                stream.Write(Encoding.UTF8.GetBytes(text));
                stream.Flush(flushToDisk: true);
            }

            if (!OperatingSystem.IsWindows() && System.IO.File.Exists(file))
                System.IO.File.SetUnixFileMode(beside, System.IO.File.GetUnixFileMode(file));
            System.IO.File.Move(beside, file, overwrite: true);
        }
        // A file that would grow beyond what the system allows is told as an argument out of range.
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException)
        {
            Discard(beside);
            throw new WrongUseException($"{TextPage.Harmless(file)} cannot be written: {TextPage.Harmless(cannot.Message)} The last answer is not kept; all those before it are. Make room, and call contam describe again.");
        }
    }

    private static void Discard(string file)
    {
        try
        {
            System.IO.File.Delete(file);
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException)
        {
            // What could not be written can hardly be taken away; the first failure is what the person needs to read.
        }
    }
}
