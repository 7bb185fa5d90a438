using Contam.Families;
using Contam.Families.Reading;

namespace Contam.Tests.Families.Reading;

/// <summary>Whole families against what was read from them, looked over by a person; <c>CONTAM_UPDATE_CASES=1</c> writes the latter anew.</summary>
public sealed class A_whole_family
{
    [Theory]
    [InlineData("harbour")]
    [InlineData("twin")]
    public void Reads_as_recorded(string name)
    {
        string path = CaseFile.PathOf($"Families/Reading/Golden/{name}.yaml");
        Outcome<Family> outcome = FamilyReader.ReadFile(path, TestCatalogue.Value);
        Assert.True(outcome.IsSound, TestCatalogue.Told(outcome.Problems));
        string dump = FamilyDump.Of(outcome.Value!).Replace(path.Replace('\\', '/'), name + ".yaml", StringComparison.Ordinal);
        string recorded = Path.ChangeExtension(path, ".txt");
        if (CaseFile.IsUpdating)
            File.WriteAllText(recorded, dump);
        Assert.Equal(File.ReadAllText(recorded), dump);
    }

    [Fact]
    public void Bears_the_hash_of_its_file()
    {
        string path = CaseFile.PathOf("Families/Reading/Golden/harbour.yaml");
        Assert.Equal(HashOf(File.ReadAllBytes(path)), FamilyReader.ReadFile(path, TestCatalogue.Value).Value!.Sha256);
    }

    [Fact]
    public void With_modules_bears_the_hash_of_the_list_of_its_files()
    {
        using var folder = new TestFolder(
        [
            ("systems/families/f.yaml", "format: 1\nfamily: f\nuse: [{module: ../modules/b.yaml, prefix: x-}, {module: a.yaml}, {module: ../modules/b.yaml}]\n"),
            ("systems/families/a.yaml", "format: 1\nuse: [{module: ../modules/c.yaml}]\n"),
            ("systems/modules/b.yaml", "format: 1\nabout: b\n"),
            ("systems/modules/c.yaml", "format: 1\nabout: c\n"),
        ]);
        string[] read = ["f.yaml", "../modules/b.yaml", "a.yaml", "../modules/c.yaml"];
        string list = string.Concat(read.Select(name => $"{HashOf(File.ReadAllBytes(folder.PathOf("systems/families/" + name)))}  {name}\n"));

        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("systems/families/f.yaml"), TestCatalogue.Value);

        Assert.True(outcome.IsSound, TestCatalogue.Told(outcome.Problems));
        Assert.Equal(HashOf(System.Text.Encoding.UTF8.GetBytes(list)), outcome.Value!.Sha256);
    }

    [Fact]
    public void Is_the_same_read_from_a_text()
    {
        string path = CaseFile.PathOf("Families/Reading/Golden/harbour.yaml");
        Family fromFile = FamilyReader.ReadFile(path, TestCatalogue.Value).Value!;
        Family fromText = FamilyReader.ReadText(File.ReadAllText(path), path, TestCatalogue.Value).Value!;
        Assert.Equal(FamilyDump.Of(fromFile), FamilyDump.Of(fromText));
    }

    [Fact]
    public void With_carriage_returns_or_a_byte_order_mark_differs_in_its_hash_alone()
    {
        string path = CaseFile.PathOf("Families/Reading/Golden/harbour.yaml");
        string text = File.ReadAllText(path);
        Family plain = FamilyReader.ReadText(text, path, TestCatalogue.Value).Value!;
        Family other = FamilyReader.ReadText("\uFEFF" + text.Replace("\n", "\r\n", StringComparison.Ordinal), path, TestCatalogue.Value).Value!;
        Assert.NotEqual(plain.Sha256, other.Sha256);
        Assert.Equal(FamilyDump.Of(plain), FamilyDump.Of(other).Replace(other.Sha256, plain.Sha256, StringComparison.Ordinal));
    }

    private static string HashOf(byte[] bytes) => Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
}
