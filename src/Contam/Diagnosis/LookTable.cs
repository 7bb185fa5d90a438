using Contam.Families;
using Contam.Procedure;

namespace Contam.Diagnosis;

/// <summary>
/// The places that nobody has looked at yet and that tell suspects apart, with what each outcome says of each suspect.
/// <para>
/// Suspects of whom every outcome at every place says the same are one class: no look can part them, so that their shares within the class never move.
/// </para>
/// </summary>
internal sealed class LookTable
{
    private LookTable(Part[] places, double[] minutes, double[] shares, double[] topShares, int[][] leaders)
    {
        Places = places;
        Minutes = minutes;
        Shares = shares;
        TopShares = topShares;
        Leaders = leaders;
        Found = new double[places.Length][];
        Clean = new double[places.Length][];
        ChanceFound = new double[places.Length][];
        Doubt = new double[places.Length][];
    }

    /// <summary>The places, in file order.</summary>
    public Part[] Places { get; }

    /// <summary>Minutes of each look.</summary>
    public double[] Minutes { get; }

    /// <summary>The share of each class, adding to 1.</summary>
    public double[] Shares { get; }

    /// <summary>The largest share of one suspect within each class, of 1 for the class.</summary>
    public double[] TopShares { get; }

    /// <summary>The suspects of each class with that share, by their places among the sources, rising.</summary>
    public int[][] Leaders { get; }

    /// <summary>For each place and class the chance of debris found, by the rules of <see cref="Suspecting"/>.</summary>
    public double[][] Found { get; }

    /// <summary>For each place and class the chance of a clean finding, by the same rules.</summary>
    public double[][] Clean { get; }

    /// <summary>For each place and class the chance with which debris is expected to be found: <c>found / (found + clean)</c>, as outcomes must add to 1.</summary>
    public double[][] ChanceFound { get; }

    /// <summary>For each place and class the entropy of <see cref="ChanceFound"/>.</summary>
    public double[][] Doubt { get; }

    public static LookTable Of(FindingsModel model, double[] shares)
    {
        int count = model.Sources.Length;
        Evidence[][] rows = [.. model.LooksLeft.SelectMany(part => new[] { Row(part, found: true), Row(part, found: false) })];
        int[] telling = [.. Enumerable.Range(0, model.LooksLeft.Length).Where(place => count > 0 && Tells(rows[2 * place], rows[(2 * place) + 1]))];
        int[][] classes =
        [
            .. Enumerable.Range(0, count)
                .GroupBy(source => string.Concat(telling.Select(place => (rows[2 * place][source].Chance == Chances.Stray, rows[(2 * place) + 1][source].Chance == 1) switch
                {
                    (true, true) => 'n',
                    (true, false) => 's',
                    (false, true) => 'g',
                    _ => 'e',
                })), StringComparer.Ordinal)
                .Select(group => group.ToArray()),
        ];
        double[] classShares = [.. classes.Select(members => members.Sum(source => shares[source]))];
        int[][] leaders = [.. classes.Select(members => members.Where(source => IsAtLeast(shares[source], members.Max(other => shares[other]))).ToArray())];
        var times = new WorkTimes(model.Question.Standard);
        var table = new LookTable(
            [.. telling.Select(place => model.LooksLeft[place])],
            [.. telling.Select(place => times.Of(model.LooksLeft[place], StepAction.Inspect))],
            classShares,
            [.. leaders.Select((leading, i) => classShares[i] > 0 ? shares[leading[0]] / classShares[i] : 0)],
            leaders);
        for (int place = 0; place < telling.Length; place++)
        {
            table.Found[place] = [.. leaders.Select(leading => rows[2 * telling[place]][leading[0]].Chance)];
            table.Clean[place] = [.. leaders.Select(leading => rows[(2 * telling[place]) + 1][leading[0]].Chance)];
            table.ChanceFound[place] = [.. table.Found[place].Zip(table.Clean[place], (found, clean) => found / (found + clean))];
            table.Doubt[place] = [.. table.ChanceFound[place].Select(Information.Entropy)];
        }

        return table;

        Evidence[] Row(Part part, bool found) => model.Weigh(new Finding(part.Id, model.Question.Debris, found));

        static bool Tells(Evidence[] found, Evidence[] clean) => Enumerable.Range(1, found.Length - 1).Any(i => found[i].Chance != found[0].Chance || clean[i].Chance != clean[0].Chance);
    }

    /// <summary>The chance that debris is found at a place, given shares of the classes.</summary>
    public double ChanceAt(int place, ReadOnlySpan<double> shares)
    {
        double chance = 0;
        for (int i = 0; i < shares.Length; i++)
            chance += shares[i] * ChanceFound[place][i];
        return chance;
    }

    /// <summary>As <see cref="Information.Gain"/>, at a place.</summary>
    public double BitsAt(int place, ReadOnlySpan<double> shares)
    {
        double known = 0;
        for (int i = 0; i < shares.Length; i++)
            known += shares[i] * Doubt[place][i];
        return Math.Max(0, Information.Entropy(ChanceAt(place, shares)) - known);
    }

    /// <summary>The shares of the classes after an outcome at a place.</summary>
    public void After(int place, bool found, ReadOnlySpan<double> shares, Span<double> then)
    {
        double[] chance = found ? Found[place] : Clean[place];
        double sum = 0;
        for (int i = 0; i < shares.Length; i++)
        {
            then[i] = shares[i] * chance[i];
            sum += then[i];
        }

        for (int i = 0; i < shares.Length; i++)
            then[i] /= sum;
    }

    /// <summary>Whether a share is at least the wanted one, to the ninth digit: 9 parts in 10 are 90 % however the quotient is rounded.</summary>
    public static bool IsAtLeast(double share, double wanted) => share > wanted - 1e-9;

    /// <summary>The class of the suspect with the largest share, the first of equals, and that share.</summary>
    public (int Class, double Share) LeaderOf(ReadOnlySpan<double> shares)
    {
        int best = 0;
        for (int i = 1; i < shares.Length; i++)
        {
            if (shares[i] * TopShares[i] > shares[best] * TopShares[best])
                best = i;
        }

        return (best, shares[best] * TopShares[best]);
    }

    /// <summary>All suspects with the largest share, to the ninth digit, by their places among the sources, rising.</summary>
    public IEnumerable<int> LeadersOf(double[] shares, double largest) =>
        Enumerable.Range(0, shares.Length).Where(i => IsAtLeast(shares[i] * TopShares[i], largest)).SelectMany(i => Leaders[i]).Order();
}
