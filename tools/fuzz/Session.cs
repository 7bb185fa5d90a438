using System.Diagnostics;
using System.Globalization;
using System.Text;
using Contam.Problems;

namespace Contam.Fuzz;

/// <summary>A run: makes texts, has them read, keeps those that take a branch never taken, and puts aside those that show a fault.</summary>
internal sealed class Session(Call call) : IDisposable
{
    private const int OneInThorough = 128;
    private const int MostFindings = 20;

    private readonly Random random = new(call.Seed);
    private readonly Words words = new();
    private readonly Corpus corpus = new();
    private readonly CoverageMap map = new();
    private readonly Judge judge = new();
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly HashSet<string> known = new(StringComparer.Ordinal);
    private Input? current;
    private long currentSince;
    private long executions;
    private long earlier;
    private int findings;

    /// <summary>Runs; answers with the number of faults found.</summary>
    public int Run()
    {
        using var watch = new Timer(_ => StopIfHung(), null, TimeSpan.FromSeconds(5), TimeSpan.FromSeconds(5));
        earlier = call.Work is string work && File.Exists(CountFile(work)) ? long.Parse(File.ReadAllText(CountFile(work)), CultureInfo.InvariantCulture) : 0;
        Begin();
        var mutator = new Mutator(random, words);
        double nextLine = 30;
        while (clock.Elapsed.TotalSeconds < call.Seconds && earlier + executions < call.Executions && findings < MostFindings)
        {
            Execute(Make(mutator), mayKeep: true);
            if (clock.Elapsed.TotalSeconds > nextLine)
            {
                nextLine += 30;
                Tell();
            }
        }

        Tell();
        Console.WriteLine($"problem codes told: {judge.Codes.Count} of {ProblemCodes.All.Length}; never: {string.Join(", ", ProblemCodes.All.Select(code => code.Code).Where(code => !judge.Codes.ContainsKey(code)))}");
        return findings;
    }

    /// <summary>Writes the fewest of the known texts, the shortest first, that together take every branch known.</summary>
    public void Distil(string folder)
    {
        // What the test cases take need not be kept a second time.
        foreach (Input input in CasePages.Read("tests/Contam.Tests"))
            Execute(input, mayKeep: false);
        foreach (Input input in Known().OrderBy(input => input.Bytes.Length))
        {
            if (Execute(input, mayKeep: false))
                Corpus.Write(folder, input);
        }

        Tell();
    }

    public void Dispose() => judge.Dispose();

    private void Begin()
    {
        foreach (Input input in Known())
        {
            words.Take(input.Text ?? "");
            Execute(input, mayKeep: false);
            corpus.Add(input, judge.WasSound);
        }

        foreach (ProblemCode code in ProblemCodes.All)
            words.Take(code.Example);
        Console.WriteLine($"{corpus.Count} texts to begin with, {map.Edges} branch pairs");
    }

    private IEnumerable<Input> Known() =>
        Corpus.Read(call.Corpus).Concat(CasePages.Read("tests/Contam.Tests")).Concat(call.Work is string work ? Corpus.Read(work) : []);

    private Input Make(Mutator mutator)
    {
        // Families hold the most, so they get the most turns; a module must be written to disk first, which is slow.
        Sort sort = random.Next(40) switch { < 24 => Sort.Family, < 32 => Sort.Standard, < 39 => Sort.Findings, _ => Sort.Module };
        string text = mutator.Change(corpus.Any(sort, random).Text ?? "", corpus.Any(random.Next(8) == 0 ? Sort.Family : sort, random).Text ?? "");
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        if (random.Next(200) == 0)
        {
            for (int flip = 0; flip < 3 && bytes.Length > 0; flip++)
                bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        }

        return new Input(sort, bytes);
    }

    /// <summary>Has a text read; answers whether it took a branch never taken.</summary>
    private bool Execute(Input input, bool mayKeep)
    {
        current = input;
        Volatile.Write(ref currentSince, Stopwatch.GetTimestamp());
        executions++;
        bool isNew = false;
        map.Begin();
        string? fault = judge.Read(input, isThorough: false, () => isNew = map.Take());
        if (fault is null && (isNew || executions % OneInThorough == 0))
            fault = judge.Read(input, isThorough: true);
        Volatile.Write(ref currentSince, 0);
        if (fault is not null)
            PutAside(input, fault);
        else if (isNew && mayKeep)
        {
            corpus.Add(input, judge.WasSound);
            words.Take(input.Text ?? "");
            if (call.Work is string work)
                Corpus.Write(work, input);
        }

        return isNew;
    }

    private void PutAside(Input input, string fault)
    {
        // One fault shows in many texts; the first line without its figures tells one from another.
        string first = new([.. fault.Split('\n')[0].Where(c => !char.IsAsciiDigit(c)).Take(60)]);
        if (!known.Add(first))
            return;
        findings++;
        string file = Corpus.Write(call.Findings, input);
        Console.WriteLine($"FAULT in {file}\n{fault}");
    }

    private void StopIfHung()
    {
        long since = Volatile.Read(ref currentSince);
        if (since == 0 || Stopwatch.GetElapsedTime(since).TotalSeconds < 60 || current is not Input input)
            return;
        Console.WriteLine($"FAULT in {Corpus.Write(call.Findings, input)}\nit is read for a minute and more");
        Environment.Exit(1);
    }

    private void Tell()
    {
        double seconds = clock.Elapsed.TotalSeconds;
        if (call.Work is string work)
        {
            Directory.CreateDirectory(work);
            File.WriteAllText(CountFile(work), (earlier + executions).ToString(CultureInfo.InvariantCulture));
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{executions} executions ({earlier + executions} in all), {executions / seconds:0} a second, {map.Edges} branch pairs, {corpus.Count} texts, {judge.Codes.Count} problem codes, {judge.Sound} sound, {judge.Plans} plans, {findings} faults"));
    }

    private static string CountFile(string work) => Path.Combine(work, "executions");
}
