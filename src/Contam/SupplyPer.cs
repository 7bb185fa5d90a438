namespace Contam;

/// <summary>What a quantity of a supply is for.</summary>
public enum SupplyPer
{
    /// <summary>Each part that it is used at.</summary>
    Part,

    /// <summary>The whole plan, however often it is used.</summary>
    Plan,

    /// <summary>Each litre that the parts hold.</summary>
    Litre,

    /// <summary>Each opening of the parts: each joint to another part.</summary>
    Opening,
}
