using System.Diagnostics;

namespace Contam.Cli.Tests.Findings;

/// <summary>Being led from look to look, over a pipe and in a terminal.</summary>
public class A_trace
{
    private const string Case = "tests/Support/Systems/gearcase.yaml";

    // By hand: a fair look that finds is worth 0.6 against 0.01 of a stray, so 52 % and 17.3 % become 31.2 and 0.173 of 31.68.
    [Fact]
    public void Asks_until_the_source_is_known_and_ends_in_the_plan()
    {
        (CommandSession session, string kept) = CommandSession.Typing($"trace {Case} --debris water --findings FILE", "", "clean", "found");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        int plan = session.Out.IndexOf("\nClean-out: ", StringComparison.Ordinal);
        Assert.Equal(
            """
            Tracing water in outboard-gearcase
            Answer found, clean, cannot tell or stop. After found may stand a size and
            looks: found 120um flakes not-magnetic.
            Every answer is kept in the findings file at once; you can stop at any time.

            Suspects
              45 %               Propeller shaft seal towards the water
              15 %               Driveshaft seal towards the water pump
              15 %               Shift shaft seal
              15 %               O-ring between carrier and case
              5 %                Gear housing
                                 and 1 more

            Look at water inlet screen for water
              5 min: look at both inlets from outside.
            Found, clean, cannot tell, or stop?

            Suspects
              52 %               Propeller shaft seal towards the water (was 45 %)
              17.3 %             Shift shaft seal (was 15 %)
              17.3 %             O-ring between carrier and case (was 15 %)
              5.8 %              Gear housing (was 5 %)
              5.8 %              Vent plug (was 5 %)
                                 and 1 more

            Look at propeller shaft seal towards the water for water
              10 min: with the propeller off look for line wound round the shaft and for a
              grooved track.
            Found, clean, cannot tell, or stop?

            Suspects
              98.5 %             Propeller shaft seal towards the water (was 52 %)
              0.5 %              Shift shaft seal (was 17.3 %)
              0.5 %              O-ring between carrier and case (was 17.3 %)
              0.2 %              Gear housing (was 5.8 %)
              0.2 %              Vent plug (was 5.8 %)
                                 and 1 more

            Propeller shaft seal towards the water has 98.5 % of the suspicion: it is taken
            for the source.

            """,
            session.Out[..plan]);
        Assert.StartsWith("\nClean-out: from what was found, water\n", session.Out[plan..], StringComparison.Ordinal);
        Assert.Equal("- {part: water-inlet-screen, debris: water, found: false}\n- {part: propshaft-water-seal, debris: water, found: true}\n", kept);
    }

    [Fact]
    public void Taken_up_again_goes_on_as_if_it_had_not_been_stopped()
    {
        string[] answers = ["clean", "?", "clean", "found"];
        (CommandSession whole, string all) = CommandSession.Typing($"trace {Case} --debris water --findings FILE", "", answers);
        string kept = "";
        CommandSession last = whole;
        for (int i = 0; i < answers.Length; i++)
        {
            // Stopped by a word, and by the end of the input.
            (last, string now) = CommandSession.Typing($"trace {Case} --debris water --findings FILE", kept, i % 2 == 0 ? [answers[i], "stop"] : [answers[i]]);
            Assert.StartsWith(kept, now, StringComparison.Ordinal);
            Assert.Equal(i + 1, now.Split('\n').Length - 1);
            kept = now;
        }

        Assert.Equal(all, kept);
        Assert.Contains("cannot-tell: true", kept, StringComparison.Ordinal);
        // Nobody is asked twice to look at one place, also where it could not be told.
        Assert.Equal(answers.Length, kept.Split('\n').Where(line => line.Length > 0).Select(line => line.Split(',')[0]).Distinct().Count());
        // It comes to the same question, and the same shares.
        Assert.Equal(Tail(whole.Out), Tail(last.Out));

        static string Tail(string text) => text[text.LastIndexOf("\nSuspects\n", StringComparison.Ordinal)..];
    }

    [Fact]
    public void Keeps_what_was_typed_on_the_command_line_once()
    {
        string words = $"trace {Case} --debris metal --found bearing-carrier=metal:0.5mm,slivers,magnetic --clean lower-plug --findings FILE";
        (_, string kept) = CommandSession.Typing(words, "# first look\n- {part: gear-housing, debris: metal, found: false, by: night shift}", "stop");
        Assert.Equal(
            """
            # first look
            - {part: gear-housing, debris: metal, found: false, by: night shift}
            - {part: bearing-carrier, debris: metal, found: true, size: 500 um, form: slivers, magnetic: true}
            - {part: lower-plug, debris: metal, found: false}

            """,
            kept);
        (_, string again) = CommandSession.Typing(words, kept, "stop");
        Assert.Equal(kept, again);
    }

    [Fact]
    public void Stopped_without_a_file_says_how_to_go_on()
    {
        CommandSession session = CommandSession.Of([.. $"trace {Case} --debris water --sure 99.9%".Split(' ')], 400, "clean\nclean\nstop\n");
        Assert.Equal(0, session.Exit);
        Assert.EndsWith($"Stopped. To go on: contam trace {Case} --debris water --clean water-inlet-screen --clean exhaust-passage\n", session.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fuond", "fuond is no answer. Did you mean found? Write found, clean, cannot tell or stop; after found may stand a size and looks, for instance: found 120um flakes not-magnetic.")]
    [InlineData("", "Nothing is no answer. Write found, clean, cannot tell or stop; after found may stand a size and looks, for instance: found 120um flakes not-magnetic.")]
    [InlineData("found shiny", "shiny says nothing of how debris looks. Write flakes, slivers, grains or fuzz, magnetic or not-magnetic.")]
    [InlineData("found 120um", "--found water-inlet-screen=water:120um: water has no size. Leave it out.")]
    [InlineData("a\u001b[31mb", "a?[31mb is no answer. Write found, clean, cannot tell or stop; after found may stand a size and looks, for instance: found 120um flakes not-magnetic.")]
    public void Asks_again_after_what_is_no_answer(string typed, string expected)
    {
        CommandSession session = CommandSession.Of([.. $"trace {Case} --debris water".Split(' ')], 400, typed + "\nstop\n");
        Assert.Equal(0, session.Exit);
        Assert.Contains($"Found, clean, cannot tell, or stop?\n{expected}\nFound, clean, cannot tell, or stop?\n", session.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_was_found_anywhere_makes_no_plan()
    {
        (CommandSession session, _) = CommandSession.Typing($"trace {Case} --debris water --findings FILE", "", [.. Enumerable.Repeat("clean", 20)]);
        Assert.Equal(1, session.Exit);
        Assert.EndsWith("No water was found at any place, so that there is nothing to plan from.\n", session.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_a_file_that_it_could_not_add_to()
    {
        (CommandSession session, string kept) = CommandSession.Typing($"trace {Case} --debris water --findings FILE", "[{part: gear-housing, debris: water, found: true}]\n", "clean");
        Assert.Equal((2, "", "contam: FILE cannot be added to: write its findings one below the other, each beginning with `- `.\n"), (session.Exit, session.Out, session.Error));
        Assert.Equal("[{part: gear-housing, debris: water, found: true}]\n", kept);
    }

    [Fact]
    public void Refuses_a_folder_that_is_not_there() =>
        Assert.Equal(2, CommandSession.Of([.. $"trace {Case} --debris water --findings no-such-folder/found.yaml".Split(' ')], 80, "clean\n").Exit);

    [Fact]
    public void Talks_in_a_real_terminal()
    {
        const string Driver = """
            import os, pty, sys, time
            child, terminal = pty.fork()
            if child == 0:
                os.execvp(sys.argv[1], sys.argv[1:])
            seen, answers = b'', [b'clean', b'found']
            asked = 0
            while True:
                try:
                    read = os.read(terminal, 65536)
                except OSError:
                    break
                if not read:
                    break
                seen += read
                while seen.count(b'or stop?') > asked:
                    asked += 1
                    os.write(terminal, (answers.pop(0) if answers else b'stop') + b'\n')
            sys.stdout.buffer.write(seen)
            sys.exit(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]))
            """;
        string command = Path.Combine(AppContext.BaseDirectory, "Contam.Cli.dll");
        var start = new ProcessStartInfo("python3") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Support.RepositoryFiles.At("") };
        foreach (string word in new[] { "-c", Driver, Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet", command, "trace", Case, "--debris", "water" })
            start.ArgumentList.Add(word);
        start.Environment["TERM"] = "xterm";
        start.Environment.Remove("NO_COLOR");
        (int exit, string output) = RunOrSkip(start);
        Assert.True(exit == 0, output);
        // A terminal gets bold headings, and shows what is typed.
        Assert.Contains("\u001b[1mTracing water in outboard-gearcase\u001b[0m", output, StringComparison.Ordinal);
        Assert.Contains("or stop?\r\nclean\r\n", output, StringComparison.Ordinal);
        Assert.Contains("98.5 %", output, StringComparison.Ordinal);
        Assert.Contains("Clean-out: from what was found, water", output, StringComparison.Ordinal);
    }

    private static (int Exit, string Output) RunOrSkip(ProcessStartInfo start)
    {
        try
        {
            using Process process = Process.Start(start)!;
            Task<string> rest = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, output + rest.Result);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("python3, which opens the terminal, is not on this machine");
            throw;
        }
    }
}
