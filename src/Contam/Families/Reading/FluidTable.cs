using System.Collections.Immutable;
using Contam.Families.Quantities;
using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>The fluids of a family, and what ids stand for.</summary>
internal sealed class FluidTable
{
    private readonly Dictionary<string, Fluid> fluidOf = new(StringComparer.Ordinal);
    private readonly List<Fluid> fluids = [];
    private readonly Duplicates duplicates;
    private readonly ProblemList problems;
    private bool isWhole;

    private FluidTable(Duplicates duplicates, ProblemList problems)
    {
        this.duplicates = duplicates;
        this.problems = problems;
    }

    /// <summary>The fluids, in the order in which the files were read.</summary>
    public ImmutableArray<Fluid> Fluids => [.. fluids];

    /// <summary>The fluids that these files describe.</summary>
    /// <param name="scopes">The files.</param>
    /// <param name="isWhole">Whether every file could be read.</param>
    /// <param name="duplicates">Takes ids that stand twice.</param>
    /// <param name="problems">Takes the problems.</param>
    public static FluidTable Of(IReadOnlyList<Scope> scopes, bool isWhole, Duplicates duplicates, ProblemList problems)
    {
        var table = new FluidTable(duplicates, problems) { isWhole = isWhole };
        foreach (Scope scope in scopes)
        {
            table.isWhole &= Sections.IsWhole(scope.File, FamilyKeys.Fluids);
            foreach (Entry<string, Form> entry in scope.File.Get(FamilyKeys.Fluids, []))
                table.Describe(scope, entry);
        }

        return table;
    }

    /// <summary>The full id of a fluid that a file names, or <c>null</c> after a problem was raised.</summary>
    public string? Resolve(Scope scope, Located<string> id)
    {
        for (Scope? around = scope; around is not null; around = around.Parent)
        {
            if (fluidOf.ContainsKey(around.Prefix + id.Value))
                return around.Prefix + id.Value;
        }

        if (isWhole)
            problems.Add(FamilyProblems.UnknownFluid(id.Place, id.Value, problems.NearTo(id.Value, fluids.Select(fluid => fluid.Id))));
        return null;
    }

    private void Describe(Scope scope, Entry<string, Form> entry)
    {
        string id = scope.Prefix + entry.Key.Value;
        var fluid = new Fluid(id, entry.Key.Place)
        {
            Density = entry.Value.Value?.Find(FlowKeys.Density),
            Sort = entry.Value.Value is { } said && said.TryGet(FlowKeys.Is, out string? sort) ? sort : null,
            IsFree = entry.Value.Value?.Get(FlowKeys.Free, false) ?? false,
            Viscosity = entry.Value.Value is Form form ? ViscosityOf(form) : [],
        };
        if (fluidOf.TryAdd(id, fluid))
            fluids.Add(fluid);
        else
            duplicates.Raise(scope, entry.Key.Place, "fluid", id, fluidOf[id].Place);
    }

    private ImmutableArray<(Temperature At, KinematicViscosity Viscosity)> ViscosityOf(Form form)
    {
        var points = new List<(Temperature At, KinematicViscosity Viscosity)>();
        var firstAt = new Dictionary<Temperature, SourceSpan>();
        foreach (Entry<Temperature, KinematicViscosity> entry in form.Get(FlowKeys.Viscosity, []))
        {
            if (!firstAt.TryAdd(entry.Key.Value, entry.Key.Place))
                problems.Add(FamilyProblems.TemperatureTwice(entry.Key.Place, firstAt[entry.Key.Value]));
            else if (entry.IsSound)
                points.Add((entry.Key.Value, entry.Value.Value));
        }

        return [.. points.OrderBy(point => point.At)];
    }
}
