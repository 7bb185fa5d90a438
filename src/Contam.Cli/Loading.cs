using System.Collections.Immutable;
using System.CommandLine;
using Contam.Cli.Starting;
using Contam.Diagnosis;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Lints;
using Contam.Plans;
using Contam.Problems;
using Contam.Reports.Text;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Cli;

/// <summary>Reads what a call names. What is wrong with it goes to standard error; then the answer is <c>null</c>.</summary>
internal sealed class Loading(Shell shell)
{
    /// <summary>How much is taken in from a file.</summary>
    public ReadLimits Limits { get; set; } = ReadLimits.Default;

    /// <summary>The house standard, or the shop's own laid over it.</summary>
    public ShopStandard? Standard(string? file)
    {
        if (file is null)
            return BuiltInStandards.HouseOverKinds;
        if (file == StandardPair.House && !Path.Exists(file))
            return BuiltInStandards.HouseOverKinds;
        RefuseOther(file, FileSort.Standard);
        Outcome<ShopStandard> read = NamedFile.ShippedStandard(file) is { } shipped ? StandardReader.ReadText(ShippedFiles.Standard(shipped), shipped, limits: Limits) : StandardReader.ReadFile(file, limits: Limits);
        return Take(read with { Problems = [.. read.Problems.Select(problem => NamedFile.WithNear(problem, file, [StandardPair.House, .. ShippedFiles.Standards]))] })?.Over(BuiltInStandards.HouseOverKinds);
    }

    /// <summary>The family in a file, or the shipped one of this name.</summary>
    public Family? Family(string file, ShopStandard standard)
    {
        RefuseOther(file, FileSort.Family);
        return Take(NamedFile.Family(file, standard.CatalogueOf(), Limits));
    }

    /// <summary>A file that says of itself that it is something else is not read as what it cannot be.</summary>
    private static void RefuseOther(string file, string due)
    {
        string name = TextPage.Harmless(file);
        if (Directory.Exists(file) && due == FileSort.Family && Directory.EnumerateFiles(file, "*.yaml").Where(FamilyFiles.IsFamily).Order(StringComparer.Ordinal).FirstOrDefault() is { } within)
            throw new WrongUseException($"{name} is a folder. Name the family file in it, for instance {TextPage.Harmless(within)}.");
        bool isShippedModule = NamedFile.ShippedModule(file) is not null;
        if (!isShippedModule && !File.Exists(file))
            return;
        if (!isShippedModule && FileSort.IsAnswer(FileBeginning.Of(file, 4096)))
            throw new WrongUseException($"{name} is an answer of contam in JSON, where a {due} is due. Name the {due} file, whose name usually ends in .yaml.");
        string sort = isShippedModule ? FileSort.Module : FileSort.Of(file);
        if (sort == due || (sort == FileSort.Module && !isShippedModule && !FileSort.BeginsSections(file)))
            return;
        throw new WrongUseException((sort, due) switch
        {
            (FileSort.Standard, _) => $"{name} is a standard, where a family is due. Name the family, and give the standard behind --standard.",
            (FileSort.Module, FileSort.Family) => $"{name} is a module, which a family takes in: it names no family of its own. Write a family that uses it, for instance with contam start FOLDER --with {(isShippedModule ? name : "MODULE")}.",
            (FileSort.Module, _) => $"{name} is a module, where a standard is due. A standard has a line that begins with standard:.",
            _ => $"{name} is a family, where a standard is due. A standard has a line that begins with standard:.",
        });
    }

    /// <summary>Everything that a question about a failure names.</summary>
    public FailureQuestion? Read(ParseResult call, FailureArguments arguments)
    {
        if (Standard(call.GetValue(arguments.Standard)) is not { } standard)
            return null;
        if (Family(call.GetValue(arguments.Family)!, standard) is not { } family)
            return null;
        var names = new QuestionNames(family, standard.CatalogueOf());
        var typed = TypedFailures.Read(call.GetValue(arguments.Failed)!, names);
        if (Glance(call, arguments, family, standard) is not { } glance)
            return null;
        if (typed.Parts.IsEmpty && glance.Failed.Length == 0 && call.GetValue(arguments.Found)!.Length == 0 && call.GetValue(arguments.FindingsFile) is null)
            throw NothingFailed();
        (ImmutableArray<PartFailure> failures, ImmutableArray<Debris> asked) =
            typed.Asked(call.GetValue(arguments.Debris)!, glance.Failed, [.. call.GetValue(arguments.Found)!.Select(names.Found), .. glance.Findings], names);
        ImmutableArray<Finding> findings = [.. call.GetValue(arguments.Found)!.Select(names.Found), .. call.GetValue(arguments.Clean)!.SelectMany(text => names.Clean(text, asked))];
        if (call.GetValue(arguments.FindingsFile) is { } file)
        {
            if (FindingsOf(file, family, standard, asked) is not { } sheet)
                return null;
            findings = [.. findings, .. sheet.Findings];
        }

        if (failures.IsEmpty && !findings.Any(finding => finding.Found && asked.Contains(finding.Debris)))
            throw NothingFailed();
        return new FailureQuestion(family, standard, failures, asked) { Findings = findings };
    }

    private static WrongUseException NothingFailed() =>
        new("nothing has failed and nothing was found. Name the failed part with --failed PART, or say where debris was found with --found PART=DEBRIS.");

    /// <summary>Everything that a question about a failure alone names.</summary>
    public FailureQuestion? ReadFailure(ParseResult call, FailureArguments arguments)
    {
        if (Standard(call.GetValue(arguments.Standard)) is not { } standard || Family(call.GetValue(arguments.Family)!, standard) is not { } family)
            return null;
        var names = new QuestionNames(family, standard.CatalogueOf());
        var typed = TypedFailures.Read(call.GetValue(arguments.Failed)!, names);
        if (typed.Parts.IsEmpty)
            throw new WrongUseException($"nothing has failed. Name the failed part with --failed PART; contam parts {family.File} lists them.");
        (ImmutableArray<PartFailure> failures, ImmutableArray<Debris> asked) = typed.Asked(call.GetValue(arguments.Debris)!, [], [], names);
        return new FailureQuestion(family, standard, failures, asked);
    }

    /// <summary>Says on standard error where a person's word about a failure is taken although the family says otherwise.</summary>
    public void Note(FailureQuestion question)
    {
        foreach (string note in FailureNotes.Of(new PlanRequest(question.Family, question.Standard, question.Failures, question.Debris) { Findings = question.Findings }))
            shell.Error.Write($"contam: {TextPage.Harmless(note)}\n");
    }

    /// <summary>Everything that a question about where debris comes from names.</summary>
    /// <param name="call">The call.</param>
    /// <param name="arguments">Its arguments.</param>
    /// <param name="fileMayBeNew">Whether a findings file that is not there yet, or is empty, says nothing instead of being an error.</param>
    public SuspectQuestion? ReadSuspects(ParseResult call, FailureArguments arguments, bool fileMayBeNew = false)
    {
        if (Standard(call.GetValue(arguments.Standard)) is not { } standard || Family(call.GetValue(arguments.Family)!, standard) is not { } family)
            return null;
        var names = new QuestionNames(family, standard.CatalogueOf());
        if (Glance(call, arguments, family, standard) is not { } glance)
            return null;
        ImmutableArray<Finding> found = [.. call.GetValue(arguments.Found)!.Select(names.Found)];
        ImmutableArray<Debris> asked = OneDebris(call.GetValue(arguments.Debris)!, found.AddRange(glance.Findings), names);
        var question = new SuspectQuestion(family, asked[0], standard) { Findings = [.. found, .. call.GetValue(arguments.Clean)!.SelectMany(text => names.Clean(text, asked))] };
        if (call.GetValue(arguments.FindingsFile) is not { } file || fileMayBeNew && IsNew(file))
            return question;
        if (FindingsOf(file, family, standard, asked) is not { } sheet)
            return null;
        // Who starts again with the same command does not see the same thing twice.
        return fileMayBeNew ? With(question with { Findings = [.. question.Findings.Except(sheet.Findings)] }, sheet) : With(question, sheet);
    }

    /// <summary>What a findings file says of one debris; nothing where there is no such file.</summary>
    public FindingsSheet? FindingsOf(string file, Family family, ShopStandard standard, ImmutableArray<Debris> asked) =>
        Take(FindingsReader.ReadFile(file, family, standard.CatalogueOf(), asked, Limits));

    /// <summary>The question with what a findings file says added.</summary>
    public static SuspectQuestion With(SuspectQuestion question, FindingsSheet sheet) => question with
    {
        Findings = [.. question.Findings, .. sheet.Findings],
        Failed = [.. question.Failed, .. sheet.Failed],
        CannotTell = [.. question.CannotTell, .. sheet.CannotTell.Where(look => look.Debris == question.Debris).Select(look => look.Part)],
    };

    /// <summary>Whether there is no such file, or nothing in it yet.</summary>
    public static bool IsNew(string file) => !Directory.Exists(file) && (!File.Exists(file) || new FileInfo(file).Length == 0);

    private static ImmutableArray<Debris> OneDebris(string[] typed, ImmutableArray<Finding> findings, QuestionNames names)
    {
        if (typed.Length == 0 && !findings.Any(finding => finding.Found))
            throw new WrongUseException("nothing was found. Say where debris was found with --found PART=DEBRIS, or name the debris with --debris, for instance --debris metal.");
        ImmutableArray<Debris> asked = names.Asked(typed, [], findings);
        return asked.Length == 1 ? asked : throw new WrongUseException($"where debris comes from is answered for one debris at a time. Add --debris {asked[0].Name}, or --debris {asked[1].Name}.");
    }

    /// <summary>A first look into the findings file, for the debris that it names; a finding that names none is taken for every debris here.</summary>
    private FindingsSheet? Glance(ParseResult call, FailureArguments arguments, Family family, ShopStandard standard) =>
        call.GetValue(arguments.FindingsFile) is { } file && !IsNew(file)
            ? FindingsOf(file, family, standard, standard.CatalogueOf().Debris)
            : new FindingsSheet([], []);

    /// <summary>What is wrong with a file, be it a family, a module or a standard, and what is likely forgotten in a family that can be read.</summary>
    public ImmutableArray<Problem> Check(string file, ShopStandard standard)
    {
        if (NamedFile.ShippedStandard(file) is { } shipped)
            return StandardReader.ReadText(ShippedFiles.Standard(shipped), shipped, limits: Limits).Problems;
        switch (FileSort.Of(file))
        {
            case FileSort.Standard:
                return StandardReader.ReadFile(file, limits: Limits).Problems;
            case FileSort.Module:
                return FamilyReader.CheckModule(file, standard.CatalogueOf(), Limits, ShippedModules.All);
        }

        Outcome<Family> outcome = NamedFile.Family(file, standard.CatalogueOf(), Limits);
        return outcome.Value is { } family ? [.. outcome.Problems, .. Linting.Look(family, standard)] : outcome.Problems;
    }

    private T? Take<T>(Outcome<T> outcome)
        where T : class
    {
        // A warning is said too, but does not stand in the way.
        if (outcome.Problems.Length > 0)
            ProblemText.Write(outcome.Problems, shell.Error, TextLook.Plain);
        return outcome.Value;
    }
}
