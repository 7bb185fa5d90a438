using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Contam.Jobs.Tests;

/// <summary>What the code of an assembly names outside itself, read from its file: whatever it calls, makes or catches is among it.</summary>
internal sealed record NamedTypes(ImmutableArray<string> All, ImmutableArray<string> OfNetworks, ImmutableArray<string> Assemblies, ImmutableArray<string> NativeFunctions)
{
    private static readonly string[] NetworkSpaces = ["System.Net", "System.Security.Authentication"];

    public static NamedTypes In(Assembly assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly.Location));
        MetadataReader reader = file.GetMetadataReader();
        (string Type, string From)[] types =
        [
            .. reader.TypeReferences.Select(reader.GetTypeReference)
                .Select(type => ($"{reader.GetString(type.Namespace)}.{reader.GetString(type.Name)}", FromOf(reader, type.ResolutionScope))),
        ];
        return new NamedTypes(
            Sorted(types.Select(type => type.Type)),
            Sorted(types.Where(type => NetworkSpaces.Any(space => IsIn(space, type.Type)) || IsIn("System.Net", type.From)).Select(type => type.Type)),
            Sorted(reader.AssemblyReferences.Select(one => reader.GetString(reader.GetAssemblyReference(one).Name))),
            Sorted(reader.MethodDefinitions.Select(reader.GetMethodDefinition).Where(one => one.Attributes.HasFlag(MethodAttributes.PinvokeImpl)).Select(one => reader.GetString(one.GetImport().Name))));
    }

    private static string FromOf(MetadataReader reader, EntityHandle scope) =>
        scope.Kind == HandleKind.AssemblyReference ? reader.GetString(reader.GetAssemblyReference((AssemblyReferenceHandle)scope).Name) : "";

    private static bool IsIn(string space, string name) => name == space || name.StartsWith(space + ".", StringComparison.Ordinal);

    private static ImmutableArray<string> Sorted(IEnumerable<string> names) => [.. names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
}
