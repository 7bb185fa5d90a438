namespace Contam.Families;

/// <summary>A file as it was read, so that it can be kept and read again.</summary>
public sealed record SourceCopy
{
    private readonly LaterText text;

    /// <summary>A file of this text.</summary>
    /// <param name="name">Its path relative to the folder of the first file read, with <c>/</c> between folders.</param>
    /// <param name="text">Its whole text.</param>
    public SourceCopy(string name, string text)
        : this(name, LaterText.Of(text))
    {
    }

    internal SourceCopy(string name, LaterText text)
    {
        Name = name;
        this.text = text;
    }

    /// <summary>Its path relative to the folder of the first file read, with <c>/</c> between folders.</summary>
    public string Name { get; }

    /// <summary>Its whole text, a byte order mark included where it had one; its UTF-8 bytes are those of the file.</summary>
    public string Text => text.Value;
}
