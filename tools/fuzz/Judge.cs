using System.Collections.Immutable;
using System.Diagnostics;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Plans;
using Contam.Problems;
using Contam.Proof;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Fuzz;

/// <summary>What reading a text must never do.</summary>
internal sealed class Judge : IDisposable
{
    /// <summary>Seconds of processor time that one reading may take.</summary>
    public const double MostSeconds = 2;

    private const int OneInPlanned = 8;

    /// <summary>Bytes that one reading may allocate.</summary>
    public const long MostBytes = 512L << 20;

    private const string User = "format: 1\nfamily: user\nuse: [{module: ../modules/m.yaml}]\nparts: {home: {kind: tank}}\n";

    private const string Bench = """
        format: 1
        family: bench
        parts:
          tank: {kind: tank}
          hose: {kind: hose}
          pump: {kind: pump, sheds: {metal: common}}
          filter: {kind: filter, holds: {metal: 10 um}, rating: absolute}
          injector-#: {kind: injector, count: 2, cleared-by: nothing}
        circuits:
          oil: {runs: [[tank, hose, pump, filter, injector-#, tank]]}

        """;

    // Small, so that most executions are; every now and then a text is read with the limits that people have.
    private static readonly ReadLimits Small = new() { Parts = 2_000, Joints = 10_000 };

    private readonly Stage stage = new();
    private readonly Catalogue catalogue = BuiltInStandards.HouseOverKinds.CatalogueOf();
    private readonly Family bench;

    public Judge() => bench = FamilyReader.ReadText(Bench, stage.FamilyPath, catalogue).Value!;

    /// <summary>How often each problem was told, by its code.</summary>
    public SortedDictionary<string, long> Codes { get; } = new(StringComparer.Ordinal);

    /// <summary>Whether the text read last was sound.</summary>
    public bool WasSound { get; private set; }

    /// <summary>How many texts were sound.</summary>
    public long Sound { get; private set; }

    /// <summary>How many plans were made of texts that are sound.</summary>
    public long Plans { get; private set; }

    /// <summary>Reads a text; answers with what is wrong with the reader, or <c>null</c>.</summary>
    /// <param name="input">The text.</param>
    /// <param name="isThorough">Whether it is read twice, from disk too and with the usual limits, and, where it is sound, planned with.</param>
    /// <param name="after">Called after the first reading, before anything else is read.</param>
    public string? Read(Input input, bool isThorough, Action? after = null)
    {
        try
        {
            long allocated = GC.GetAllocatedBytesForCurrentThread();
            long start = Stopwatch.GetTimestamp();
            Answer answer = ReadOnce(input, input.Text is null, Small);
            double took = Stopwatch.GetElapsedTime(start).TotalSeconds;
            allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
            after?.Invoke();
            WasSound = answer.IsSound;
            if (allocated > MostBytes)
                return $"one reading allocated {allocated} bytes";
            if (took > MostSeconds && TakesTooLong(input))
                return $"one reading took {took:0.0} s";
            foreach (Problem problem in answer.Problems)
            {
                Codes[problem.Code] = Codes.GetValueOrDefault(problem.Code) + 1;
                if (FaultOf(problem) is string fault)
                    return $"{fault}: [{problem.Code}] {problem.Place} {problem.Text}";
            }

            if (answer.IsSound != answer.Problems.All(problem => problem.Severity != Severity.Error))
                return "a text is sound and has errors, or neither";
            if (answer.Family is { } family && family.Parts.Any(part => part.Id.Value.Contains("stolen", StringComparison.Ordinal) && part.Place.File != stage.FamilyPath && part.Place.File != stage.ModulePath))
                return "a file outside the folder of modules was read";
            if (isThorough)
                return Again(input, answer);
            return answer.IsSound && ++Sound % OneInPlanned == 0 ? PlanWith(answer) : null;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            return fault.ToString();
        }
    }

    public void Dispose() => stage.Dispose();

    private bool TakesTooLong(Input input)
    {
        // The machine may have been busy with something else.
        for (int turn = 0; turn < 3; turn++)
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            ReadOnce(input, input.Text is null, Small);
            if ((Environment.CpuUsage.TotalTime - before).TotalSeconds < MostSeconds)
                return false;
        }

        return true;
    }

    private string? Again(Input input, Answer first)
    {
        Answer second = ReadOnce(input, fromDisk: true, Small);
        if (!first.Problems.SequenceEqual(second.Problems, Same.Value) || first.IsSound != second.IsSound || first.Family?.Sha256 != second.Family?.Sha256)
            return "read again from disk, a text says something else";
        long allocated = GC.GetAllocatedBytesForCurrentThread();
        ReadOnce(input, fromDisk: true, ReadLimits.Default);
        allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
        return allocated > MostBytes ? $"with the usual limits one reading allocated {allocated} bytes" : PlanWith(first);
    }

    private string? PlanWith(Answer answer)
    {
        Family family = answer.Family ?? bench;
        ShopStandard standard = answer.Standard?.Over(BuiltInStandards.HouseOverKinds) ?? BuiltInStandards.HouseOverKinds;
        if (!answer.IsSound || family.Parts.Length is 0 or > 40 || family.Joints.Length > 200)
            return null;
        Part failed = family.Parts.FirstOrDefault(part => !part.Sheds.IsEmpty) ?? family.Parts[0];
        Debris debris = failed.Sheds.IsEmpty ? Debris.Metal : failed.Sheds[0].Debris;
        var request = new PlanRequest(family, standard, [failed.Id, .. answer.Findings?.Failed.Where(id => id != failed.Id).Distinct() ?? []], [debris])
        {
            Findings = answer.Findings?.Findings ?? [],
        };
        Plans++;
        PlanDocument plan = Planner.Plan(request);
        Verification proof = PlanVerifier.Verify(plan, family, standard.CatalogueOf().Debris);
        Claim? broken = proof.Claims.FirstOrDefault(claim => !claim.Holds);
        return broken is null ? null : $"a plan of it is not proved: {broken.Kind}: {broken.Where}";
    }

    private Answer ReadOnce(Input input, bool fromDisk, ReadLimits limits)
    {
        string text = input.Text ?? System.Text.Encoding.Latin1.GetString(input.Bytes);
        string path = input.Sort switch { Sort.Family => stage.FamilyPath, Sort.Module => stage.ModulePath, _ => stage.OtherPath };
        if (fromDisk || input.Sort == Sort.Module)
            Stage.Put(path, input.Bytes);
        stage.Says(path, text);
        if (input.Sort == Sort.Module)
            stage.Says(stage.FamilyPath, User);
        switch (input.Sort)
        {
            case Sort.Family:
            case Sort.Module:
                Outcome<Family> family = input.Sort == Sort.Module ? FamilyReader.ReadText(User, stage.FamilyPath, catalogue, limits)
                    : fromDisk ? FamilyReader.ReadFile(path, catalogue, limits)
                    : FamilyReader.ReadText(text, path, catalogue, limits);
                return new Answer(family.IsSound, family.Problems) { Family = family.Value };
            case Sort.Standard:
                Outcome<ShopStandard> standard = fromDisk ? StandardReader.ReadFile(path, limits: limits) : StandardReader.ReadText(text, path, limits: limits);
                return new Answer(standard.IsSound, standard.Problems) { Standard = standard.Value };
            default:
                Outcome<FindingsSheet> findings = fromDisk
                    ? FindingsReader.ReadFile(path, bench, catalogue, [Debris.Metal])
                    : FindingsReader.ReadText(text, path, bench, catalogue, [Debris.Metal]);
                return new Answer(findings.IsSound, findings.Problems) { Findings = findings.Value };
        }
    }

    private string? FaultOf(Problem problem)
    {
        if (problem.Place is null && problem.Code != ProblemCodes.TooManyProblems)
            return "a problem has no place";
        if (ProblemCodes.Find(problem.Code) is null)
            return "a code is not listed";
        if (problem.Text.Length == 0 || (problem.Text + problem.Mend).Any(char.IsControl))
            return "a message is empty or holds a control character";
        if (problem.Text.Contains("stolen-key", StringComparison.Ordinal) && problem.Place?.File != stage.FamilyPath && problem.Place?.File != stage.ModulePath)
            return "a file outside was read";
        return problem.Place is SourceSpan place && !IsInside(place) || problem.Related.Any(related => !IsInside(related)) ? "a place lies outside its text" : null;
    }

    private bool IsInside(SourceSpan place)
    {
        if (stage.TextOf(place.File) is not string text)
            return false;
        int line = 1;
        int at = text.StartsWith('\uFEFF') ? 1 : 0;
        for (; at < text.Length && line < place.Line; at++)
        {
            if (text[at] == '\n' || (text[at] == '\r' && !(at + 1 < text.Length && text[at + 1] == '\n')))
                line++;
        }

        int length = text.AsSpan(at).IndexOfAny('\n', '\r');
        length = length < 0 ? text.Length - at : length;
        return line == place.Line && place.Column >= 1 && place.Column <= length + 1;
    }

    /// <summary>What reading a text came to.</summary>
    private sealed record Answer(bool IsSound, ImmutableArray<Problem> Problems)
    {
        public Family? Family { get; init; }

        public ShopStandard? Standard { get; init; }

        public FindingsSheet? Findings { get; init; }
    }

    /// <summary>Whether two problems say the same; arrays of equal contents are not equal by themselves.</summary>
    private sealed class Same : IEqualityComparer<Problem>
    {
        public static Same Value { get; } = new();

        public bool Equals(Problem? one, Problem? other) => one is not null && other is not null
            && one with { Related = [] } == other with { Related = [] } && one.Related.SequenceEqual(other.Related);

        public int GetHashCode(Problem problem) => problem.Text.GetHashCode(StringComparison.Ordinal);
    }
}
