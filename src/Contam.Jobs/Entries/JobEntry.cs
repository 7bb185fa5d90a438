namespace Contam.Jobs.Entries;

/// <summary>One entry of a job as it is kept. Entries are only ever added.</summary>
/// <param name="Sequence">Its place, from 1 without a gap.</param>
/// <param name="Previous">The hash of the entry before; <see cref="EntryChain.Beginning"/> for the first.</param>
/// <param name="Hash">SHA-256 over sequence, previous hash and body, in lower-case hexadecimal.</param>
/// <param name="Body">What it says: one line of JSON, exactly as it was hashed.</param>
internal sealed record JobEntry(long Sequence, string Previous, string Hash, string Body);
