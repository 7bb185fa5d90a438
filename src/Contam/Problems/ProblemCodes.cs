using System.Collections.Immutable;

namespace Contam.Problems;

/// <summary>
/// Every code that a problem can bear, with its meaning, an example and the mend. Codes stay the same between versions; how a problem is
/// worded may change.
/// </summary>
public static class ProblemCodes
{
    /// <summary>There is no such file.</summary>
    public const string FileMissing = "file-missing";

    /// <summary>The file is there but cannot be read: it is a folder, or may not be read.</summary>
    public const string FileUnreadable = "file-unreadable";

    /// <summary>The file and its modules are larger than what is taken in, so that no file can fill memory.</summary>
    public const string FileTooLarge = "file-too-large";

    /// <summary>The file holds nothing, or comments alone.</summary>
    public const string FileEmpty = "file-empty";

    /// <summary>A table of parts or joints cannot be made sense of.</summary>
    public const string BadTable = "bad-table";

    /// <summary>The file is not UTF-8 text.</summary>
    public const string NotText = "not-text";

    /// <summary>A character that cannot be seen stands in the file or comes in by an escape; editors would show other lines or ids than are read.</summary>
    public const string ControlCharacter = "control-character";

    /// <summary>Lists and mappings stand too deep in one another.</summary>
    public const string TooDeep = "too-deep";

    /// <summary>A second YAML document begins in the file.</summary>
    public const string SeveralDocuments = "several-documents";

    /// <summary>A key stands twice in one mapping. Which one was meant cannot be known.</summary>
    public const string DuplicateKey = "duplicate-key";

    /// <summary>A list or mapping stands where a key is due.</summary>
    public const string KeyNotText = "key-not-text";

    /// <summary>YAML anchors are not used in these files: what they repeat cannot be pointed at.</summary>
    public const string Anchor = "anchor";

    /// <summary>YAML aliases are not used in these files.</summary>
    public const string Alias = "alias";

    /// <summary>YAML tags are not used in these files.</summary>
    public const string Tag = "tag";

    /// <summary>The YAML merge key is not used in these files.</summary>
    public const string MergeKey = "merge-key";

    /// <summary>A tab stands where a line is indented.</summary>
    public const string Tab = "tab";

    /// <summary>A bracket or brace is not closed, or a comma is missing between its entries.</summary>
    public const string BracketNotClosed = "bracket-not-closed";

    /// <summary>The text is not YAML here.</summary>
    public const string Syntax = "syntax";

    /// <summary>There are more problems than are shown.</summary>
    public const string TooManyProblems = "too-many-problems";

    /// <summary>A key has no value.</summary>
    public const string Nothing = "nothing";

    /// <summary>A list, mapping or text stands where something else is due.</summary>
    public const string WrongShape = "wrong-shape";

    /// <summary>A key is not known here; it may be mistyped or wrongly indented.</summary>
    public const string UnknownKey = "unknown-key";

    /// <summary>A text between braces is cut off at its comma: there, commas part entries.</summary>
    public const string CommaInText = "comma-in-text";

    /// <summary>A key that is needed is missing.</summary>
    public const string MissingKey = "missing-key";

    /// <summary>An id is not written in lower-case letters, digits and single hyphens.</summary>
    public const string BadId = "bad-id";

    /// <summary>A word is not one of those that fit here.</summary>
    public const string BadChoice = "bad-choice";

    /// <summary>Something else than true or false stands where one of the two is due.</summary>
    public const string BadFlag = "bad-flag";

    /// <summary>A number without a unit is due.</summary>
    public const string BadNumber = "bad-number";

    /// <summary>A quantity is not written as a number and a unit.</summary>
    public const string BadQuantity = "bad-quantity";

    /// <summary>A comma stands in a number. It could part thousands or decimals, a difference of a thousand.</summary>
    public const string DecimalComma = "decimal-comma";

    /// <summary>A number has no unit where one is due.</summary>
    public const string MissingUnit = "missing-unit";

    /// <summary>No unit is written like this.</summary>
    public const string UnknownUnit = "unknown-unit";

    /// <summary>The unit measures something else.</summary>
    public const string WrongUnit = "wrong-unit";

    /// <summary>A number is negative, 0 where that makes no sense, or too large or small to hold.</summary>
    public const string NumberOutOfRange = "number-out-of-range";

    /// <summary>A list is empty that must not be.</summary>
    public const string EmptyList = "empty-list";

    /// <summary>The same stands twice in a list where each stands once.</summary>
    public const string TwiceInList = "twice-in-list";

    /// <summary>The file is written in a format that this version does not read.</summary>
    public const string WrongFormat = "wrong-format";

    /// <summary>No kind of part bears this name.</summary>
    public const string UnknownKind = "unknown-kind";

    /// <summary>No debris bears this name.</summary>
    public const string UnknownDebris = "unknown-debris";

    /// <summary>No part bears this id.</summary>
    public const string UnknownPart = "unknown-part";

    /// <summary>`-#` or a count is used on a part that is not repeated.</summary>
    public const string NotRepeated = "not-repeated";

    /// <summary>No circuit bears this name.</summary>
    public const string UnknownCircuit = "unknown-circuit";

    /// <summary>No fluid bears this id.</summary>
    public const string UnknownFluid = "unknown-fluid";

    /// <summary>Two parts, limits or fluids bear one id.</summary>
    public const string DuplicateId = "duplicate-id";

    /// <summary>A repeated part does not say how often it stands.</summary>
    public const string CountMissing = "count-missing";

    /// <summary>There are more parts, joints or uses of modules than are taken in.</summary>
    public const string TooMany = "too-many";

    /// <summary>Two repeated parts meet number to number but do not stand equally often.</summary>
    public const string CountsDiffer = "counts-differ";

    /// <summary>A part stands next to itself on a run, or a link leads back to where it begins.</summary>
    public const string JoinedToItself = "joined-to-itself";

    /// <summary>A link is open only in engine states that the engine does not have.</summary>
    public const string NeverOpen = "never-open";

    /// <summary>Parts are in each other's way, so that none of them could come off first.</summary>
    public const string AccessCircle = "access-circle";

    /// <summary>A part would be carried by what it carries.</summary>
    public const string CarrierCircle = "carrier-circle";

    /// <summary>A size is given for debris that has none.</summary>
    public const string NoSize = "no-size";

    /// <summary>A viscosity is given twice for one temperature.</summary>
    public const string TemperatureTwice = "temperature-twice";

    /// <summary>Two files name different fluids for one circuit.</summary>
    public const string FluidsDiffer = "fluids-differ";

    /// <summary>A side of a limit is not a comparison and a value.</summary>
    public const string BadThreshold = "bad-threshold";

    /// <summary>A reading could be good and rejected at once.</summary>
    public const string LimitsOverlap = "limits-overlap";

    /// <summary>A key is used where it has no meaning.</summary>
    public const string KeyDoesNotApply = "key-does-not-apply";

    /// <summary>The name of a module is not a path relative to the file that uses it.</summary>
    public const string ModulePath = "module-path";

    /// <summary>A module lies outside the folder that modules may lie in.</summary>
    public const string ModuleOutside = "module-outside";

    /// <summary>Modules use each other in a circle.</summary>
    public const string ModuleCircle = "module-circle";

    /// <summary>A part is adjusted in the file that describes it.</summary>
    public const string AdjustOwn = "adjust-own";

    /// <summary>A text holds a placeholder that is not known.</summary>
    public const string UnknownPlaceholder = "unknown-placeholder";

    /// <summary>A text names a method that is not described.</summary>
    public const string UnknownMethod = "unknown-method";

    /// <summary>Two rules of one standard are for the same and say different things.</summary>
    public const string RulesDiffer = "rules-differ";

    /// <summary>A standard describes metal, rubber or water, which are built in.</summary>
    public const string BuiltInDebris = "built-in-debris";

    /// <summary>`meant` names a code that is no lint's.</summary>
    public const string UnknownLint = "unknown-lint";

    /// <summary>All of them, in the order in which a file is looked at; the lints come last.</summary>
    public static ImmutableArray<ProblemCode> All { get; } =
    [
        new(FileMissing, "There is no such file.", "contam check no-such-file.yaml", "Check the name and the folder."),
        new(FileUnreadable, "The file is there but cannot be read: it is a folder, or may not be read.", "contam check systems/", "Name a file that may be read."),
        new(FileTooLarge, "The file and its modules are larger than what is taken in, so that no file can fill memory.", "a file of more than 4 MiB", "Check that it is the right file; what is really so large is taken in with `--limit bytes=NUMBER` or `--limit values=NUMBER`."),
        new(FileEmpty, "The file holds nothing, or comments alone.", "# to be written", "Begin with `format: 1`."),
        new(BadTable, "A table of parts or joints from a spreadsheet has a column that there is not, lacks one that must be there, or holds a cell that means nothing. Its place is the row and the column.", "circut,from,to", "Name the columns in the first row as contam start --help lists them."),
        new(NotText, "The file is not UTF-8 text.", "a picture, or a file saved as UTF-16", "Save the file as UTF-8 text."),
        new(ControlCharacter, "A character that cannot be seen stands in the file or comes in by an escape; editors would show other lines or ids than are read.", "title: \"a\\u0007b\"", "Delete it."),
        new(TooDeep, "Lists and mappings stand too deep in one another.", "[[[[[[ … ]]]]]]", "Nothing in these files needs more than six."),
        new(SeveralDocuments, "A second YAML document begins in the file.", "format: 1\n---\nformat: 1", "Put the rest into a file of its own."),
        new(DuplicateKey, "A key stands twice in one mapping. Which one was meant cannot be known.", "kind: hose\nkind: pipe", "Keep one of the two."),
        new(KeyNotText, "A list or mapping stands where a key is due.", "? [a, b]\n: c", "Write a plain word as the key."),
        new(Anchor, "YAML anchors are not used in these files: what they repeat cannot be pointed at.", "volume: &v 60 L", "Write the value out wherever it is needed."),
        new(Alias, "YAML aliases are not used in these files.", "volume: *v", "Write the value out."),
        new(Tag, "YAML tags are not used in these files.", "volume: !litres 60", "Take the tag out; units stand behind their number."),
        new(MergeKey, "The YAML merge key is not used in these files.", "<<: {kind: hose}", "Write the keys out, or move what is shared into a module."),
        new(Tab, "A tab stands where a line is indented.", "parts:\n\\tpump: {kind: pump}", "Indent with spaces."),
        new(BracketNotClosed, "A bracket or brace is not closed, or a comma is missing between its entries.", "access: [hose, pump", "Close it, and part its entries with commas."),
        new(Syntax, "The text is not YAML here.", "title: a: b", "Check quotes, brackets and indentation."),
        new(TooManyProblems, "There are more problems than are shown.", "a thousand unknown keys", "Mend those shown and check again."),
        new(Nothing, "A key has no value.", "kind:", "Write a value, or leave the key out."),
        new(WrongShape, "A list, mapping or text stands where something else is due.", "parts: [pump]", "Write what is due."),
        new(UnknownKey, "A key is not known here; it may be mistyped or wrongly indented.", "bypas: true", "Write a key that is known here."),
        new(CommaInText, "A text between braces is cut off at its comma: there, commas part entries.", "inspect: {how: look at threads, and chips}", "Put the text in quotes."),
        new(MissingKey, "A key that is needed is missing.", "pump: {bypass: true}", "Add the key."),
        new(BadId, "An id is not written in lower-case letters, digits and single hyphens.", "Oil Filter: {kind: filter}", "Write it that way, beginning with a letter."),
        new(BadChoice, "A word is not one of those that fit here.", "rating: absolut", "Write one of the words."),
        new(BadFlag, "Something else than true or false stands where one of the two is due.", "bypass: yes", "Write `true` or `false`, without quotes."),
        new(BadNumber, "A number without a unit is due.", "minutes: {remove: 40 min}", "Write digits alone; the key names the unit."),
        new(BadQuantity, "A quantity is not written as a number and a unit.", "bore: wide", "Write a number, a space and a unit, for instance `9.5 mm`."),
        new(DecimalComma, "A comma stands in a number. It could part thousands or decimals, a difference of a thousand.", "bore: 9,5 mm", "Write a decimal point."),
        new(MissingUnit, "A number has no unit where one is due.", "bore: 9.5", "Add the unit."),
        new(UnknownUnit, "No unit is written like this.", "bore: 9.5 MM", "Write a unit that is known; upper and lower case count."),
        new(WrongUnit, "The unit measures something else.", "bore: 3 bar", "Write a unit of what is due."),
        new(NumberOutOfRange, "A number is negative, 0 where that makes no sense, or too large or small to hold.", "bore: -3 mm", "Write a number that can be."),
        new(EmptyList, "A list is empty that must not be.", "when: []", "Write at least one, or leave the key out."),
        new(TwiceInList, "The same stands twice in a list where each stands once.", "access: [hose, hose]", "Keep one of the two."),
        new(WrongFormat, "The file is written in a format that this version does not read.", "format: 2", "Write `format: 1`, or use a newer version."),
        new(UnknownKind, "No kind of part bears this name.", "kind: fliter", "Write a kind that is known, or describe it in the shop standard."),
        new(UnknownDebris, "No debris bears this name.", "sheds: {steel: common}", "Write metal, rubber, water, or one that the shop standard describes."),
        new(UnknownPart, "No part bears this id.", "access: [intake-hoes]", "Write the id of a part, or describe the part."),
        new(NotRepeated, "`-#` or a count is used on a part that is not repeated.", "access: [pump-#]", "Write the part's id as it is described."),
        new(UnknownCircuit, "No circuit bears this name.", "{from: pump, to: tank, circuit: fule}", "Write the name of a circuit, or describe it."),
        new(UnknownFluid, "No fluid bears this id.", "fluid: disel", "Write the id of a fluid, or describe it."),
        new(DuplicateId, "Two parts, limits or fluids bear one id.", "injector-#: {kind: injector, count: 4}\ninjector-2: {kind: injector}", "Give one of the two another id."),
        new(CountMissing, "A repeated part does not say how often it stands.", "injector-#: {kind: injector}", "Add `count`, or, for a module's part, `counts` where it is used."),
        new(TooMany, "There are more parts, joints or uses of modules than are taken in.", "injector-#: {kind: injector, count: 20000}", "Lower the counts; what is really so large is taken in with `--limit parts=NUMBER`, `joints`, `count` or `module-uses`."),
        new(CountsDiffer, "Two repeated parts meet number to number but do not stand equally often.", "runs: [[injector-#, cylinder-#]]", "Make the counts equal, or name the parts one by one."),
        new(JoinedToItself, "A part stands next to itself on a run, a link leads back to where it begins, or a part is named as renewed together with itself.", "runs: [[tank, hose, hose, pump]]", "Take one of the two out, or name the part that was meant."),
        new(NeverOpen, "A link is open only in engine states that the engine does not have.", "engine-running: [running]\nlinks: [{from: a, to: b, circuit: oil, when: stopped}]", "Change `when` or `engine-running`, or take the link out.") { Severity = Severity.Warning },
        new(AccessCircle, "Parts wait for each other to come off, by `access`, `stands-on` or `rides-on`, so that none of them could come off first.", "pump: {kind: pump, access: [pump]}", "Take one of them out of the key that is named."),
        new(CarrierCircle, "A part stands on, rides on or is inside of what itself stands on, rides on or is inside of it.", "shaft: {kind: shaft, assembly: gear}\ngear: {kind: gear, assembly: shaft}", "Take one of them out of the key that is named."),
        new(NoSize, "A size is given for debris that has none.", "holds: {water: 30 um}", "Write `all`, or leave it out."),
        new(TemperatureTwice, "A viscosity is given twice for one temperature.", "viscosity: {40 C: 105 cSt, 104 F: 90 cSt}", "Keep one of the two."),
        new(FluidsDiffer, "Two files name different fluids for one circuit.", "a module says `fluid: oil-15w40`, the family file `fluid: oil-30`", "Say it in one place."),
        new(BadThreshold, "A side of a limit is not a comparison and a value.", "good: 0.05 mm", "Write `<=`, `<`, `>=` or `>` and a value."),
        new(LimitsOverlap, "A reading could be good and rejected at once.", "good: \"<= 0.10 mm\"\nreject: \"> 0.05 mm\"", "Let the two run in opposite ways and not overlap."),
        new(KeyDoesNotApply, "A key is used where it has no meaning.", "{part: pump, measures: run-out, good: \"<= 0.05 mm\", over: 10 min}", "Take it out."),
        new(ModulePath, "The name of a module is not a path relative to the file that uses it.", "use: [{module: /etc/oil.yaml}]", "Write a relative path with `/` between folders."),
        new(ModuleOutside, "A module lies outside the folder that modules may lie in.", "use: [{module: ../../../oil.yaml}]", "Move the module into the `systems` folder, or beside the family file."),
        new(ModuleCircle, "Modules use each other in a circle.", "a module that uses itself", "Take one of the uses out."),
        new(AdjustOwn, "A part is adjusted in the file that describes it.", "parts: {pump: {kind: pump}}\nadjust: {pump: {bypass: true}}", "Change it where it is described."),
        new(UnknownPlaceholder, "A text holds a placeholder that is not known.", "say: \"take {prat} off\"", "Write a placeholder that is known."),
        new(UnknownMethod, "A text names a method that is not described.", "texts: [{for: {action: clean}, say: \"wash {part}\", method: wsh}]", "Describe the method, or write the id of one that is."),
        new(RulesDiffer, "Two rules or shares of one standard are for the same and say different things.", "two rules for {kind: injector}", "Keep one of the two, or make one more specific."),
        new(BuiltInDebris, "A standard describes metal, rubber or water, which are built in.", "debris: {metal: {has-size: true, hard: true}}", "Give the shop's own debris another name."),
        new(UnknownLint, "`meant` names a code that is no lint's.", "meant: {daed-end: the drain ends over the side}", "Write the code that stands in brackets behind the warning."),
        .. LintCodes.All,
    ];

    /// <summary>The lints: what <c>meant</c> can silence.</summary>
    public static ImmutableArray<ProblemCode> Lints { get; } = [.. All.Where(code => code.IsLint)];

    /// <summary>What stands behind a code, or <c>null</c>.</summary>
    public static ProblemCode? Find(string code)
    {
        foreach (ProblemCode known in All)
        {
            if (known.Code == code)
                return known;
        }

        return null;
    }
}
