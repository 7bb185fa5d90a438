using Contam.Jobs.Entries;

namespace Contam.Jobs.Work;

/// <summary>What the rules say of something that is to be written: the entry, or why not.</summary>
internal sealed record Ruling
{
    private Ruling(EntryBody? body, Refusal? refusal)
    {
        Body = body;
        Refusal = refusal;
    }

    public EntryBody? Body { get; }

    public Refusal? Refusal { get; }

    public static Ruling Take(EntryBody body) => new(body, null);

    public static Ruling Refuse(Refusal why) => new(null, why);
}
