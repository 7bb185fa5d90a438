namespace Contam.Diagnosis;

/// <summary>Takes the look with most bits for each minute; of equals the one with most bits, then the first in the file.</summary>
internal sealed class GreedyLooking(LookTable table, double sure) : ILookingPolicy
{
    public int Choose(ReadOnlySpan<byte> seen, ReadOnlySpan<double> shares)
    {
        if (LookTable.IsAtLeast(table.LeaderOf(shares).Share, sure))
            return -1;
        int best = -1;
        (double Rate, double Bits) most = default;
        for (int place = 0; place < seen.Length; place++)
        {
            if (seen[place] != 0)
                continue;
            double bits = table.BitsAt(place, shares);
            if (bits < Looking.LeastBits)
                continue;
            // Rounded, so that looks alike but for the last digit stay in file order on every machine.
            var here = (Math.Round(table.Minutes[place] > 0 ? bits / table.Minutes[place] : double.PositiveInfinity, 9), Math.Round(bits, 9));
            if (best < 0 || here.CompareTo(most) > 0)
                (best, most) = (place, here);
        }

        return best;
    }
}
