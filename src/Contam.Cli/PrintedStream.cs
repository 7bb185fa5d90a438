namespace Contam.Cli;

/// <summary>An answer cannot be printed: where it goes is closed or full.</summary>
internal sealed class CannotPrintException(string message, Exception inner) : Exception(message, inner);

/// <summary>What was written into a record by a call, in case the call cannot say so.</summary>
internal sealed class RecordedSoFar
{
    /// <summary>The sequence of the last entry; 0 for none.</summary>
    public long Entry { get; set; }
}

/// <summary>
/// Where answers or messages go out of the process. That it is closed or full is no fault of the program: of answers it is said so by an exception of its own;
/// messages, which have nowhere else to go, are lost. A reader that has gone away is passed over by the runtime itself.
/// </summary>
internal sealed class PrintedStream(Stream to, bool mustPrint) : Stream
{
    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(byte[] buffer, int offset, int count) => Try(() => to.Write(buffer, offset, count));

    public override void Flush() => Try(to.Flush);

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    private void Try(Action write)
    {
        try
        {
            write();
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ObjectDisposedException)
        {
            if (mustPrint)
                throw new CannotPrintException(cannot.Message, cannot);
        }
    }
}
