using System.Text.Json;
using Contam.Support;

namespace Contam.Cli.Tests;

/// <summary>What is handed out says what it holds of others.</summary>
public class The_notices
{
    [Fact]
    public void Name_every_package_that_the_command_holds()
    {
        string notices = File.ReadAllText(RepositoryFiles.At("THIRD-PARTY-NOTICES.md"));
        using JsonDocument locked = JsonDocument.Parse(File.ReadAllText(RepositoryFiles.At("src/Contam.Cli/packages.lock.json")));
        string[] packages =
        [
            .. locked.RootElement.GetProperty("dependencies").GetProperty("net10.0").EnumerateObject()
                .Where(package => package.Value.GetProperty("type").GetString() != "Project")
                .Select(package => package.Name)
                .Where(name => name != "Microsoft.NET.ILLink.Tasks"), // Looks at the build, and is no part of it.
        ];

        Assert.Contains("SQLite", packages);
        Assert.All(packages, package => Assert.Matches($@"[ ,|]{System.Text.RegularExpressions.Regex.Escape(package)}[ ,|]", notices));
    }
}
