using Contam.Families;

namespace Contam.Support.Generation;

/// <summary>Joins parts that stand in flow order: chains with branches, loops, diamonds, both-ways joints, in islands.</summary>
internal sealed class JointGrower(Random random, Traits traits, IReadOnlyList<PartId> flow)
{
    private readonly List<Joint> joints = [];

    internal IReadOnlyList<Joint> Grow()
    {
        int islandSize = Math.Max(1, (flow.Count + traits.Islands - 1) / traits.Islands);
        for (int start = 0; start < flow.Count; start += islandSize)
            GrowIsland(start, Math.Min(flow.Count, start + islandSize));
        return random.Happens(0.3) ? random.Shuffled(joints) : joints;
    }

    private void GrowIsland(int start, int end)
    {
        for (int i = start + 1; i < end; i++)
        {
            int from = random.Happens(traits.Branch) ? random.Next(start, i) : i - 1;
            Join(from, i);
            if (random.Happens(traits.Loop))
                Join(i, random.Next(start, i + 1));
            if (random.Happens(traits.Diamond) && i - start >= 3)
            {
                Join(i - 3, i - 1);
                Join(i - 2, i);
            }

            if (random.Happens(traits.SelfLoop))
                Join(i, i);
        }
    }

    private void Join(int from, int to)
    {
        var joint = new Joint(0, flow[from], flow[to], CircuitAt(to), ShopFloor.Written(1));
        if (random.Happens(traits.PlainLink))
            joint = joint with { IsLink = true };
        if (random.Happens(traits.Conditional))
            joint = joint with { IsLink = true, OnlyIfFailed = random.Of(flow) };
        if (random.Happens(traits.When))
            joint = joint with { IsLink = true, When = (EngineStates)random.Next(0, 7) };
        if (random.Happens(traits.LinkPassage))
            joint = joint with { IsLink = true, Passage = random.Size() };
        if (random.Happens(traits.BothWays))
        {
            joint = joint with { IsLink = true };
            joints.Add(joint);
            joints.Add(joint with { From = joint.To, To = joint.From });
            return;
        }

        joints.Add(joint);
        if (random.Happens(traits.Parallel))
            joints.Add(joint);
    }

    // Circuits follow one another along the flow, and one joint in twenty is a crossing.
    private string CircuitAt(int index)
    {
        string[] names = ["flow", "fuel", "oil"];
        int circuit = random.Happens(0.05) ? random.Next(traits.Circuits) : index * traits.Circuits / flow.Count;
        return names[circuit];
    }
}
