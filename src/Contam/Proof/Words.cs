using System.Globalization;
using Contam.Families;

namespace Contam.Proof;

/// <summary>How sizes are named in the sentences of a verification.</summary>
internal static class Words
{
    /// <summary><c>any size</c>, <c>nothing</c>, or the number in µm.</summary>
    internal static string Of(ParticleSize size) => size.IsUnlimited
        ? "any size"
        : size == ParticleSize.Zero ? "no size at all" : string.Create(CultureInfo.InvariantCulture, $"{size.Micrometres} µm");

    /// <summary>A grade as the plan writes it.</summary>
    internal static string Of(Grade grade) => grade switch
    {
        Grade.Exposed => "exposed",
        Grade.Guarded => "guarded",
        _ => "cleared",
    };
}
