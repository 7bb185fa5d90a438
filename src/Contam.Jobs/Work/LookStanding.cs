namespace Contam.Jobs.Work;

/// <summary>How a look that decides how far to go stands in a job.</summary>
public enum LookStanding
{
    /// <summary>It is to be made, and has no outcome yet.</summary>
    Due,

    /// <summary>Whether it is to be made hangs on an earlier look that has no outcome yet.</summary>
    Waits,

    /// <summary>It hangs on earlier looks that were clean, so it is not made.</summary>
    NotDue,

    /// <summary>It counts as found without being made: a find speaks against a clean outcome already.</summary>
    Settled,

    /// <summary>Every place was seen, and clean of every debris of the look.</summary>
    Clean,

    /// <summary>Every place was clean, but a find made elsewhere disproves it. It counts as found.</summary>
    Void,

    /// <summary>Debris was found.</summary>
    Found,

    /// <summary>It could not be made, or leaves a doubt. It counts as found, and is no find.</summary>
    InDoubt,
}

/// <summary>When a step of a plan with looks is done.</summary>
internal enum StepCondition
{
    /// <summary>It is done.</summary>
    Met,

    /// <summary>A look that has no outcome yet decides.</summary>
    Waits,

    /// <summary>By the looks it need not be done.</summary>
    Struck,
}

/// <summary>What the standing of a look means.</summary>
internal static class LookStandings
{
    private static readonly string[] Words = ["due", "waits", "not-due", "settled", "clean", "void", "found", "in-doubt"];

    /// <summary>As entries have it.</summary>
    public static string Word(LookStanding standing) => Words[(int)standing];

    /// <summary>The standing that a word names; a word that is none stands for <see cref="LookStanding.Due"/>, which keeps the gate shut.</summary>
    public static LookStanding Of(string word) => Array.IndexOf(Words, word) is >= 0 and var place ? (LookStanding)place : LookStanding.Due;

    /// <summary>Whether what hangs on it is done.</summary>
    public static bool CountsAsFound(LookStanding standing) => standing is LookStanding.Settled or LookStanding.Void or LookStanding.Found or LookStanding.InDoubt;

    /// <summary>Whether nothing more is to be said of it.</summary>
    public static bool IsDecided(LookStanding standing) => standing is not (LookStanding.Due or LookStanding.Waits);
}
