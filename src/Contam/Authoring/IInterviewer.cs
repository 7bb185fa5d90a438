namespace Contam.Authoring;

/// <summary>Who is asked. The interview itself sees no terminal.</summary>
public interface IInterviewer
{
    /// <summary>The answer to a question, without the space around it; <c>null</c> where there is no more to come.</summary>
    /// <param name="question">The question, in a sentence.</param>
    /// <param name="hint">What may be answered.</param>
    string? Ask(string question, string hint);

    /// <summary>Says something.</summary>
    void Tell(string text);

    /// <summary>Keeps an answer and the file that it made. Whatever stood in the file before is still to be had by <see cref="Undo"/>.</summary>
    /// <param name="key">What was asked.</param>
    /// <param name="answer">What was answered.</param>
    /// <param name="edit">Makes the file's new text of what stands in it now; <c>null</c> where the answer changes nothing.</param>
    void Keep(string key, string answer, Func<string, string?>? edit);

    /// <summary>The answer that was kept, or <c>null</c>.</summary>
    string? Kept(string key);

    /// <summary>Takes the last answer back; answers whether there was one.</summary>
    bool Undo();

    /// <summary>What stands in the file now.</summary>
    string Text { get; }

    /// <summary>The family in a text as if it stood in the file; <c>null</c> where it cannot be read.</summary>
    Families.Family? Read(string text);

    /// <summary>Shows the circuits so far.</summary>
    void ShowTree();
}
