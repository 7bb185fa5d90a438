namespace Contam.Measurement;

/// <summary>What must be said beside a hold's verdict.</summary>
public enum HoldNote
{
    /// <summary>It was watched for less time than the limit asks.</summary>
    WatchedTooShort,

    /// <summary>It began from less pressure or vacuum than the limit asks.</summary>
    StartedTooLow,

    /// <summary>The loss is below 0 by more than the meter's uncertainty: something else than a leak moved the gauge.</summary>
    RoseInstead,

    /// <summary>No temperatures were given, so a change of temperature can hide a leak or look like one.</summary>
    NotCorrectedForTemperature,

    /// <summary>It holds, and yet water got in.</summary>
    HoldsAlthoughWaterGotIn,
}
