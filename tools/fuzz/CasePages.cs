using System.Text;

namespace Contam.Fuzz;

/// <summary>The texts of the readers' test cases: <c>--- family</c>, <c>--- standard</c> and modules, as <c>tests/Contam.Tests/**/*.cases</c> hold them.</summary>
internal static class CasePages
{
    /// <summary>Every one of them below a folder; none where there is no folder.</summary>
    public static IEnumerable<Input> Read(string folder)
    {
        if (!Directory.Exists(folder))
            yield break;
        foreach (string page in Directory.EnumerateFiles(folder, "*.cases", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            foreach (string section in File.ReadAllText(page).Split("\n--- ").Skip(1))
            {
                int end = section.IndexOf('\n', StringComparison.Ordinal);
                if (end < 0)
                    continue;
                string head = section[..end];
                string body = section[(end + 1)..].Split("\n== ")[0].Replace('⇥', '\t').Replace('␍', '\r').Replace('␠', ' ').Replace('␇', '\u0007');
                if (head == "family")
                    yield return Of(Sort.Family, "format: 1\nfamily: f\n" + body);
                else if (head == "standard")
                    yield return Of(Sort.Standard, "format: 1\nstandard: s\n" + body);
                else if (head.EndsWith(".yaml", StringComparison.Ordinal))
                    yield return Of(body.Contains("family:", StringComparison.Ordinal) ? Sort.Family : Sort.Module, body);
            }
        }
    }

    private static Input Of(Sort sort, string text) => new(sort, Encoding.UTF8.GetBytes(text));
}
