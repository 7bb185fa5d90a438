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
}
