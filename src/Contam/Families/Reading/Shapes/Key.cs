namespace Contam.Families.Reading.Shapes;

/// <summary>A key that a mapping may have.</summary>
internal abstract class Key
{
    /// <summary>As it is written.</summary>
    public required string Name { get; init; }

    /// <summary>What it means, in a sentence without a full stop at its end.</summary>
    public required string Means { get; init; }

    /// <summary>A value that it may have, as YAML on one line.</summary>
    public required string Example { get; init; }

    /// <summary>What its value may look like.</summary>
    public abstract Shape AnyShape { get; }
}

/// <summary>A key that a mapping may have, and what its value is read as.</summary>
internal sealed class Key<T>(Shape<T> shape) : Key
    where T : notnull
{
    /// <summary>What its value may look like.</summary>
    public Shape<T> Shape { get; } = shape;

    /// <inheritdoc/>
    public override Shape AnyShape => Shape;
}
