using Contam.Families;
using Contam.Measurement.Water;

namespace Contam.Measurement.Wording;

/// <summary>
/// How water in a fluid is spoken of. That it corrodes, emulsifies and breaks films: TM 10-6640-233-10, table 2-13; what that comes to
/// at a kind of part: common practice, no source.
/// </summary>
internal static class WaterText
{
    /// <summary>What the form of the water means; a note that it is not known where it is not.</summary>
    internal static IEnumerable<string> Notes(WaterMeaning? meaning)
    {
        if (meaning is null)
        {
            yield return "what this fluid dissolves is not known, so all of the water is taken as free; say it with the maker's figure for saturation";
            yield break;
        }

        yield return meaning.Form switch
        {
            WaterForm.Dissolved => "the water is dissolved: it is not seen, and comes out when the fluid cools",
            WaterForm.DissolvedOrFree => "the water may be dissolved or free, for such fluids differ: treat it as free",
            _ => "the water is free or emulsified: films break and steel rusts",
        };
        if (meaning.CrackleTestMayShow)
            yield return "a drop on a hot plate may crackle";
        if (meaning.MayStillLookBright)
            yield return "it may still look bright, so a look proves nothing";
    }

    /// <summary>What free water does at a kind of part, or <c>null</c> where nothing is known to say.</summary>
    internal static string? HarmAt(Kind kind) => kind.Name switch
    {
        "bearing" => "the film breaks: it pits, and rusts where it stands still",
        "gear" or "gearbox" or "camshaft" or "crankshaft" => "flanks and journals rust and score",
        "clutch" => "it drags or slips, and its faces rust",
        "shaft" => "it rusts where seals run, and then cuts them",
        "injector" => "the needle rusts and sticks; water that flashes to steam breaks the tip",
        "injection-pump" or "pump" or "hydraulic-motor" => "what it carries no longer lubricates it: it scores and seizes",
        "turbocharger" => "the film breaks: its bearings score",
        "valve" or "relief-valve" or "regulator" or "actuator" => "it rusts and sticks",
        "filter" => "a paper element swells and blocks, and its bypass opens",
        "separator" => "its bowl fills: draw it off",
        "tank" or "sump" or "housing" or "crankcase" => "water settles at the bottom: draw it from the lowest point",
        _ => null,
    };
}
