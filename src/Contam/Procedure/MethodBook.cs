using System.Collections.Immutable;
using System.Globalization;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>The methods that a plan uses, numbered in the order of first use; each is said once.</summary>
internal sealed class MethodBook(PlaceholderText fill)
{
    private readonly Dictionary<string, string> numberOf = new(StringComparer.Ordinal);
    private readonly List<MethodWords> used = [];

    /// <summary>Those that were asked for, by number.</summary>
    public ImmutableArray<MethodWords> Used => [.. used];

    /// <summary>Its number; a method that is used for the first time gets the next. One text has one number, for whichever kinds it is written; a text that names a fluid is another for each.</summary>
    public string NumberOf(Method method, Job job)
    {
        string text = TextOf(method, job);
        if (numberOf.TryGetValue(text, out string? number))
            return number;
        number = string.Create(CultureInfo.InvariantCulture, $"M{used.Count + 1}");
        numberOf.Add(text, number);
        used.Add(new MethodWords(number, method.Title, text, method.Needs.Tools, [.. method.Needs.Supplies.Select(supply => fill.Fill(supply.Item, job))]));
        return number;
    }

    private string TextOf(Method method, Job job)
    {
        string text = Sentences.Close(fill.Fill(method.Say, job));
        if (method.Until.Length > 0)
            text += " " + Sentences.Close("until " + Sentences.Clause(fill.Fill(method.Until, job), "until"));
        return method.StopIf.Length > 0 ? text + " " + Sentences.Close("stop if " + Sentences.Clause(fill.Fill(method.StopIf, job), "stop if")) : text;
    }
}
