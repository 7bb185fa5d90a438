using Contam.Families;
using Contam.Families.Reading.Shapes;

namespace Contam.Authoring;

/// <summary>
/// Asks a person for an engine, in the order in which one follows a hose with a finger. What was answered is asked for by its key and never twice, so that the
/// interview can be stopped and begun again anywhere. Whatever is not known is written the cautious way.
/// </summary>
public sealed class Interview
{
    /// <summary>The key of what stood in the file before the first question: the ids of its parts, parted by spaces.</summary>
    public const string Before = "before";

    private static readonly IdShape Ids = new("the id of a part", "oil-filter");

    private readonly IInterviewer who;
    private readonly InterviewParts parts;

    /// <summary>An interview of this person.</summary>
    public Interview(IInterviewer who, Catalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(who);
        ArgumentNullException.ThrowIfNull(catalogue);
        this.who = who;
        parts = new InterviewParts(this, catalogue);
    }

    /// <summary>Asks until all is said, or the person stops.</summary>
    /// <returns>Whether all was said.</returns>
    public bool Run()
    {
        while (true)
        {
            try
            {
                AskAll();
                return true;
            }
            catch (InterviewStop stop) when (!stop.GoesOn)
            {
                return false;
            }
            catch (InterviewStop)
            {
                // An answer was taken back: what is kept leads to the same question again.
            }
        }
    }

    /// <summary>The family as it stands; <c>null</c> where the file cannot be read just now.</summary>
    internal Family? Family => who.Read(who.Text);

    /// <summary>The answer to a question: one that is kept, or one that is good now. An empty line is the answer that <paramref name="empty"/> stands for.</summary>
    /// <param name="key">What is asked.</param>
    /// <param name="question">The question.</param>
    /// <param name="hint">What may be answered.</param>
    /// <param name="edit">Makes the file's new text of an answer; says what is wrong with an answer by throwing <see cref="FormatException"/>. <c>null</c> where answers change nothing.</param>
    /// <param name="empty">What an empty line stands for; <c>null</c> where something must be said.</param>
    internal string Ask(string key, string question, string hint, Func<string, Func<string, string?>?>? edit, string? empty = "")
    {
        if (who.Kept(key) is { } kept)
            return kept;
        while (true)
        {
            string typed = who.Ask(question, hint) ?? throw new InterviewStop(goesOn: false);
            if (Command(typed))
                continue;
            string answer = typed.Length > 0 ? typed : empty ?? "";
            if (answer.Length == 0 && empty is null)
            {
                who.Tell("Something must be said here; ? means that you do not know.");
                continue;
            }

            try
            {
                Func<string, string?>? change = edit?.Invoke(answer);
                if (change is not null && !IsSound(change(who.Text)))
                    throw new FormatException("That cannot be written into the file as it stands.");
                who.Keep(key, answer, change);
                return answer;
            }
            catch (FormatException wrong)
            {
                who.Tell(wrong.Message);
            }
        }
    }

    /// <summary>The answer that was kept, or <c>null</c>.</summary>
    internal string? Kept(string key) => who.Kept(key);

    /// <summary>Says something.</summary>
    internal void Tell(string text) => who.Tell(text);

    /// <summary>The id that a person means; what can be none is said.</summary>
    internal static string Id(string typed, string what)
    {
        string id = CellWords.Id(typed);
        return Ids.IsId(id) ? id : throw new FormatException($"{Problems.Wording.Quoted(typed)} will not do as {what}: write letters, digits and spaces, beginning with a letter.");
    }

    private bool Command(string typed)
    {
        switch (typed.ToLowerInvariant())
        {
            case "stop":
                throw new InterviewStop(goesOn: false);
            case "undo":
                if (who.Undo())
                    throw new InterviewStop(goesOn: true);
                who.Tell("There is nothing to take back of this sitting. Write `change PART` to correct a part.");
                return true;
            case "tree":
                who.ShowTree();
                return true;
            case "help":
                who.Tell("undo takes the last answer back; tree shows the circuits so far; change PART asks for a part again; stop ends, and the same call goes on; ? means that you do not know, which is read the cautious way.");
                return true;
        }

        if (!typed.StartsWith("change ", StringComparison.OrdinalIgnoreCase))
            return false;
        string id = CellWords.Id(typed["change ".Length..].Trim());
        if (Family?.Find(new PartId(id)) is { } part)
            parts.Again(part.Id.Value);
        else
            who.Tell($"There is no part {id} yet.");
        return true;
    }

    private bool IsSound(string? text) => text is not null && who.Read(text) is not null;

    private void AskAll()
    {
        if (Kept(Before) is null || Kept("machine") is not null || Family is not { Circuits.IsEmpty: false })
            AskMachine();
        AskCircuits();
    }

    private void AskMachine() =>
        Ask("machine", "What sort of machine is it?", "engine, gearcase, gearbox or hydraulic-unit; Enter: engine", answer =>
        {
            string word = answer is "?" ? "engine" : CellWords.Id(answer);
            return word is "engine" or "gearcase" or "gearbox" or "hydraulic-unit" ? text => FamilyEdit.SetTop(text, "machine", word) : throw new FormatException("It is an engine, a gearcase, a gearbox or a hydraulic-unit.");
        }, "engine");

    private void AskCircuits()
    {
        for (int number = 1; ; number++)
        {
            bool mayEnd = number > 1 || Family is { Circuits.IsEmpty: false };
            string circuit = Ask(
                $"circuit {number}",
                !mayEnd ? "Which circuit do you follow first?" : "Which circuit do you follow next?",
                $"a name: fuel, oil, cooling, hydraulic …{(mayEnd ? "; Enter: that was all" : "")}",
                answer => answer.Length == 0 ? null : Named(answer),
                mayEnd ? "" : null);
            if (circuit.Length == 0 || circuit == "?")
                break;
            new InterviewWalk(this, parts, $"circuit {number}", CellWords.Id(circuit)).Run();
        }
    }

    // The circuit is written with its fluid or its first run.
    private static Func<string, string?>? Named(string answer)
    {
        Id(answer, "the name of a circuit");
        return null;
    }
}
