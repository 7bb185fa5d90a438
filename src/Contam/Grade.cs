using System.Text.Json.Serialization;

namespace Contam;

/// <summary>How far debris could have come to a part. Ordered from the worst to the mildest.</summary>
public enum Grade
{
    /// <summary>The debris can get here at the full size that its source sheds.</summary>
    [JsonStringEnumMemberName("exposed")]
    Exposed,

    /// <summary>It can get here only past a barrier that should have held it.</summary>
    [JsonStringEnumMemberName("guarded")]
    Guarded,

    /// <summary>It could have got here, but an accepted clean finding cuts every path.</summary>
    [JsonStringEnumMemberName("cleared")]
    Cleared,
}
