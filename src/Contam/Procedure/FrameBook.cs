using Contam.Families;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Procedure;

/// <summary>
/// Which steps of the frame a standard has for this machine and this work. A standard without a frame gets that of the house: nobody is sent to work
/// without a step that makes safe.
/// </summary>
internal sealed class FrameBook
{
    private readonly ProcedureRequest request;
    private readonly string machine;
    private readonly FrameStep[] frame;

    public FrameBook(ProcedureRequest request)
    {
        this.request = request;
        machine = MachineName.Of(request.Family.Machine);
        frame = [.. request.Standard.Frame.IsEmpty ? BuiltInStandards.House.Frame : request.Standard.Frame];
    }

    /// <summary>The steps of a section for this work, one of each name, in the order of the standard.</summary>
    /// <param name="section">The section.</param>
    /// <param name="circuits">The circuits that are opened.</param>
    /// <param name="parts">The parts that are worked on.</param>
    public IEnumerable<FrameStep> All(FrameSection section, IReadOnlyCollection<Circuit> circuits, IReadOnlyCollection<Part> parts) =>
        frame.Where(step => step.Section == section).Select(step => step.Step).Distinct(StringComparer.Ordinal)
            .Select(name => Find(section, name, circuits, parts))
            .OfType<FrameStep>();

    /// <summary>The step of this name that fits closest, or <c>null</c>.</summary>
    public FrameStep? Find(FrameSection section, string name, IReadOnlyCollection<Circuit> circuits, IReadOnlyCollection<Part> parts) =>
        frame.Where(step => step.Section == section && step.Step == name && Fits(step.For, circuits, parts)).MaxBy(step => Bearing.Closeness(step.For));

    /// <summary>The circuits that a step is about: those that fit its fluid and name; none where it says neither.</summary>
    public IEnumerable<Circuit> CircuitsOf(FrameStep step, IEnumerable<Circuit> circuits) =>
        step.For.Fluid is null && step.For.Circuit is null ? [] : circuits.Where(circuit => Fits(step.For, circuit));

    private bool Fits(BearsOn on, IReadOnlyCollection<Circuit> circuits, IReadOnlyCollection<Part> parts) =>
        (on.Machine is null || on.Machine == machine)
        && (on.Has is not { } has || request.Family.Circuits.Any(circuit => FluidSort.Fits(has, request.Family, circuit)))
        && (on.Fluid is null && on.Circuit is null || circuits.Any(circuit => Fits(on, circuit)))
        && (on.Kind is null || parts.Any(part => part.Kind.Name == on.Kind))
        && (on.Debris is null || request.Spreads.Any(spread => spread.Debris.Name == on.Debris));

    private bool Fits(BearsOn on, Circuit circuit) =>
        (on.Circuit is null || on.Circuit == circuit.Name) && (on.Fluid is null || FluidSort.Fits(on.Fluid, request.Family, circuit));
}
