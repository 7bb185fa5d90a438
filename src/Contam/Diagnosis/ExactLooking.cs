namespace Contam.Diagnosis;

/// <summary>
/// The looks with the least expected minutes, by dynamic programming.
/// <para>
/// The state is what was found where: each place not looked at, found or clean, a number in base 3. The shares of the suspects follow from the state, as
/// findings multiply. The value of a state is 0 where looking ends, else the least, over the places that tell enough, of the minutes of the look and the
/// values of its two outcomes, each times its chance (R. Bellman's principle of optimality). A state is worked out once, however it is come to.
/// </para>
/// <para>Cost: at most 3 to the power of the places, times places times classes of suspects.</para>
/// </summary>
internal sealed class ExactLooking : ILookingPolicy
{
    private const sbyte NotYet = -2;
    private const sbyte Ends = -1;

    // Two plans this near cost the same: the first place in the file is taken.
    private const double Same = 1e-9;

    private readonly LookTable table;
    private readonly double sure;
    private readonly int[] powerOf3;
    private readonly double[] value;
    private readonly sbyte[] choice;
    private readonly double[][] sharesAt;

    public ExactLooking(LookTable table, double sure)
    {
        this.table = table;
        this.sure = sure;
        int places = table.Places.Length;
        powerOf3 = new int[places + 1];
        powerOf3[0] = 1;
        for (int place = 0; place < places; place++)
            powerOf3[place + 1] = powerOf3[place] * 3;
        value = new double[powerOf3[places]];
        choice = new sbyte[powerOf3[places]];
        Array.Fill(choice, NotYet);
        sharesAt = [.. Enumerable.Range(0, places + 1).Select(_ => new double[table.Shares.Length])];
        table.Shares.CopyTo(sharesAt[0], 0);
        ExpectedMinutes = ValueOf(0, 0);
    }

    /// <summary>The least minutes of looking to be expected.</summary>
    public double ExpectedMinutes { get; }

    public int Choose(ReadOnlySpan<byte> seen, ReadOnlySpan<double> shares)
    {
        int state = 0;
        for (int place = 0; place < seen.Length; place++)
            state += seen[place] * powerOf3[place];
        return choice[state];
    }

    // The depth is at most the number of places.
    private double ValueOf(int state, int depth)
    {
        if (choice[state] != NotYet)
            return value[state];
        double[] shares = sharesAt[depth];
        int best = Ends;
        double least = 0;
        if (!LookTable.IsAtLeast(table.LeaderOf(shares).Share, sure))
        {
            for (int place = 0; place < table.Places.Length; place++)
            {
                if (state / powerOf3[place] % 3 != 0 || table.BitsAt(place, shares) < Looking.LeastBits)
                    continue;
                double chance = table.ChanceAt(place, shares);
                double minutes = table.Minutes[place]
                    + (chance * After(place, found: true, state, depth))
                    + ((1 - chance) * After(place, found: false, state, depth));
                if (best < 0 || minutes < least - Same)
                    (best, least) = (place, minutes);
            }
        }

        choice[state] = (sbyte)best;
        value[state] = least;
        return least;
    }

    private double After(int place, bool found, int state, int depth)
    {
        int next = state + (powerOf3[place] * (found ? 1 : 2));
        if (choice[next] != NotYet)
            return value[next];
        table.After(place, found, sharesAt[depth], sharesAt[depth + 1]);
        return ValueOf(next, depth + 1);
    }
}
