namespace Contam.Families;

/// <summary>A file as it was read, so that it can be kept and read again.</summary>
/// <param name="Name">Its path relative to the folder of the first file read, with <c>/</c> between folders.</param>
/// <param name="Text">Its whole text, a byte order mark included where it had one; its UTF-8 bytes are those of the file.</param>
public sealed record SourceCopy(string Name, string Text);
