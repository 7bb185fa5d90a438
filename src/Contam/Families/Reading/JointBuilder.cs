using System.Collections.Immutable;
using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Finds the circuits and joints of a family in its runs and links.</summary>
internal sealed class JointBuilder
{
    private readonly PartTable parts;
    private readonly FluidTable fluids;
    private readonly EngineStates states;
    private readonly Allowance allowance;
    private readonly ProblemList problems;
    private readonly bool isWhole;
    private readonly List<CircuitDraft> circuits = [];
    private readonly Dictionary<string, CircuitDraft> circuitOf = new(StringComparer.Ordinal);
    private readonly HashSet<JointDraft> known = [];
    private readonly List<(JointDraft Joint, SourceSpan Place, bool IsLink)> joints = [];

    private JointBuilder(
        IReadOnlyList<Scope> scopes, bool isWhole, PartTable parts, FluidTable fluids, EngineStates states, Allowance allowance, ProblemList problems)
    {
        this.isWhole = isWhole && scopes.All(scope => Sections.IsWhole(scope.File, FamilyKeys.Circuits));
        this.parts = parts;
        this.fluids = fluids;
        this.states = states;
        this.allowance = allowance;
        this.problems = problems;
    }

    /// <summary>What these files say of circuits and links.</summary>
    /// <param name="scopes">The files.</param>
    /// <param name="isWhole">Whether every file could be read.</param>
    /// <param name="parts">What their ids stand for.</param>
    /// <param name="fluids">The fluids that they may name.</param>
    /// <param name="states">The states that the engine has.</param>
    /// <param name="allowance">How many joints are taken in.</param>
    /// <param name="problems">Takes the problems.</param>
    public static JointDrafts Read(
        IReadOnlyList<Scope> scopes, bool isWhole, PartTable parts, FluidTable fluids, EngineStates states, Allowance allowance, ProblemList problems)
    {
        var builder = new JointBuilder(scopes, isWhole, parts, fluids, states, allowance, problems);
        foreach (Scope scope in scopes)
            builder.DescribeCircuits(scope);
        foreach (CircuitDraft circuit in builder.circuits)
        {
            var terms = new JointTerms(circuit.Name, states, -1, ParticleSize.Unlimited);
            foreach ((Scope scope, ImmutableArray<Located<string>> items) in circuit.Runs)
                builder.AddRun(circuit, terms, scope, items);
        }

        foreach (Scope scope in scopes)
        {
            foreach (Located<Form> link in scope.File.Get(FamilyKeys.Links, []))
                builder.AddLink(scope, link.Value);
        }

        return new JointDrafts(builder.circuits, builder.joints);
    }

    private void DescribeCircuits(Scope scope)
    {
        foreach (Entry<string, Form> entry in scope.File.Get(FamilyKeys.Circuits, []))
        {
            if (!circuitOf.TryGetValue(entry.Key.Value, out CircuitDraft? circuit))
            {
                circuit = new CircuitDraft(entry.Key.Value, entry.Key.Place);
                circuitOf.Add(circuit.Name, circuit);
                circuits.Add(circuit);
            }

            if (entry.Value.Value is not Form form)
                continue;
            DescribeFluid(circuit, scope, form);
            circuit.Meant.AddRange(MeantKeys.Read(form.Get(MeantKeys.Meant, []), problems));
            ImmutableArray<Located<ImmutableArray<Located<string>>>> runs = form.Get(FlowKeys.Runs, []);
            circuit.Runs.EnsureCapacity(circuit.Runs.Count + runs.Length);
            foreach (Located<ImmutableArray<Located<string>>> run in runs)
                circuit.Runs.Add((scope, run.Value));
        }
    }

    private void DescribeFluid(CircuitDraft circuit, Scope scope, Form form)
    {
        if (form.Locate(FlowKeys.CircuitFluid) is not Located<string> said || fluids.Resolve(scope, said) is not string fluid)
            return;
        if (circuit.Fluid is not (string other, SourceSpan place))
            circuit.Fluid = (fluid, said.Place);
        // One line of a module that is used twice names a fluid for each use; it says the same of both.
        else if (other != fluid && said.Place != place)
            problems.Add(FamilyProblems.FluidsDiffer(said.Place, circuit.Name, fluid, other, place));
    }

    private void AddRun(CircuitDraft circuit, JointTerms terms, Scope scope, ImmutableArray<Located<string>> items)
    {
        PartChoice? before = null;
        SourceSpan placeBefore = default;
        for (int i = 0; i < items.Length; i++)
        {
            if (!parts.TryResolve(scope, items[i], out PartChoice choice))
            {
                before = null;
                continue;
            }

            SourceSpan place = items[i].Place;
            if (!allowance.Take(choice.Count, place))
                return;
            for (int part = choice.First; part < choice.First + choice.Count; part++)
            {
                circuit.AddPart(part);
                if (i == items.Length - 1)
                    circuit.AddEnd(part);
            }

            if (before is PartChoice from)
                AddNeighbours(terms, from, choice, placeBefore, place);
            (before, placeBefore) = (choice, place);
        }
    }

    private void AddNeighbours(JointTerms terms, PartChoice from, PartChoice to, SourceSpan place, SourceSpan toPlace)
    {
        if (!AreApart(from, to, toPlace) || !AreEqualInNumber(from, to, toPlace))
            return;
        foreach ((int upstream, int downstream, _) in Pairs(from, to, toPlace))
            Add(new JointDraft(upstream, downstream, terms), place, isLink: false);
    }

    private void AddLink(Scope scope, Form link)
    {
        // Every id is looked up before any is missed, so that one link tells all its faults.
        bool resolved = parts.TryResolveIf(scope, link.Locate(FlowKeys.From), out PartChoice from);
        resolved &= parts.TryResolveIf(scope, link.Locate(FlowKeys.To), out PartChoice to);
        resolved &= TryFindCircuit(link.Locate(FlowKeys.LinkCircuit), out CircuitDraft? circuit);
        PartChoice failed = default;
        bool isConditional = link.Has(FlowKeys.OnlyIfFailed);
        if (isConditional)
            resolved &= parts.TryResolveIf(scope, link.Locate(FlowKeys.OnlyIfFailed), out failed);
        EngineStates when = WhenOf(link);
        if (!resolved)
            return;

        SourceSpan place = link.ValuePlace(FlowKeys.To);
        if (!AreApart(from, to, place) || !AreEqualInNumber(from, to, place) || (isConditional && !IsEqualInNumber(from, to, failed, link)))
            return;
        var terms = new JointTerms(circuit!.Name, when, -1, link.Get(FlowKeys.Passage, ParticleSize.Unlimited));
        foreach ((int upstream, int downstream, int number) in Pairs(from, to, link.Place))
        {
            circuit.AddPart(upstream);
            circuit.AddPart(downstream);
            foreach (int ifFailed in Conditions(isConditional, failed, number, link.Place))
                AddBoth(new JointDraft(upstream, downstream, ifFailed < 0 ? terms : terms with { OnlyIfFailed = ifFailed }), link);
        }
    }

    private void AddBoth(JointDraft joint, Form link)
    {
        Add(joint, link.Place, isLink: true);
        if (link.Get(FlowKeys.BothWays, false))
            Add(joint with { From = joint.To, To = joint.From }, link.Place, isLink: true);
    }

    private void Add(JointDraft joint, SourceSpan place, bool isLink)
    {
        if (known.Add(joint))
            joints.Add((joint, place, isLink));
    }

    private bool TryFindCircuit(Located<string>? written, out CircuitDraft? circuit)
    {
        circuit = null;
        if (written is not Located<string> name)
            return false;
        if (circuitOf.TryGetValue(name.Value, out circuit))
            return true;
        if (isWhole)
            problems.Add(FamilyProblems.UnknownCircuit(name.Place, name.Value, problems.NearTo(name.Value, circuits.Select(known => known.Name))));
        return false;
    }

    /// <summary>The states in which a link is open, of those the engine has; a link that is never open gets a warning.</summary>
    private EngineStates WhenOf(Form link)
    {
        if (!link.TryGet(FlowKeys.When, out ImmutableArray<Located<EngineStates>> said))
            return states;
        EngineStates when = EngineStateWords.Union(said);
        if (said.Length > 0 && (when & states) == EngineStates.None)
            problems.Add(FamilyProblems.NeverOpen(link.ValuePlace(FlowKeys.When), EngineStateWords.Of(when), EngineStateWords.Of(states)));
        return when & states;
    }

    private bool AreApart(PartChoice from, PartChoice to, SourceSpan place)
    {
        bool isSame = ReferenceEquals(from.Group, to.Group) && from.Number == to.Number;
        if (isSame)
            problems.Add(FamilyProblems.JoinedToItself(place, from.IsMany ? from.Group.Key : from.Group.IdOf(from.Number)));
        return !isSame;
    }

    private bool AreEqualInNumber(PartChoice from, PartChoice to, SourceSpan place)
    {
        bool areEqual = !from.IsMany || !to.IsMany || from.Group.Count == to.Group.Count;
        if (!areEqual && from.Group.CountIsKnown && to.Group.CountIsKnown)
        {
            problems.Add(FamilyProblems.CountsDiffer(
                place, from.Group.Key, from.Group.Count, to.Group.Key, to.Group.Count, from.Group.Place, to.Group.Place));
        }

        return areEqual;
    }

    private bool IsEqualInNumber(PartChoice from, PartChoice to, PartChoice failed, Form link)
    {
        PartChoice numbered = from.IsMany ? from : to;
        return !numbered.IsMany || AreEqualInNumber(numbered, failed, link.ValuePlace(FlowKeys.OnlyIfFailed));
    }

    /// <summary>
    /// The pairs that two choices join: number to number where both are whole groups, else every one with every one. The number is that of
    /// the whole group, 0 where there is none.
    /// </summary>
    private IEnumerable<(int From, int To, int Number)> Pairs(PartChoice from, PartChoice to, SourceSpan place)
    {
        int count = from.IsMany ? from.Group.Count : to.IsMany ? to.Group.Count : 1;
        if (!allowance.Take(count, place))
            yield break;
        bool isNumbered = from.IsMany || to.IsMany;
        for (int number = 1; number <= count; number++)
        {
            int upstream = from.IndexFor(number);
            int downstream = to.IndexFor(number);
            // One of a group next to the whole group meets every other one, not itself.
            if (upstream != downstream)
                yield return (upstream, downstream, isNumbered ? number : 0);
        }
    }

    private IEnumerable<int> Conditions(bool isConditional, PartChoice failed, int number, SourceSpan place)
    {
        if (!isConditional)
            return [-1];
        if (failed.IsMany && number > 0)
            return [failed.IndexFor(number)];
        return allowance.Take(failed.Count, place) ? Enumerable.Range(failed.First, failed.Count) : [];
    }
}
