using System.Diagnostics;
using System.Text;
using Contam.Support;

namespace Contam.Cli.Tests.Describe;

/// <summary>A family of 60 parts typed in at a terminal, and a disk that is full.</summary>
public sealed class At_a_terminal : IDisposable
{
    private const int Parts = 60;
    private readonly DirectoryInfo here = Directory.CreateTempSubdirectory("contam");

    private static string Command => Path.ChangeExtension(typeof(ContamCommand).Assembly.Location, ".dll");

    public void Dispose() => here.Delete(recursive: true);

    [Fact]
    public async Task A_family_of_60_parts_is_the_same_as_by_hand()
    {
        Need("/usr/bin/script");
        var typist = new Typist();
        // 40 columns: the narrowest that a page is folded to.
        using Process terminal = Process.Start(new ProcessStartInfo("/usr/bin/script", ["-qefc", $"stty columns 30 -echo; exec dotnet {Command} describe plant", "/dev/null"])
        {
            WorkingDirectory = here.FullName, RedirectStandardInput = true, RedirectStandardOutput = true,
        })!;
        var screen = new StringBuilder();
        char[] piece = new char[4096];
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(4));
        while (await terminal.StandardOutput.ReadAsync(piece, patience.Token) is > 0 and var count)
        {
            screen.Append(piece, 0, count);
            string shown = screen.ToString().Replace("\r", "", StringComparison.Ordinal);
            if (!shown.EndsWith("\n> ", StringComparison.Ordinal))
                continue;
            string[] lines = shown.TrimEnd('>', ' ', '\n').Split("\n\n")[^1].Split('\n');
            await terminal.StandardInput.WriteAsync(typist.Answer(string.Join(' ', lines.TakeWhile(line => !line.StartsWith("  ", StringComparison.Ordinal)))) + "\n");
            await terminal.StandardInput.FlushAsync(patience.Token);
            screen.Clear();
        }

        await terminal.WaitForExitAsync(patience.Token);
        File.WriteAllText(Path.Combine(here.FullName, "by-hand.yaml"), typist.ByHand());

        Assert.Equal(0, terminal.ExitCode);
        Assert.Equal(PartsOf("by-hand.yaml"), PartsOf("plant/plant.yaml"));
        Assert.Equal(Parts, PartsOf("plant/plant.yaml").Split("\"kind\":").Length - 1);
    }

    [Fact]
    public void A_full_disk_loses_no_answer_that_was_kept()
    {
        Need("/bin/bash");
        Call("dotnet " + Command + " describe plant", "engine\noil\noil\nsump\noil pump\n");
        string file = Path.Combine(here.FullName, "plant/plant.yaml");
        string before = File.ReadAllText(file);

        // No file may grow beyond 1 KiB from here on; the parts go on until they do.
        string many = string.Concat(Enumerable.Range(1, 60).Select(number => $"galley hose number {number} of many hose\n"));
        (int exit, string error) = Call($"trap '' XFSZ; ulimit -f 1; exec env DOTNET_EnableWriteXorExecute=0 dotnet {Command} describe plant", many);

        string after = File.ReadAllText(file);
        Assert.Equal(2, exit);
        Assert.Contains("The last answer is not kept; all those before it are.", error, StringComparison.Ordinal);
        Assert.StartsWith(before[..before.IndexOf("circuits:", StringComparison.Ordinal)].TrimEnd(), after, StringComparison.Ordinal);
        Assert.True(after.Length > before.Length);
        Assert.Equal(0, CommandSession.Of($"check {file}").Exit);
        Assert.Empty(Directory.GetFiles(Path.Combine(here.FullName, "plant"), "*.new"));
        // Taken up where it broke off, with room again.
        (int again, _) = Call($"dotnet {Command} describe plant", "sump\n");
        Assert.Equal(0, again);
        Assert.Contains(", sump]", File.ReadAllText(file).ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    private (int Exit, string Error) Call(string words, string typed)
    {
        using Process process = Process.Start(new ProcessStartInfo("/bin/bash", ["-c", words]) { WorkingDirectory = here.FullName, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> said = process.StandardOutput.ReadToEndAsync(), error = process.StandardError.ReadToEndAsync();
        try
        {
            process.StandardInput.Write(typed);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It ended before it had read all.
        }

        process.WaitForExit();
        _ = said.Result;
        return (process.ExitCode, error.Result);
    }

    private static void Need(string program)
    {
        if (File.Exists(program))
            return;
        Assert.False(Environment.GetEnvironmentVariable("CI") == "true", $"CI must not skip this test: {program} is not installed");
        Assert.Skip($"{program} is not installed");
    }

    private string PartsOf(string file) => CommandSession.Of(["parts", Path.Combine(here.FullName, file), "--format", "json"]).Out;

    /// <summary>Knows the plant: a tank, then hoses, pumps and bearings in a ring; each fifth has a branch home.</summary>
    private sealed class Typist
    {
        private static readonly string[] Kinds = ["hose", "pump", "bearing", "filter", "valve"];
        private readonly List<string> ring = ["store-tank", .. Enumerable.Range(1, Parts - 1).Select(number => $"unit-{number}-{Kinds[number % Kinds.Length]}")];
        private readonly HashSet<string> branched = [];

        public string Answer(string question)
        {
            string of = ring.Where(part => question.Contains(part + " ", StringComparison.Ordinal) || question.Contains(part + "?", StringComparison.Ordinal) || question.Contains(part + ",", StringComparison.Ordinal)).MaxBy(part => part.Length) ?? "";
            int at = ring.IndexOf(of);
            return question switch
            {
                _ when question.Contains("What sort of machine", StringComparison.Ordinal) => "gearbox",
                _ when question.StartsWith("Which circuit do you follow first", StringComparison.Ordinal) => "oil",
                _ when question.StartsWith("Which circuit do you follow next", StringComparison.Ordinal) => "",
                _ when question.StartsWith("Which fluid", StringComparison.Ordinal) => "gear-oil",
                _ when question.StartsWith("What does the fluid come from", StringComparison.Ordinal) => ring[0],
                _ when question.StartsWith("What comes next", StringComparison.Ordinal) => ring[(at + 1) % ring.Count] + (at + 1 < ring.Count ? "!" : ""),
                _ when question.Contains(" lead to", StringComparison.Ordinal) => at > 0 && at % 5 == 4 && branched.Add(of) ? ring[0] : "",
                _ when question.StartsWith("Does ", StringComparison.Ordinal) && question.Contains("hold anything", StringComparison.Ordinal) => "metal 25 um, rubber 25 um",
                _ when question.Contains("call that absolute", StringComparison.Ordinal) => "yes",
                _ when question.StartsWith("Does it open past itself", StringComparison.Ordinal) => "yes",
                _ when question.Contains(" shed ", StringComparison.Ordinal) => of.EndsWith("pump", StringComparison.Ordinal) ? "metal common 2 mm magnetic" : of.EndsWith("hose", StringComparison.Ordinal) ? "rubber" : "",
                _ when question.StartsWith("What must be off", StringComparison.Ordinal) => at % 7 == 3 ? ring[at - 1] : "",
                _ when question.Contains("carried by", StringComparison.Ordinal) => "rides on " + ring[at - 1],
                _ when question.Contains("place to look", StringComparison.Ordinal) => of.EndsWith("filter", StringComparison.Ordinal) ? "15 good cut it open" : "",
                _ => throw new InvalidOperationException($"nobody knows the answer to: {question}"),
            };
        }

        public string ByHand()
        {
            var text = new StringBuilder("format: 1\nfamily: plant\nmachine: gearbox\nfluids:\n  gear-oil: {}\nparts:\n  store-tank: {kind: tank}\n");
            for (int at = 1; at < ring.Count; at++)
            {
                string kind = Kinds[at % Kinds.Length];
                string more = kind switch
                {
                    "hose" => ", sheds: {rubber: occasional}",
                    "pump" => ", sheds: {metal: {likely: common, up-to: 2 mm, magnetic: true}}",
                    "bearing" => $", rides-on: {ring[at - 1]}",
                    "filter" => ", holds: {metal: 25 um, rubber: 25 um}, rating: absolute, bypass: true, inspect: {minutes: 15, shows: good, how: cut it open}",
                    _ => "",
                };
                text.Append($"  {ring[at]}: {{kind: {kind}{more}{(at % 7 == 3 ? $", access: [{ring[at - 1]}]" : "")}}}\n");
            }

            text.Append($"circuits:\n  oil:\n    fluid: gear-oil\n    runs:\n      - [{string.Join(", ", ring)}, store-tank]\n");
            for (int at = 4; at < ring.Count; at += 5)
                text.Append($"      - [{ring[at]}, store-tank]\n");
            return text.ToString();
        }
    }
}
