namespace Contam.Procedure;

/// <summary>
/// The order of the steps goes round in a circle. A family that the reader accepted never leads here, so this is a fault of the program,
/// or of a family that was put together without the reader (parts whose access goes round in a circle).
/// </summary>
public sealed class OrderCycleException : InvalidOperationException
{
    internal OrderCycleException(IReadOnlyList<string> circle)
        : base("the order of the steps goes round in a circle: " + string.Join(" -> ", circle) + " -> " + circle[0]) => Circle = circle;

    /// <summary>The steps of the circle, each before the next and the last before the first.</summary>
    public IReadOnlyList<string> Circle { get; }
}
