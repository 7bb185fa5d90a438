using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>
/// What a plan with its looks held fixed is to be expected to take.
/// <para>
/// The chance that a look that is due finds something: the likeliest way (<see cref="PassingOdds"/>) from any find before it, and from the sources where it is due
/// whatever is seen, or nothing was found before it; of several places and debris the likeliest. Looks are taken as independent given the finds before and that
/// something has left a source at all. A history is as likely as the product over the looks made in it; one without a find also comes about where nothing has left.
/// </para>
/// </summary>
internal sealed class Expecting
{
    private readonly FixedLooks looks;
    private readonly DecidedPlan plan;
    private readonly BenchWork work;
    private readonly double staysPut;
    private readonly double[] fromSource;
    private readonly double[,] fromLook;
    private readonly int[] hangsOn;
    private readonly SortedSet<int>[] inTheWay;
    private readonly HashSet<int> offAlways;
    private readonly double always;
    private readonly ImmutableArray<PartMinutes> hanging;

    public Expecting(FixedLooks looks, DecidedPlan plan, BenchWork work, Func<Part, Debris, double> passesOn)
    {
        this.looks = looks;
        this.plan = plan;
        this.work = work;
        hangsOn = [.. plan.Looks.Select(look => look.IsNeverDue ? 0 : look.Due.OnlyIf.IsEmpty ? LookMask.Always : look.Due.OnlyIf.Sum(LookMask.Of))];
        fromSource = new double[looks.Count];
        fromLook = new double[looks.Count, looks.Count];
        foreach (DebrisWays ways in looks.Ways)
        {
            double[] odds = PassingOdds.From(ways, ways.Sources.Select(source => source.Vertex), looks.Family.Parts, passesOn);
            for (int look = 0; look < looks.Count; look++)
                fromSource[look] = Math.Max(fromSource[look], looks.Places[look].Max(place => odds[place]));
            for (int before = 0; before < looks.Count; before++)
            {
                odds = PassingOdds.From(ways, looks.Places[before].Where(place => ways.IsReached[place]), looks.Family.Parts, passesOn);
                for (int look = 0; look < looks.Count; look++)
                    fromLook[before, look] = Math.Max(fromLook[before, look], looks.Places[look].Max(place => odds[place]));
            }
        }

        staysPut = PassingOdds.StaysPut(looks.Ways, looks.Family.Parts, passesOn);
        for (int look = 0; look < looks.Count; look++)
            fromSource[look] = PassingOdds.OnceLeft(fromSource[look], staysPut);
        inTheWay = [.. looks.Places.Select(places => Union(places.Select(work.InTheWayOf)))];
        PartLooks[] always = [.. plan.Parts.Where(part => part.When is { OnlyIf.IsEmpty: true })];
        offAlways =
        [
            .. always.Where(part => BenchWork.ComesOff(part.Part, Always(part))).Select(part => looks.Family.IndexOf(part.Part.Id)),
            .. work.Behind(always.SelectMany(part => part.Part.Access)),
        ];
        this.always = plan.Parts.Where(part => part.Treatments.All(one => one.When.IsAlways)).Sum(part => work.Treatment(part.Part, Always(part)));
        hanging = [.. plan.Parts.Where(part => part.Treatments.Any(one => !one.When.IsAlways)).Select(part => new PartMinutes(part, looks.Family.IndexOf(part.Part.Id), work))];
    }

    /// <summary>The chance of a find at a look that is due where these looks, as bits, found debris.</summary>
    private double Odds(int look, int found)
    {
        double odds = hangsOn[look] == LookMask.Always || found == 0 ? fromSource[look] : 0;
        foreach (int before in LookMask.Looks(found))
            odds = Math.Max(odds, fromLook[before, look]);
        return odds;
    }

    /// <summary>How likely a history is.</summary>
    public double Likelihood(LookHistory history)
    {
        double likelihood = 1;
        int found = 0;
        for (int look = 0; look < looks.Count; look++)
        {
            LookOutcome outcome = history.Outcomes[look];
            if (outcome is LookOutcome.Found)
                likelihood *= Odds(look, found);
            else if (outcome is LookOutcome.Clean or LookOutcome.Void)
                likelihood *= 1 - Odds(look, found);
            found |= outcome is LookOutcome.Found ? LookMask.Of(look) : 0;
        }

        return (likelihood * (1 - staysPut)) + (found == 0 ? staysPut : 0);
    }

    /// <summary>The minutes of a history: its looks, what comes off for them alone, and its treatments.</summary>
    public double Minutes(LookHistory history)
    {
        double minutes = always;
        var off = new HashSet<int>(offAlways);
        foreach (PartMinutes part in hanging)
        {
            (double takes, bool comesOff) = part.In(history.CountsAsFound);
            minutes += takes;
            if (comesOff)
                off.Add(part.Vertex);
        }

        IEnumerable<int> made = Enumerable.Range(0, looks.Count).Where(look => history.Outcomes[look] is LookOutcome.Clean or LookOutcome.Found or LookOutcome.Void);
        return minutes + made.Sum(look => looks.Places[look].Sum(work.Look)) + Union(made.Select(look => inTheWay[look])).Where(other => !off.Contains(other)).Sum(work.OffAndOn);
    }

    /// <summary>The minutes of a look by itself.</summary>
    public double MinutesOf(int look) => looks.Places[look].Sum(work.Look) + inTheWay[look].Where(other => !offAlways.Contains(other)).Sum(work.OffAndOn);

    /// <summary>The minutes of every treatment whose condition names a look.</summary>
    public double MinutesHangingOn(int look) =>
        plan.Parts.Sum(part => work.Treatment(part.Part, [.. part.Treatments.Select(one => one.Treatment)])
            - work.Treatment(part.Part, [.. part.Treatments.Where(one => !one.When.OnlyIf.Contains(look)).Select(one => one.Treatment)]));

    private static ImmutableArray<TreatmentKind> Always(PartLooks part) => [.. part.Treatments.Where(one => one.When.OnlyIf.IsEmpty).Select(one => one.Treatment)];

    /// <summary>What a part takes, by which of its treatments are done; each such set is reckoned once.</summary>
    private sealed class PartMinutes(PartLooks part, int vertex, BenchWork work)
    {
        private readonly (int OnlyIf, int Unless)[] when = [.. part.Treatments.Select(one => (one.When.OnlyIf.IsEmpty ? LookMask.Always : one.When.OnlyIf.Sum(LookMask.Of), one.When.Unless.Sum(LookMask.Of)))];
        private readonly (double Minutes, bool ComesOff)?[] known = new (double, bool)?[1 << part.Treatments.Length];

        public int Vertex => vertex;

        public (double Minutes, bool ComesOff) In(int found)
        {
            int done = 0;
            for (int i = 0; i < when.Length; i++)
                done |= LookMask.IsMet(when[i].OnlyIf, found) && (when[i].Unless & found) == 0 ? 1 << i : 0;
            if (known[done] is { } reckoned)
                return reckoned;
            ImmutableArray<TreatmentKind> treatments = [.. part.Treatments.Where((_, i) => (done >> i & 1) == 1).Select(one => one.Treatment)];
            (double, bool) now = (work.Treatment(part.Part, treatments), BenchWork.ComesOff(part.Part, treatments));
            known[done] = now;
            return now;
        }
    }

    private static SortedSet<int> Union(IEnumerable<IEnumerable<int>> sets) => [.. sets.SelectMany(set => set)];
}
