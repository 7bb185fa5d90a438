using System.Text;

namespace Contam.Cli.Completion;

/// <summary>
/// A line of bash up to the cursor, as words. bash itself parts words at <c>=</c> and <c>:</c> too, and takes an answer for the last piece alone: <see cref="Kept"/> says how
/// many characters of the last word lie before that piece.
/// </summary>
/// <param name="Words">The words after the command's own name, without their quotes; the last is the one at the cursor and may be empty. There is always one.</param>
/// <param name="Kept">How much of the last word bash keeps as it is.</param>
internal sealed record BashLine(string[] Words, int Kept)
{
    // The characters that bash parts words at, beside blanks, as far as words of this command hold them.
    private const string Breaks = "=:@";

    /// <summary>The words of a line; what stands before a <c>|</c>, <c>;</c> or <c>&amp;</c> belongs to another command.</summary>
    public static BashLine Of(string line)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        bool isOpen = false;
        int kept = 0;
        char quote = '\0';
        void End()
        {
            if (isOpen)
                words.Add(word.ToString());
            word.Clear();
            isOpen = false;
            kept = 0;
        }

        for (int i = 0; i < line.Length; i++)
        {
            char one = line[i];
            if (quote != '\0' && one == quote)
                quote = '\0';
            else if (quote == '\0' && one is '\'' or '"')
                (quote, isOpen) = (one, true);
            else if (one == '\\' && quote != '\'' && i + 1 < line.Length && (quote == '\0' || line[i + 1] is '"' or '\\' or '$' or '`'))
                (isOpen, word) = (true, word.Append(line[++i]));
            else if (quote == '\0' && one is ' ' or '\t')
                End();
            else if (quote == '\0' && one is '|' or ';' or '&')
            {
                End();
                words.Clear();
            }
            else
            {
                (isOpen, word) = (true, word.Append(one));
                if (quote == '\0' && Breaks.Contains(one, StringComparison.Ordinal))
                    kept = word.Length;
            }
        }

        words.Add(word.ToString());
        return new BashLine(words.Count > 1 ? [.. words[1..]] : [""], kept);
    }
}
