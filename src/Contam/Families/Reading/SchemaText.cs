using Contam.Families.Reading.Shapes;

namespace Contam.Families.Reading;

/// <summary>
/// JSON Schemas (draft 2020-12) of the files that people write, for editors that complete and check while one types. Made from the description
/// that the readers go by. A schema cannot say everything: ids, kinds and counts are checked by the readers alone.
/// </summary>
public static class SchemaText
{
    /// <summary>The schema of a family file, with a newline at its end.</summary>
    public static string Family() => SchemaWriter.Write(FamilyKeys.FamilyFile, "An engine family");

    /// <summary>The schema of a module, with a newline at its end.</summary>
    public static string Module() => SchemaWriter.Write(FamilyKeys.ModuleFile, "A module of engine families");

    /// <summary>The schema of a shop standard, with a newline at its end.</summary>
    public static string Standard() => SchemaWriter.Write(StandardFile.Form, "A shop standard");
}
