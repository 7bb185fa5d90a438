using Contam.Support;

namespace Contam.Cli.Tests.Mistakes;

/// <summary>Whatever a person gets wrong in a file or in a call is answered with its place, its cause and what to write instead.</summary>
public sealed class A_mistake : IDisposable
{
    private static readonly string Folder = RepositoryFiles.At("tests/Contam.Cli.Tests/Mistakes");
    private static readonly string Cases = Path.Combine(Folder, "mistakes.cases");

    private readonly DirectoryInfo here = Directory.CreateTempSubdirectory("contam");

    public static TheoryData<string> Titles => [.. MistakeCase.All(Cases).Select(one => one.Title)];

    public void Dispose() => here.Delete(recursive: true);

    [Theory]
    [MemberData(nameof(Titles))]
    public void Is_answered_with_place_cause_and_fix(string title)
    {
        MistakeCase one = MistakeCase.All(Cases).Single(each => each.Title == title);
        LayOut(one);

        (int exit, string said) = Call(one);

        if (Environment.GetEnvironmentVariable("CONTAM_UPDATE_CASES") == "1")
            MistakeCase.Update(Cases, one, said);
        else
            Assert.Equal(one.Said, said);
        Assert.True(exit is 1 or 2 || (exit == 0 && said.Contains(": warning: ", StringComparison.Ordinal)), $"{exit} is not what a mistake ends with");
        MistakeShape.Check(one, said);
    }

    [Fact]
    public void Is_one_of_at_least_120()
    {
        string[] titles = [.. MistakeCase.All(Cases).Select(one => one.Title)];
        Assert.True(titles.Length >= 120, $"{titles.Length} cases");
        Assert.Equal(titles, titles.Distinct());
    }

    [Fact]
    public void Is_none_in_the_file_that_they_are_made_from() =>
        Assert.Equal("1 file: no errors, no warnings.\n", CommandSession.Of(["check", Path.Combine(Folder, "engine.yaml")]).Out);

    private void LayOut(MistakeCase one)
    {
        File.WriteAllText(At("engine.yaml"), one.Applied(File.ReadAllText(Path.Combine(Folder, "engine.yaml"))));
        File.Copy(RepositoryFiles.At("systems/standards/north-quay.yaml"), At("standard.yaml"));
        File.Copy(RepositoryFiles.At("systems/modules/fresh-water.yaml"), At("module.yaml"));
        File.WriteAllText(At("plan.json"), "{\"format\": \"contam-plan-1\"}\n");
        File.WriteAllBytes(At("manual.pdf"), [.. "%PDF-1.7\n%"u8, 0xE2, 0xE3, 0xCF, 0xD3]);
        File.WriteAllBytes(At("parts.xlsx"), [.. "PK"u8, 3, 4, 20, 0, 6, 0]);
        File.WriteAllBytes(At("picture.png"), [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, 0, 0]);
        File.WriteAllBytes(At("latin1.yaml"), [.. "format: 1\ntitle: Sch"u8, 0xF6, .. "n\n"u8]);
        File.WriteAllText(At("empty.yaml"), "");
    }

    /// <summary>The call, with the files in a folder of their own; that folder is left out of what is answered.</summary>
    private (int Exit, string Said) Call(MistakeCase one)
    {
        string[] files = [.. here.GetFiles().Select(file => file.Name), "engin.yaml", "our-shop.yaml", "new-winch"];
        string[] words = [.. one.Words.Select(word => word == "." ? here.FullName : files.Contains(word) ? At(word) : word)];
        CommandSession session = CommandSession.Of(words);
        return (session.Exit, (session.Out + session.Error).Replace(here.FullName + Path.DirectorySeparatorChar, "", StringComparison.Ordinal).Replace(here.FullName, ".", StringComparison.Ordinal));
    }

    private string At(string file) => Path.Combine(here.FullName, file);
}
