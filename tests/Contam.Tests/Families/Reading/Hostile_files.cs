using System.Security.Cryptography;
using System.Text;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Tests.Families.Reading;

/// <summary>Files of a stranger who means harm, or of nobody in particular: readers answer with a problem and go on living.</summary>
public sealed class Hostile_files
{
    [Fact]
    public void Missing_ones_have_no_place()
    {
        using var folder = new TestFolder([]);
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("no.yaml"), TestCatalogue.Value);
        Assert.Equal("-: there is no file `no.yaml` | check the name and the folder [file-missing]", TestCatalogue.Told(outcome.Problems.Select(folder.Shortened)));
        Assert.Null(outcome.Value);

        outcome = FamilyReader.ReadFile(folder.PathOf("no/no.yaml"), TestCatalogue.Value);
        Assert.Equal("-: there is no file `no/no.yaml` | check the name and the folder [file-missing]", TestCatalogue.Told(outcome.Problems.Select(folder.Shortened)));
    }

    [Fact]
    public void Folders_are_none()
    {
        using var folder = new TestFolder([("a/b.yaml", "")]);
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("a"), TestCatalogue.Value);
        Assert.Equal("-: `a` is a folder | name a file in it [file-unreadable]", TestCatalogue.Told(outcome.Problems.Select(folder.Shortened)));
    }

    [Fact]
    public void Pipes_that_nobody_writes_to_are_not_waited_for()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "there are no such files on this system");
        using var folder = new TestFolder([("f.yaml", "format: 1\nfamily: f\nuse: [{module: pipe}]\n")]);
        using (var made = System.Diagnostics.Process.Start("mkfifo", folder.PathOf("pipe")))
            made.WaitForExit();
        Outcome<Family>? direct = null;
        Outcome<Family>? asModule = null;
        var reading = new Thread(() =>
        {
            direct = FamilyReader.ReadFile(folder.PathOf("pipe"), TestCatalogue.Value);
            asModule = FamilyReader.ReadFile(folder.PathOf("f.yaml"), TestCatalogue.Value);
        }) { IsBackground = true };
        reading.Start();
        Assert.True(reading.Join(TimeSpan.FromMinutes(3)), "the reader waits for somebody to write");
        Assert.Equal("-: `pipe` is a pipe or a device | save its text as a file and name that [file-unreadable]", TestCatalogue.Told(direct!.Problems.Select(folder.Shortened)));
        Assert.Equal("f.yaml:3:16: `pipe` is a pipe or a device | save its text as a file and name that [file-unreadable]", TestCatalogue.Told(asModule!.Problems.Select(folder.Shortened)));
    }

    [Theory]
    [InlineData("/dev/zero", "-: `/dev/zero` is too large: a file and its modules may have 4194304 bytes together | check that it is the right file [file-too-large]")]
    [InlineData("/dev/null", "/dev/null:1:1: the file says nothing | begin with `format: 1` [file-empty]")]
    public void Devices_end(string device, string told)
    {
        Assert.SkipUnless(File.Exists(device), "there is no such device on this system");
        Assert.Equal(told, TestCatalogue.Told(FamilyReader.ReadFile(device, TestCatalogue.Value).Problems));
    }

    [Fact]
    public void A_byte_order_mark_is_kept_with_the_file_and_counted_in_its_hash()
    {
        const string Text = "\uFEFFformat: 1\nfamily: f\nparts:\n  pump: {kind: pump}\ncircuits: {}\n";
        using var folder = new TestFolder([("f.yaml", "")]);
        byte[] bytes = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(Text);
        File.WriteAllBytes(folder.PathOf("f.yaml"), bytes);

        Family family = FamilyReader.ReadFile(folder.PathOf("f.yaml"), TestCatalogue.Value).Value!;

        Assert.Equal(Text, family.Sources[0].Text);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), family.Sha256);
    }

    [Fact]
    public void Empty_files_are_files()
    {
        using var folder = new TestFolder([("f.yaml", "")]);
        Assert.Equal("f.yaml:1:1: the file says nothing | begin with `format: 1` [file-empty]", TestCatalogue.Told(FamilyReader.ReadFile(folder.PathOf("f.yaml"), TestCatalogue.Value).Problems.Select(folder.Shortened)));
    }

    [Fact]
    public void Names_that_can_be_no_path_are_told()
    {
        Assert.Equal(
            "-: `a\\u0000b` cannot be read | check that it is a file and that no other program holds it [file-unreadable]",
            TestCatalogue.Told(FamilyReader.ReadFile("a\0b", TestCatalogue.Value).Problems));
        Assert.Equal(
            "-: nothing cannot be read | check that it is a file and that no other program holds it [file-unreadable]",
            TestCatalogue.Told(FamilyReader.ReadFile("", TestCatalogue.Value).Problems));
        Assert.Equal("", TestCatalogue.Told(FamilyReader.ReadText("format: 1\nfamily: f\n", "", TestCatalogue.Value).Problems));
    }

    [Theory]
    [InlineData(new byte[] { 0x66, 0x3A, 0x0A, 0x61, 0xFF, 0x62 }, "f.yaml:2:2: the byte 0xFF is not UTF-8 | save the file as UTF-8 [not-text]")]
    [InlineData(new byte[] { 0xC3, 0xA4, 0xC3 }, "f.yaml:1:2: the byte 0xC3 is not UTF-8 | save the file as UTF-8 [not-text]")]
    [InlineData(new byte[] { 0xED, 0xA0, 0x80 }, "f.yaml:1:1: the byte 0xED is not UTF-8 | save the file as UTF-8 [not-text]")]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61, 0x00 }, "f.yaml:1:1: the file is written in UTF-16 | save it as UTF-8 [not-text]")]
    [InlineData(new byte[] { 0xFE, 0xFF, 0x00, 0x61 }, "f.yaml:1:1: the file is written in UTF-16 | save it as UTF-8 [not-text]")]
    [InlineData(new byte[] { 0x7F, 0x45, 0x4C, 0x46, 0x00 }, "f.yaml:1:1: this is not a text file: it holds NUL bytes | check that it is the right file, saved as UTF-8 text [not-text]")]
    [InlineData(new byte[] { 0xEF, 0xBB, 0xBF }, "f.yaml:1:1: the file says nothing | begin with `format: 1` [file-empty]")]
    public void Bytes_that_are_no_text_are_told(byte[] bytes, string told)
    {
        using var folder = new TestFolder([]);
        File.WriteAllBytes(folder.PathOf("f.yaml"), bytes);
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("f.yaml"), TestCatalogue.Value);
        Assert.Equal(told, TestCatalogue.Told(outcome.Problems.Select(folder.Shortened)));
    }

    [Fact]
    public void Half_a_character_in_a_text_is_told()
    {
        Assert.Equal(
            "f.yaml:1:3: a character that cannot be seen stands here: U+D83D | delete it [control-character]",
            TestCatalogue.Told(TestCatalogue.Read("a: \uD83Dx"[1..]).Problems));
        Assert.Equal(
            "f.yaml:1:9: a character that cannot be seen stands here: U+D83D | delete it [control-character]",
            TestCatalogue.Told(TestCatalogue.Read("format: \uD83D").Problems));
    }

    [Fact]
    public void Large_ones_are_refused_unread()
    {
        var limits = new ReadLimits { FileBytes = 30 };
        string text = "format: 1\nfamily: f # äöü and so on\n";
        Assert.Equal(
            "-: `f.yaml` is too large: a file and its modules may have 30 bytes together | check that it is the right file [file-too-large]",
            TestCatalogue.Told(FamilyReader.ReadText(text, "f.yaml", TestCatalogue.Value, limits).Problems));

        using var folder = new TestFolder([("f.yaml", text)]);
        Assert.Equal(
            "-: `f.yaml` is too large: a file and its modules may have 30 bytes together | check that it is the right file [file-too-large]",
            TestCatalogue.Told(FamilyReader.ReadFile(folder.PathOf("f.yaml"), TestCatalogue.Value, limits).Problems.Select(folder.Shortened)));
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(-1, false)]
    public void As_large_as_may_be_are_read_and_none_a_byte_larger(int more, bool isRead)
    {
        const string Text = "format: 1\nfamily: f # äöü and so on\n";
        using var folder = new TestFolder([("f.yaml", Text)]);
        int bytes = Encoding.UTF8.GetByteCount(Text);
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("f.yaml"), TestCatalogue.Value, new ReadLimits { FileBytes = bytes + more });
        Assert.Equal(isRead, outcome.Problems.All(problem => problem.Code != ProblemCodes.FileTooLarge));
    }

    [Fact]
    public void Ones_that_say_they_are_empty_are_read_to_their_end()
    {
        const string Claimed = "/proc/filesystems";
        Assert.SkipUnless(File.Exists(Claimed), "there is no such file on this system");
        Assert.Equal(0, new FileInfo(Claimed).Length);
        var budget = new ReadBudget(ReadLimits.Default);
        SourceText source = SourceFile.Read(Claimed, "f.yaml", budget, null, new ProblemList(10))!;
        Assert.Equal(File.ReadAllText(Claimed), source.Text);
        Assert.Equal(ReadLimits.Default.FileBytes - source.Text.Length, budget.BytesLeft);
    }

    [Fact]
    public void Modules_count_towards_the_size()
    {
        using var folder = new TestFolder([("f.yaml", "format: 1\nfamily: f\nuse: [{module: m.yaml}]\n"), ("m.yaml", "format: 1\nabout: a long story\n")]);
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("f.yaml"), TestCatalogue.Value, new ReadLimits { FileBytes = 60 });
        Assert.Equal(
            "f.yaml:3:16: `m.yaml` is too large: a file and its modules may have 60 bytes together | check that it is the right file [file-too-large]",
            TestCatalogue.Told(outcome.Problems.Select(folder.Shortened)));
    }

    [Fact]
    public void Many_values_are_refused()
    {
        Outcome<Family> outcome = FamilyReader.ReadText("format: 1\nfamily: f\n", "f.yaml", TestCatalogue.Value, new ReadLimits { Values = 3 });
        Assert.Equal(
            "f.yaml:2:1: the file and its modules hold more than 3 values | check that it is the right file [file-too-large]",
            TestCatalogue.Told(outcome.Problems));
    }

    [Fact]
    public void Many_problems_are_counted_not_shown()
    {
        Outcome<Family> outcome = FamilyReader.ReadText("format: 1\nfamily: f\na: 1\nb: 2\nc: 3\nd: 4\n", "f.yaml", TestCatalogue.Value, new ReadLimits { Problems = 2 });
        Assert.Equal(3, outcome.Problems.Length);
        Assert.Equal("f.yaml:5:1: 2 more problems are not shown | mend those shown and check again [too-many-problems]", TestCatalogue.Told([outcome.Problems[2]]));
        Assert.Null(outcome.Value);
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    [InlineData("? ")]
    [InlineData("a: [{b: ")]
    public void Depth_is_refused_early(string opening)
    {
        string text = string.Concat(Enumerable.Repeat(opening, 100_000));
        Problem problem = Assert.Single(TestCatalogue.Read(text).Problems);
        Assert.Contains(problem.Code, (string[])[ProblemCodes.TooDeep, ProblemCodes.Syntax, ProblemCodes.BracketNotClosed]);
    }

    [Fact]
    public void Aliases_are_not_followed()
    {
        var bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 40; i++)
            bomb.Append($"a{i}: &a{i} [*a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}]\n");
        Outcome<Family> outcome = TestCatalogue.Read(bomb.ToString());
        Assert.Null(outcome.Value);
        Assert.Equal(390, outcome.Problems.Count(problem => problem.Code == ProblemCodes.Alias));
    }

    [Theory]
    [InlineData("parts: {a-#: {kind: pump, count: 10000}, b-#: {kind: pump, count: 10000}, c: {kind: pump}}", "f.yaml:3:75: from here on there are more than 20000 parts, repeats written out | lower the counts [too-many]")]
    [InlineData("parts: {a-#: {kind: pump, count: 9000}, b-#: {kind: pump, count: 9000, access: [a-1, a-2, a-3]}}", "f.yaml:3:91: from here on there are more than 20000 joints, limits, seals and parts in the way, repeats written out | lower the counts [too-many]")]
    [InlineData("parts: {a-#: {kind: pump, count: 9000, seals: [a, b, c]}}", "f.yaml:3:47: from here on there are more than 20000 joints, limits, seals and parts in the way, repeats written out | lower the counts [too-many]")]
    [InlineData("parts: {a-#: {kind: pump, count: 9000}, b: {kind: pump}}\ncircuits: {oil: {runs: [[a-#, b, a-#, b, a-#]]}}", "f.yaml:4:34: from here on there are more than 20000 joints, limits, seals and parts in the way, repeats written out | lower the counts [too-many]")]
    public void Short_lines_that_stand_for_millions_are_refused(string text, string told)
    {
        var limits = new ReadLimits { Parts = 20_000, Joints = 20_000 };
        Outcome<Family> outcome = FamilyReader.ReadText("format: 1\nfamily: f\n" + text + "\n", "f.yaml", TestCatalogue.Value, limits);
        Assert.Equal(told, TestCatalogue.Told(outcome.Problems));
    }

    [Fact]
    public void Modules_that_multiply_are_refused()
    {
        var files = new List<(string, string)>();
        for (int i = 0; i < 8; i++)
        {
            string uses = string.Concat(Enumerable.Range(0, 20).Select(n => $"  - {{module: m{i + 1}.yaml, prefix: p{n}-}}\n"));
            files.Add(($"m{i}.yaml", "format: 1\n" + (i == 0 ? "family: f\n" : "") + "use:\n" + uses));
        }

        files.Add(("m8.yaml", "format: 1\n"));
        using var folder = new TestFolder(files);
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("m0.yaml"), TestCatalogue.Value);
        Problem problem = Assert.Single(outcome.Problems);
        Assert.Equal(("too-many", "modules are used more than 1000 times"), (problem.Code, problem.Text));
    }

    [Fact]
    public void Links_out_of_the_root_are_followed_before_they_are_judged()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "making links needs rights on this system");
        using var folder = new TestFolder([("secret/m.yaml", "format: 1\n"), ("home/f.yaml", "format: 1\nfamily: f\nuse:\n  - module: a/m.yaml\n  - module: b.yaml\n  - module: c.yaml\n"), ("home/d.yaml", "format: 1\n")]);
        Directory.CreateSymbolicLink(folder.PathOf("home/a"), folder.PathOf("secret"));
        File.CreateSymbolicLink(folder.PathOf("home/b.yaml"), "../secret/m.yaml");
        File.CreateSymbolicLink(folder.PathOf("home/c.yaml"), "d.yaml");
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("home/f.yaml"), TestCatalogue.Value);
        Assert.Equal(
            """
            home/f.yaml:4:13: `a/m.yaml` lies outside the folder of the family file | move the module inside it [module-outside]
            home/f.yaml:5:13: `b.yaml` lies outside the folder of the family file | move the module inside it [module-outside]
            """.ReplaceLineEndings("\n"),
            TestCatalogue.Told(outcome.Problems.Select(folder.Shortened)));
    }

    [Fact]
    public void Unknown_names_among_many_known_ones_are_told_in_time()
    {
        var text = new StringBuilder("format: 1\nfamily: f\nparts:\n");
        for (int i = 0; i < 20_000; i++)
            text.Append($"  part-number-{i}: {{kind: pump, access: [port-nummer-{i}x]}}\n");
        Outcome<Family> outcome = TestCatalogue.Read(text.ToString());
        Assert.Equal(ReadLimits.Default.Problems + 1, outcome.Problems.Length);
    }
}
