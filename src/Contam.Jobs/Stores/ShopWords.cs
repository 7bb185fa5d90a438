using System.Text.RegularExpressions;

namespace Contam.Jobs.Stores;

/// <summary>How places are spoken of.</summary>
public static partial class ShopWords
{
    /// <summary>
    /// A text in which no password of an address can be read: whatever stands between <c>://</c> and the last <c>@</c> before the next space, behind a colon,
    /// becomes three stars. For messages that repeat what somebody typed.
    /// </summary>
    public static string WithoutPassword(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Secret().Replace(KeyedSecret().Replace(text, "${key}***"), "${before}***@");
    }

    [GeneratedRegex(@"(?<before>://[^\s:@/]*:)\S*@", RegexOptions.CultureInvariant)]
    private static partial Regex Secret();

    [GeneratedRegex(@"(?<key>[?&]password=)[^\s&']*", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex KeyedSecret();
}
