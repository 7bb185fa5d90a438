namespace Contam.Procedure;

/// <summary>How many technicians are at work when: steps in time, each from its moment to the next.</summary>
internal sealed class HandsInUse(int technicians)
{
    private readonly List<double> moments = [0];
    private readonly List<int> inUse = [0];

    /// <summary>Takes a technician for so long, more than nothing, at the earliest time from <paramref name="earliest"/> on, and says when.</summary>
    public double Take(double earliest, double minutes)
    {
        int place = PlaceOf(earliest);
        double start = earliest;
        for (int at = place; at < moments.Count; at++)
        {
            if (at > place && moments[at] >= start + minutes)
                break;
            if (inUse[at] >= technicians)
                start = at + 1 < moments.Count ? moments[at + 1] : start;
        }

        int first = Split(start);
        int end = Split(start + minutes);
        for (int at = first; at < end; at++)
            inUse[at]++;
        // Moments at which nothing changes are forgotten, so that a day without a gap stays one step.
        Forget(end);
        Forget(first);
        return start;
    }

    private void Forget(int at)
    {
        if (at == 0 || at >= moments.Count || inUse[at] != inUse[at - 1])
            return;
        moments.RemoveAt(at);
        inUse.RemoveAt(at);
    }

    /// <summary>The step that this time lies in.</summary>
    private int PlaceOf(double time)
    {
        int found = moments.BinarySearch(time);
        return found >= 0 ? found : ~found - 1;
    }

    private int Split(double time)
    {
        int found = moments.BinarySearch(time);
        if (found >= 0)
            return found;
        moments.Insert(~found, time);
        inUse.Insert(~found, inUse[~found - 1]);
        return ~found;
    }
}
