using Contam.Families;

namespace Contam.Procedure;

/// <summary>Where every part is while what comes off is off: by itself on the bench, on a carrier that is off, or on the engine.</summary>
internal static class Carriers
{
    /// <summary>For the engine itself.</summary>
    public const int Engine = -1;

    /// <summary>
    /// For each part the part that it lies on the bench with: itself where it comes off, else the nearest carrier (what it rides on, or is inside of) that does;
    /// <see cref="Engine"/> where none does. Linear.
    /// </summary>
    public static int[] BenchOf(Family family, WorkItem?[] items)
    {
        const int NotKnown = -2;
        var bench = new int[items.Length];
        Array.Fill(bench, NotKnown);
        var chain = new Stack<int>();
        for (int index = 0; index < bench.Length; index++)
        {
            int at = index;
            int found = Engine;
            while (at >= 0)
            {
                if (bench[at] != NotKnown)
                {
                    found = bench[at];
                    break;
                }

                chain.Push(at);
                if (items[at] is { ComesOff: true })
                {
                    found = at;
                    break;
                }

                at = CarrierOf(family, at);
            }

            while (chain.TryPop(out int one))
                bench[one] = found;
        }

        return bench;
    }

    /// <summary>What a part rides on, or else is inside of; <see cref="Engine"/> where nothing carries it.</summary>
    public static int CarrierOf(Family family, int index) =>
        family.Parts[index].RidesOn is { } carrier ? family.IndexOf(carrier) : family.Parts[index].Assembly is { } whole ? family.IndexOf(whole) : Engine;
}
