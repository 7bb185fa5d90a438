using System.Text.Json;
using System.Text.Json.Serialization;
using Contam.Families;
using Contam.Support;
using Contam.Treatment;

namespace Contam.Properties.Notation;

/// <summary>Everything that a case says, as text: two cases say the same exactly where their texts are equal.</summary>
internal static class Written
{
    private static readonly JsonSerializerOptions Options = new()
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        IncludeFields = true,
        WriteIndented = true,
        Converters = { new JsonStringEnumConverter() },
    };

    internal static string Fully(TestCase asked) => JsonSerializer.Serialize(
        new { Family = Fully(asked.Family), asked.Failed, asked.Own, asked.Asked, asked.Findings, asked.Technicians, Standard = Fully(asked.Standard) },
        Options);

    private static object Fully(Family family) =>
        new { family.Id, family.States, family.Parts, family.Circuits, family.Joints, family.Sha256 };

    private static object Fully(ShopStandard standard) =>
        new { standard.Id, standard.CleanFindings, standard.Kinds, standard.Debris, standard.Rules, standard.Times };
}
