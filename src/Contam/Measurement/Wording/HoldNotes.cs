namespace Contam.Measurement.Wording;

/// <summary>How the notes are worded.</summary>
public static class HoldNotes
{
    /// <summary>The note as a sentence without a full stop.</summary>
    public static string Text(HoldNote note) => note switch
    {
        HoldNote.WatchedTooShort => "it was watched for less time than the limit asks; watch it for the whole time",
        HoldNote.StartedTooLow => "it began from less than the limit asks; begin again from there",
        HoldNote.RoseInstead => "the gauge moved the wrong way; look for a change of temperature, or a source that was not shut off",
        HoldNote.NotCorrectedForTemperature => "no temperatures were given; a degree of change moves the absolute pressure of shut-in gas by about a third of a percent",
        HoldNote.HoldsAlthoughWaterGotIn => "it holds, and yet water got in: seals that hold still can leak when a bent shaft whips them, "
            + "or hold one way and not the other, or cold and not warm; measure the run-out of every shaft that turns in them, and hold it the other way round",
        _ => throw new ArgumentOutOfRangeException(nameof(note), note, "not a note"),
    };
}
