using System.Reflection;
using System.Reflection.Emit;
using Contam.Plans;
using Contam.Proof;
using Contam.Treatment;

namespace Contam.Tests.Proof;

/// <summary>The judge shares nothing with what it judges: no type of its namespace mentions, calls or holds a type of those that make plans.</summary>
public class The_proof_sees
{
    private static readonly string[] Allowed = ["Contam", "Contam.Proof", "Contam.Plans", "Contam.Families", "Contam.Families.Quantities"];

    [Fact]
    public void Nothing_of_the_library_but_families_and_plans_and_the_root()
    {
        Type[] proof = [.. typeof(PlanVerifier).Assembly.GetTypes().Where(type => type.Namespace == "Contam.Proof")];

        Assert.Contains(typeof(PlanVerifier), proof);
        Assert.Contains(typeof(StepSimulator), proof);
        Assert.Equal([], Seen(proof).Where(seen => seen.Namespace?.StartsWith("Contam", StringComparison.Ordinal) == true)
            .Where(seen => !Allowed.Contains(seen.Namespace) || seen == typeof(PlanRequest))
            .Select(seen => seen.FullName));
    }

    // The rule must be able to fail: these see a standard in a signature, in a body, in a type argument and in a lambda.
    [Theory]
    [InlineData(typeof(SeesInSignature))]
    [InlineData(typeof(SeesInBody))]
    [InlineData(typeof(SeesInTypeArgument))]
    [InlineData(typeof(SeesInLambda))]
    public void The_rule_notices(Type type) =>
        Assert.Contains(typeof(ShopStandard), Seen([type, .. type.GetNestedTypes(BindingFlags.NonPublic)]));

    private static HashSet<Type> Seen(IEnumerable<Type> types)
    {
        var seen = new HashSet<Type>();
        foreach (Type type in types)
        {
            Add(type.BaseType);
            foreach (Type implemented in type.GetInterfaces())
                Add(implemented);
            foreach (CustomAttributeData attribute in type.GetCustomAttributesData())
                Add(attribute.AttributeType);
            foreach (MemberInfo member in type.GetMembers(BindingFlags.DeclaredOnly | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance))
                AddMember(member);
        }

        return seen;

        void AddMember(MemberInfo? member)
        {
            switch (member)
            {
                case FieldInfo field:
                    Add(field.FieldType);
                    break;
                case MethodBase method:
                    Add((method as MethodInfo)?.ReturnType);
                    foreach (ParameterInfo parameter in method.GetParameters())
                        Add(parameter.ParameterType);
                    foreach (LocalVariableInfo local in method.GetMethodBody()?.LocalVariables ?? [])
                        Add(local.LocalType);
                    foreach (MemberInfo mentioned in MentionedBy(method))
                        AddMention(mentioned);
                    break;
            }
        }

        void AddMention(MemberInfo mentioned)
        {
            Add(mentioned as Type ?? mentioned.DeclaringType);
            if (mentioned is MethodBase { IsGenericMethod: true } generic)
            {
                foreach (Type argument in generic.GetGenericArguments())
                    Add(argument);
            }

            if (mentioned is MethodInfo method)
                Add(method.ReturnType);
            if (mentioned is FieldInfo field)
                Add(field.FieldType);
        }

        void Add(Type? type)
        {
            if (type is null || !seen.Add(type))
                return;
            Add(type.IsGenericType && !type.IsGenericTypeDefinition ? type.GetGenericTypeDefinition() : null);
            Add(type.HasElementType ? type.GetElementType() : null);
            Add(type.DeclaringType);
            foreach (Type argument in type.GetGenericArguments())
                Add(argument);
        }
    }

    // Every operand of every instruction that names a type or a member.
    private static IEnumerable<MemberInfo> MentionedBy(MethodBase method)
    {
        byte[] code = method.GetMethodBody()?.GetILAsByteArray() ?? [];
        Type[] ofType = method.DeclaringType?.GetGenericArguments() ?? [];
        Type[] ofMethod = method.IsGenericMethod ? method.GetGenericArguments() : [];
        for (int at = 0; at < code.Length;)
        {
            OpCode operation = code[at] == 0xFE ? Operations[unchecked((short)(0xFE00 | code[at + 1]))] : Operations[code[at]];
            at += operation.Size;
            if (operation.OperandType is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineType or OperandType.InlineTok)
                yield return method.Module.ResolveMember(BitConverter.ToInt32(code, at), ofType, ofMethod)!;
            at += operation.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(code, at)),
                _ => 4,
            };
        }
    }

    private static readonly Dictionary<short, OpCode> Operations = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(operation => operation.Value);

    private sealed class SeesInSignature
    {
        internal static string? Name(ShopStandard? standard) => standard?.ToString();
    }

    private sealed class SeesInBody
    {
        internal static string Make() => new ShopStandard { Id = "" }.Title;
    }

    private sealed class SeesInTypeArgument
    {
        internal static int Make() => new List<ShopStandard[]>().Count;
    }

    private sealed class SeesInLambda
    {
        internal static Func<object, bool> Make(int number) => other => number > 0 && other is ShopStandard;
    }
}
