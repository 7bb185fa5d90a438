using System.Globalization;
using Contam.Fuzz;

// Feeds the readers of families, modules, standards and findings with broken texts; see tools/fuzz/README.md. Ends with 1 where a reader failed.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["instrument"])
{
    Console.WriteLine(Instrumented.Copy());
    return 0;
}

Call call = Call.Of(args);
if (call.Threads > 1)
    return Workers.Run(args, call);
if (call.Replay is string file)
    return Replayed(file);
using var session = new Session(call);
if (call.Distil is string folder)
{
    session.Distil(folder);
    return 0;
}

return session.Run() == 0 ? 0 : 1;

static int Replayed(string file)
{
    string of = Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(file)))!;
    Sort sort = Enum.GetValues<Sort>().First(one => Corpus.NameOf(one) == of);
    // The readers of this copy count into the map, wanted or not.
    _ = new CoverageMap();
    using var judge = new Judge();
    string? fault = judge.Read(new Input(sort, File.ReadAllBytes(file)), isThorough: true);
    Console.WriteLine(fault ?? "nothing wrong");
    return fault is null ? 0 : 1;
}
