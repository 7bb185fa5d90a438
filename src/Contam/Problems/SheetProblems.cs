using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of what can be wrong with a file before its meaning is looked at.</summary>
internal static class SheetProblems
{
    public static Problem FileMissing(string file, SourceSpan? askedAt, string? near = null) =>
        Wording.Error(ProblemCodes.FileMissing, askedAt, $"there is no file {Wording.Quoted(file)}", Wording.DidYouMean(near, "check the name and the folder"));

    public static Problem FileIsFolder(string file, SourceSpan? askedAt) =>
        Wording.Error(ProblemCodes.FileUnreadable, askedAt, $"{Wording.Quoted(file)} is a folder", "name a file in it");

    public static Problem FileIsPipe(string file, SourceSpan? askedAt) =>
        Wording.Error(ProblemCodes.FileUnreadable, askedAt, $"{Wording.Quoted(file)} is a pipe or a device", "save its text as a file and name that");

    public static Problem FileUnreadable(string file, bool isForbidden, SourceSpan? askedAt) => Wording.Error(
        ProblemCodes.FileUnreadable,
        askedAt,
        isForbidden ? $"{Wording.Quoted(file)} may not be read" : $"{Wording.Quoted(file)} cannot be read",
        isForbidden ? "check who may read the file" : "check that it is a file and that no other program holds it");

    public static Problem FileTooLarge(string file, int most, SourceSpan? askedAt) => Wording.Error(
        ProblemCodes.FileTooLarge,
        askedAt,
        $"{Wording.Quoted(file)} is too large: a file and its modules may have {Wording.Number(most)} bytes together",
        "check that it is the right file");

    public static Problem FileEmpty(string file) => Wording.Error(
        ProblemCodes.FileEmpty, new SourceSpan(file, 1, 1), "the file says nothing", "begin with `format: 1`");

    public static Problem NotText(string file) => Wording.Error(
        ProblemCodes.NotText, new SourceSpan(file, 1, 1), "this is not a text file: it holds NUL bytes", "check that it is the right file, saved as UTF-8 text");

    public static Problem OtherForm(string file, string form) => Wording.Error(
        ProblemCodes.NotText, new SourceSpan(file, 1, 1), $"this is {form}, and a text file is due", "name the text file, whose name usually ends in `.yaml`");

    public static Problem Utf16(string file) => Wording.Error(
        ProblemCodes.NotText, new SourceSpan(file, 1, 1), "the file is written in UTF-16", "save it as UTF-8");

    public static Problem NotUtf8(SourceSpan place, byte found) => Wording.Error(
        ProblemCodes.NotText, place, $"the byte 0x{found:X2} is not UTF-8", "save the file as UTF-8");

    public static Problem ControlCharacter(SourceSpan place, char found) => Wording.Error(
        ProblemCodes.ControlCharacter, place, $"a character that cannot be seen stands here: U+{(int)found:X4}", "delete it");

    public static Problem TooDeep(SourceSpan place, int most) => Wording.Error(
        ProblemCodes.TooDeep, place, $"lists and mappings stand more than {Wording.Number(most)} deep in one another", "nothing in these files needs more than six");

    public static Problem TooManyValues(SourceSpan place, int most) => Wording.Error(
        ProblemCodes.FileTooLarge, place, $"the file and its modules hold more than {Wording.Number(most)} values", "check that it is the right file");

    public static Problem TooManyProblems(int left, SourceSpan? from) => Wording.Error(
        ProblemCodes.TooManyProblems, from, $"{Wording.Number(left)} more problems are not shown", "mend those shown and check again");

    public static Problem SeveralDocuments(SourceSpan place) => Wording.Error(
        ProblemCodes.SeveralDocuments, place, "a second document begins here", "a file holds one: put the rest into a file of its own");

    public static Problem DuplicateKey(SourceSpan place, string key, SourceSpan first) => Wording.Error(
        ProblemCodes.DuplicateKey,
        place,
        $"the key {Wording.Quoted(key)} stands twice, first on line {Wording.Number(first.Line)}",
        "keep one of the two",
        first);

    public static Problem KeyNotText(SourceSpan place) => Wording.Error(
        ProblemCodes.KeyNotText, place, "a list or mapping stands where a key is due", "a key is a plain word, for instance `kind:`");

    public static Problem KeyMissing(SourceSpan place) => Wording.Error(
        ProblemCodes.KeyNotText, place, "nothing stands where a key is due", "write the key before the colon");

    public static Problem Anchor(SourceSpan place, string name) => Wording.Error(
        ProblemCodes.Anchor, place, $"the anchor {Wording.Quoted("&" + name)} is not used in these files", "take it out; write a value out wherever it is needed");

    public static Problem Alias(SourceSpan place) => Wording.Error(
        ProblemCodes.Alias, place, "an alias (`*name`) is not used in these files", "write the value out; where it is a text that begins with `*`, put it in quotes");

    public static Problem Tag(SourceSpan place, string tag) => Wording.Error(
        ProblemCodes.Tag, place, $"the tag {Wording.Quoted(tag)} is not used in these files", "take it out; where it is a text that begins with `!`, put it in quotes");

    public static Problem MergeKey(SourceSpan place) => Wording.Error(
        ProblemCodes.MergeKey, place, "the merge key `<<` is not used in these files", "write the keys out, or move what is shared into a module");

    public static Problem Tab(SourceSpan place) => Wording.Error(
        ProblemCodes.Tab, place, "a tab stands where the line is indented", "indent with spaces");

    public static Problem BracketNotClosed(SourceSpan place, char bracket, SourceSpan opened) => Wording.Error(
        ProblemCodes.BracketNotClosed,
        place,
        $"the `{bracket}` of line {Wording.Number(opened.Line)} is not closed, or a comma is missing before this",
        $"close it with `{(bracket == '[' ? ']' : '}')}`, and part its entries with commas",
        opened);

    /// <summary>A fault of the YAML itself. What the library says is put in plain words where it is one of the usual slips.</summary>
    /// <param name="place">Where it stands.</param>
    /// <param name="said">What the library says.</param>
    /// <param name="found">The character there, if any.</param>
    /// <param name="line">The whole line, without the space before and after it.</param>
    /// <param name="isDeeper">Whether the line begins with a key and is indented further than the line before it, which has a value.</param>
    public static Problem Syntax(SourceSpan place, string said, char? found, string line, bool isDeeper = false)
    {
        (string text, string mend) = said switch
        {
            _ when said.Contains("found invalid mapping", StringComparison.Ordinal) && BracketAfterWord(line) is string word =>
                ($"a `:` is missing after {Wording.Quoted(word)}", $"write {Wording.Quoted(word + ": {")}"),
            _ when line.StartsWith("- ", StringComparison.Ordinal) && (said.Contains("'-' indicator", StringComparison.Ordinal) || said.Contains("expected key", StringComparison.Ordinal)) => NameBehindDash(line) is { } name
                ? ("the dash of a list stands among entries that have names", $"take the dash off, so that the line begins with {Wording.Quoted(name + ":")}")
                : ("the dash of a list stands where no list goes on", "check what stands before it: a list is either in brackets, or has a dash before each item"),
            _ when line.StartsWith('-') && line.Length > 1 && line[1] is not (' ' or '-') && found == '-' =>
                ("no space stands after the `-`", "put one there: `- `"),
            _ when said.Contains("found invalid mapping", StringComparison.Ordinal) && isDeeper =>
                ("this line is indented further than the one before it, which takes no more lines", "indent it like its neighbours"),
            _ when said.Contains("found invalid mapping", StringComparison.Ordinal) =>
                ("a `:` stands here that begins no key", "put a text that holds `: ` in quotes; check that the line is indented like its neighbours"),
            _ when said.Contains("scanning a block scalar", StringComparison.Ordinal) =>
                ("a text begins with `>` or `|`", "put it in quotes, for instance `reject: \"> 0.10 mm\"`"),
            _ when said.Contains("cannot start any token", StringComparison.Ordinal) =>
                ($"a text cannot begin with {Wording.Quoted(found?.ToString() ?? "")}", "put it in quotes"),
            _ when said.Contains("unexpected end of stream", StringComparison.Ordinal) || said.Contains("double-quoted scalar, found wrong", StringComparison.Ordinal) =>
                ("the quote that opens here is not closed", "close it with the same quote"),
            _ when said.Contains("expected node content", StringComparison.Ordinal) =>
                ("a value is due here", "write a value, or put a text that begins with a bracket or comma in quotes"),
            _ when found is '}' or ']' =>
                ($"the `{found}` closes nothing", "take it out, or open it before"),
            _ when said.Contains("unknown escape", StringComparison.Ordinal) =>
                ("the text in double quotes holds a backslash that means nothing", "write two backslashes, or use single quotes"),
            _ when said.Contains("'-' indicator", StringComparison.Ordinal) || said.Contains("expected key", StringComparison.Ordinal) =>
                ("this line does not fit what stands before it", "check that it is indented like its neighbours"),
            _ when said.Contains("<document end>", StringComparison.Ordinal) =>
                ("nothing is due any more here", "check the brackets and the indentation before it"),
            _ => ("this is not YAML" + Detail(said), "check quotes, brackets and indentation"),
        };
        return Wording.Error(ProblemCodes.Syntax, place, text, mend);
    }

    // `- hose: {kind: hose}`: the word that the dash stands before.
    private static string? NameBehindDash(string line)
    {
        int colon = line.IndexOf(':', StringComparison.Ordinal);
        string word = colon < 0 ? "" : line[1..colon].Trim();
        return word.Length > 0 && word.All(one => char.IsAsciiLetterOrDigit(one) || one is '-' or '#' or '_') ? word : null;
    }

    // `hose {kind: hose}`: the word that a brace follows with nothing but space between.
    private static string? BracketAfterWord(string line)
    {
        int brace = line.IndexOf(" {", StringComparison.Ordinal);
        string word = brace < 0 ? "" : line[..brace];
        return word.Length > 0 && word.All(one => char.IsAsciiLetterOrDigit(one) || one is '-' or '#' or '_') ? word : null;
    }

    private static string Detail(string said) =>
        said.Length == 0 ? "" : ": " + char.ToLowerInvariant(said[0]) + said[1..].TrimEnd('.');
}
