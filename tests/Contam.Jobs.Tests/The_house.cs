using System.Reflection;
using System.Text.RegularExpressions;

namespace Contam.Jobs.Tests;

/// <summary>Who sees what.</summary>
public partial class The_house
{
    [Theory]
    [InlineData(typeof(Families.Family))]
    [InlineData(typeof(Contam.Reports.Text.TextPage))]
    public void Keeps_databases_and_jobs_out_of_the_engine_and_its_reports(Type of) =>
        Assert.DoesNotContain(of.Assembly.GetReferencedAssemblies(), IsOfTheRecord);

    [Fact]
    public void Keeps_databases_out_of_the_command() =>
        Assert.DoesNotContain(typeof(Cli.ContamCommand).Assembly.GetReferencedAssemblies(), one => IsOfTheRecord(one) && one.Name != "Contam.Jobs");

    [Fact]
    public void Keeps_databases_in_their_folder()
    {
        string[] seen = [.. typeof(JobBook).Assembly.GetTypes()
            .Where(type => type.GetFields(BindingFlags.Instance | BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public).Any(field => field.FieldType.Namespace?.StartsWith("Microsoft.Data", StringComparison.Ordinal) == true || field.FieldType.Namespace == "Npgsql"))
            .Select(type => type.Namespace!).Distinct(StringComparer.Ordinal)];
        Assert.Equal(["Contam.Jobs.Stores"], seen);
    }

    [Fact]
    public void Shows_an_example_for_every_subcommand()
    {
        using var bench = new JobBench();
        string help = bench.Call("job", "--help").Out;
        string[] names = [.. CommandLine().Matches(help[help.IndexOf("Commands:", StringComparison.Ordinal)..]).Select(match => match.Groups["name"].Value)];
        Assert.Contains("tick", names);
        Assert.All(names, name => Assert.Contains($"contam job {name}", bench.Call("job", name, "--help").Out, StringComparison.Ordinal));
    }

    private static bool IsOfTheRecord(AssemblyName one) => one.Name is "Contam.Jobs" or "System.Data.Common" || one.Name == "Npgsql" || one.Name!.Contains("Sqlite", StringComparison.OrdinalIgnoreCase) || one.Name.StartsWith("SQLitePCL", StringComparison.Ordinal);

    [GeneratedRegex(@"^  (?<name>[a-z-]+) ", RegexOptions.Multiline)]
    private static partial Regex CommandLine();
}
