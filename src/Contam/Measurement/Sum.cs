using System.Diagnostics.CodeAnalysis;

namespace Contam.Measurement;

/// <summary>
/// What a sum came to: a value, or the fault in what was given. Every sum whose figures a person supplies answers so,
/// because a wrong reading is an ordinary event at a bench and not an exception. Never both, never neither.
/// </summary>
/// <typeparam name="T">What the sum is of.</typeparam>
public sealed class Sum<T>
    where T : notnull
{
    private readonly T? value;

    private Sum(T? value, Fault? fault)
    {
        this.value = value;
        Fault = fault;
    }

    /// <summary>What is wrong with the figures given, or <c>null</c> where there is a value.</summary>
    public Fault? Fault { get; }

    /// <summary>Whether there is a value.</summary>
    public bool IsSound => Fault is null;

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is a fault instead; its text is the message. A caller that did not look at <see cref="Fault"/> meets this.</exception>
    public T Value => Fault is null ? value! : throw new InvalidOperationException(Fault.Text);

    /// <summary>Takes the value or the fault, whichever there is; says whether it is the value.</summary>
    public bool TryGet([MaybeNullWhen(false)] out T value, [NotNullWhen(false)] out Fault? fault)
    {
        value = this.value;
        fault = Fault;
        return fault is null;
    }

    /// <summary>The next sum on this value, or this fault.</summary>
    public Sum<TNext> Then<TNext>(Func<T, Sum<TNext>> next)
        where TNext : notnull
    {
        ArgumentNullException.ThrowIfNull(next);
        return Fault is null ? next(value!) : new Sum<TNext>(default, Fault);
    }

    /// <summary>A value.</summary>
    public static implicit operator Sum<T>(T value) => new(value, null);

    /// <summary>A fault.</summary>
    public static implicit operator Sum<T>(Fault fault) => new(default, fault);

    /// <summary>The value's own text, or the fault's.</summary>
    public override string ToString() => Fault is null ? $"{value}" : Fault.Text;
}
