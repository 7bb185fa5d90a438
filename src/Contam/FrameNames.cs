using System.Collections.Immutable;

namespace Contam;

/// <summary>The names of frame steps that have a meaning: the procedure knows when they come and what they are about. A standard gives their words.</summary>
public static class FrameNames
{
    /// <summary>Make safe: order what the list names. <c>{part}</c> takes longest to come.</summary>
    public const string OrderSlowest = "order-slowest";

    /// <summary>Make safe: order what the list names, where nothing takes long.</summary>
    public const string Order = "order";

    /// <summary>Make safe: stop the machine. Whatever else is in the section comes after it.</summary>
    public const string Stop = "stop";

    /// <summary>Make safe: one for each circuit that is opened.</summary>
    public const string Circuit = "circuit";

    /// <summary>Make safe: the same, where a look before stripping drains it.</summary>
    public const string CircuitLook = "circuit-look";

    /// <summary>Make safe: wait for a part that was ordered.</summary>
    public const string Arrival = "arrival";

    /// <summary>Confirm: why <c>{part}</c> failed.</summary>
    public const string Cause = "cause";

    /// <summary>Confirm: parts that would carry debris further if they have failed too.</summary>
    public const string AlsoFailed = "also-failed";

    /// <summary>Confirm: places where a clean look saves work.</summary>
    public const string LookFirst = "look-first";

    /// <summary>Confirm: whether the plan fits what was seen.</summary>
    public const string Decide = "decide";

    /// <summary>Refit: everything else in the circuit is back, so its filters are next.</summary>
    public const string FiltersNext = "filters-next";

    /// <summary>Prove: one for each part with a limit for a pressure or vacuum hold, on liquid.</summary>
    public const string Hold = "hold";

    /// <summary>Prove: the same, where the pressure is low enough for gas.</summary>
    public const string HoldGas = "hold-gas";

    /// <summary>Prove: the same for what a compressor of the machine fills with air at a pressure that is too high for a gas test: it fills it itself.</summary>
    public const string HoldRunning = "hold-running";

    /// <summary>Prove: filters again after the first running hours.</summary>
    public const string SecondFilters = "second-filters";

    /// <summary>Prove: a second look after the first running hours.</summary>
    public const string SecondLook = "second-look";

    /// <summary>With a step: a part that is only in the way.</summary>
    public const string InTheWay = "in-the-way";

    /// <summary>With a step: what an outside workshop does.</summary>
    public const string Outside = "outside";

    /// <summary>With a step: what is blanked while a flush runs.</summary>
    public const string Blank = "blank";

    /// <summary>With a step: what a find beyond a barrier means.</summary>
    public const string Barrier = "barrier";

    /// <summary>With a test whose pressure is above what gas may have.</summary>
    public const string OnLiquid = "on-liquid";

    /// <summary>With a step: new seals.</summary>
    public const string Seals = "seals";

    /// <summary>With a step: how a look is done where the part does not say.</summary>
    public const string How = "how";

    /// <summary>With a step: a look that is done as one before it, at <c>{part}</c>.</summary>
    public const string HowAgain = "how-again";

    /// <summary>With a part that is kept: a step of its own that looks at it for wear when it is clean. A kind for which the standard has none gets none.</summary>
    public const string Condition = "condition";

    /// <summary>All of them.</summary>
    public static ImmutableArray<string> All { get; } =
    [
        OrderSlowest, Order, Stop, Circuit, CircuitLook, Arrival, Cause, AlsoFailed, LookFirst, Decide, FiltersNext, Hold, HoldGas, HoldRunning, SecondFilters, SecondLook, InTheWay, Outside, Blank, Barrier, OnLiquid, Seals, How, HowAgain, Condition,
    ];

    /// <summary>Whether a step of the proof fills the circuits that it is about: <c>fill</c>, or a name that begins with <c>fill-</c>.</summary>
    public static bool IsFill(string? step) => step is not null && (step == "fill" || step.StartsWith("fill-", StringComparison.Ordinal));

    /// <summary>All of them as a phrase.</summary>
    public static string Phrase { get; } = string.Join(", ", All);
}
