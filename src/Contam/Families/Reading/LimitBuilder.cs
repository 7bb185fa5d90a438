using System.Collections.Immutable;
using System.Globalization;
using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Makes the limits of a family.</summary>
internal sealed class LimitBuilder(PartTable parts, Allowance allowance, Duplicates duplicates, ProblemList problems)
{
    private readonly List<Limit> limits = [];
    private readonly Dictionary<string, SourceSpan> placeOf = new(StringComparer.Ordinal);

    /// <summary>The limits that these files describe; one on a repeated part becomes one for each.</summary>
    public ImmutableArray<Limit> Build(IReadOnlyList<Scope> scopes)
    {
        foreach (Scope scope in scopes)
        {
            foreach (Entry<string, Form> entry in scope.File.Get(FamilyKeys.Limits, []))
            {
                if (entry.Value.Value is Form form)
                    Add(scope, entry.Key, form);
            }
        }

        return [.. limits];
    }

    private void Add(Scope scope, Located<string> key, Form form)
    {
        bool hasPart = parts.TryResolveIf(scope, form.Locate(LimitKeys.Part), out PartChoice choice);
        if (!form.TryGet(LimitKeys.Measures, out Measure measures))
            return;
        Threshold? good = Thresholds.Read(form.Locate(LimitKeys.Good), measures, problems);
        Threshold? reject = Thresholds.Read(form.Locate(LimitKeys.Reject), measures, problems);
        if (good is not null && reject is not null && Thresholds.Overlap(good, reject))
        {
            problems.Add(FamilyProblems.LimitsOverlap(
                form.ValuePlace(LimitKeys.Reject), good.Text, reject.Text, form.ValuePlace(LimitKeys.Good)));
        }

        RefuseWhereNoHold(measures, form);
        if (!hasPart || good is null)
            return;

        string baseId = key.Value.EndsWith("-#", StringComparison.Ordinal) ? key.Value[..^2] : key.Value;
        if (!allowance.Take(choice.IsMany ? choice.Group.Count : 1, key.Place))
            return;
        int first = choice.IsMany ? 1 : choice.Number;
        int last = choice.IsMany ? choice.Group.Count : choice.Number;
        for (int number = first; number <= last; number++)
        {
            string limitId = scope.Prefix + (choice.IsMany ? string.Create(CultureInfo.InvariantCulture, $"{baseId}-{number}") : baseId);
            if (!placeOf.TryAdd(limitId, key.Place))
            {
                duplicates.Raise(scope, key.Place, "limit", limitId, placeOf[limitId]);
                return;
            }

            limits.Add(new Limit(limitId, new PartId(choice.Group.IdOf(number)), measures, good, reject, form.Get(LimitKeys.Source, ""), key.Place)
            {
                At = form.Find(LimitKeys.At),
                Over = form.Find(LimitKeys.Over),
            });
        }
    }

    private void RefuseWhereNoHold(Measure measures, Form form)
    {
        if (measures is Measure.PressureDrop or Measure.VacuumDrop)
            return;
        foreach (Key key in (ReadOnlySpan<Key>)[LimitKeys.At, LimitKeys.Over])
        {
            if (form.Has(key))
                problems.Add(FamilyProblems.NotAHold(form.KeyPlace(key), key.Name));
        }
    }
}
