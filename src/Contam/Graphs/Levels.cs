namespace Contam.Graphs;

/// <summary>
/// The distinct particle sizes of one question, widest first, so that sizes can be compared and bucketed by a small number:
/// level 0 is unlimited, a higher level is a narrower size.
/// </summary>
internal sealed class Levels
{
    private readonly double[] sizes;
    private readonly Dictionary<double, int> levelOf;

    /// <summary>Levels for these sizes in µm; unlimited is always among them.</summary>
    public Levels(params IEnumerable<double>[] sizes)
    {
        var distinct = new HashSet<double> { double.PositiveInfinity };
        foreach (IEnumerable<double> group in sizes)
        {
            foreach (double size in group)
            {
                if (!double.IsPositiveInfinity(size))
                    distinct.Add(size);
            }
        }

        this.sizes = [.. distinct.OrderDescending()];
        levelOf = new Dictionary<double, int>(this.sizes.Length);
        for (int level = 0; level < this.sizes.Length; level++)
            levelOf[this.sizes[level]] = level;
    }

    /// <summary>How many distinct sizes there are, at least 1.</summary>
    public int Count => sizes.Length;

    /// <summary>The level of a size that was among those given.</summary>
    public int Of(double size) => double.IsPositiveInfinity(size) ? 0 : levelOf[size];

    /// <summary>The size in µm at a level.</summary>
    public double SizeAt(int level) => sizes[level];

    /// <summary>The level of each size.</summary>
    public int[] Of(double[] values)
    {
        var levels = new int[values.Length];
        for (int i = 0; i < values.Length; i++)
            levels[i] = Of(values[i]);
        return levels;
    }
}
