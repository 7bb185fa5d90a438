using Contam.Families.Reading.Sheets;

namespace Contam.Jobs.Entries;

/// <summary>The limits that a job's files were read with, where they were not the usual ones; see <see cref="ReadLimits"/>.</summary>
internal sealed record KeptLimits(int FileBytes, int Values, int Nesting, int Parts, int Joints, int Count, int ModuleDepth, int ModuleUses)
{
    private static KeptLimits Usual { get; } = From(ReadLimits.Default);

    /// <summary>The limits to keep; <c>null</c> where they are the usual ones.</summary>
    public static KeptLimits? Of(ReadLimits limits) => From(limits) is var kept && kept == Usual ? null : kept;

    /// <summary>The limits to read with: at least the usual ones, since a later version may have raised those.</summary>
    public static ReadLimits ToRead(KeptLimits? kept) => kept is null ? ReadLimits.Default : ReadLimits.Default with
    {
        FileBytes = Math.Max(kept.FileBytes, Usual.FileBytes),
        Values = Math.Max(kept.Values, Usual.Values),
        Nesting = Math.Max(kept.Nesting, Usual.Nesting),
        Parts = Math.Max(kept.Parts, Usual.Parts),
        Joints = Math.Max(kept.Joints, Usual.Joints),
        Count = Math.Max(kept.Count, Usual.Count),
        ModuleDepth = Math.Max(kept.ModuleDepth, Usual.ModuleDepth),
        ModuleUses = Math.Max(kept.ModuleUses, Usual.ModuleUses),
    };

    /// <summary>Whether none of them is above what is allowed, or above the usual.</summary>
    public bool IsWithin(ReadLimits allowed)
    {
        ReadLimits read = ToRead(this);
        return read.FileBytes <= Math.Max(allowed.FileBytes, Usual.FileBytes) && read.Values <= Math.Max(allowed.Values, Usual.Values)
            && read.Nesting <= Math.Max(allowed.Nesting, Usual.Nesting) && read.Parts <= Math.Max(allowed.Parts, Usual.Parts)
            && read.Joints <= Math.Max(allowed.Joints, Usual.Joints) && read.Count <= Math.Max(allowed.Count, Usual.Count)
            && read.ModuleDepth <= Math.Max(allowed.ModuleDepth, Usual.ModuleDepth) && read.ModuleUses <= Math.Max(allowed.ModuleUses, Usual.ModuleUses);
    }

    private static KeptLimits From(ReadLimits limits) =>
        new(limits.FileBytes, limits.Values, limits.Nesting, limits.Parts, limits.Joints, limits.Count, limits.ModuleDepth, limits.ModuleUses);
}
