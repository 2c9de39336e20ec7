using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Holdfast.Conventions;

/// <summary>
/// Every public type and member says what it is. Overrides, operators, implementations of an interface and what the compiler
/// writes for a record are left out: they take their words from where they are declared.
/// </summary>
public class DocumentationTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
    private static readonly HashSet<string> OfRecords =
        ["ToString", "Equals", "GetHashCode", "Deconstruct", "PrintMembers", "<Clone>$", "EqualityContract", "get_EqualityContract"];

    [Fact]
    public void PublicTypes_AllOfThem_HaveASummary()
    {
        Assert.True(Shipped.Types.Count() > 40);
        foreach (var assembly in Shipped.Assemblies)
        {
            var documented = Shipped.Documented(assembly);
            HouseRule.Holds("A public type says what it is.", assembly.GetExportedTypes().Where(t => !documented.Contains("T:" + IdOf(t))).Select(t => t.FullName));
        }
    }

    [Fact]
    public void PublicMembers_AllOfThem_HaveASummary()
    {
        var missing = new List<string>();
        foreach (var assembly in Shipped.Assemblies)
        {
            var documentation = Shipped.Documentation(assembly);
            var documented = Shipped.Documented(assembly);
            foreach (var type in assembly.GetExportedTypes().Where(t => !typeof(Delegate).IsAssignableFrom(t)))
            {
                missing.AddRange(type.GetMembers(Declared)
                    .Where(m => Speaks(m) && !IsPositional(m, type, documentation) && !HasWords(m, documented))
                    .Select(m => $"{type.FullName}.{m.Name}"));
            }
        }

        HouseRule.Holds("A public member says what it is.", missing);
    }

    // A parameter of kind double must name its unit, or say that it has none, somewhere in its words: the rule is that there are words.
    [Fact]
    public void DoubleParameters_OfPublicMethods_AreDescribed()
    {
        var missing = new List<string>();
        foreach (var assembly in Shipped.Assemblies)
        {
            var documentation = Shipped.Documentation(assembly);
            foreach (var method in assembly.GetExportedTypes().SelectMany(t => t.GetMethods(Declared)).Where(m => Speaks(m) && !m.IsSpecialName))
            {
                var overloads = documentation.Where(d => MethodId(method).IsMatch(d.Key)).Select(d => d.Value).ToList();
                if (overloads.Count == 0 || overloads.Any(o => o.Element("inheritdoc") is not null))
                    continue;
                missing.AddRange(method.GetParameters()
                    .Where(p => p.ParameterType == typeof(double)
                        && !overloads.Elements("param").Any(e => e.Attribute("name")?.Value == p.Name && e.Value.Trim().Length > 0))
                    .Select(p => $"{method.DeclaringType!.FullName}.{method.Name}({p.Name})"));
            }
        }

        HouseRule.Holds("A number that is passed in says what it is and in which unit.", missing);
    }

    private static bool Speaks(MemberInfo member) => member switch
    {
        MethodInfo m => !m.IsSpecialName && !OfRecords.Contains(m.Name) && !IsOverride(m) && !Implements(m),
        PropertyInfo p => !OfRecords.Contains(p.Name) && p.GetMethod is { } g && !IsOverride(g) && !Implements(g),
        FieldInfo f => !f.IsSpecialName,
        EventInfo => true,
        ConstructorInfo c => c.GetParameters().Length > 0 && !IsRecord(c.DeclaringType!),
        _ => false,
    } && member.GetCustomAttribute<CompilerGeneratedAttribute>() is null;

    private static bool IsOverride(MethodInfo method) => method.GetBaseDefinition() != method;

    // Static abstract members count too: a model's card is described once, at its interface.
    private static bool Implements(MethodInfo method)
    {
        var type = method.DeclaringType!;
        return !type.IsInterface && type.GetInterfaces().Any(i => type.GetInterfaceMap(i).TargetMethods.Any(t => Same(t, method)));
    }

    private static bool Same(MethodInfo? a, MethodInfo b) => a is not null && a.MetadataToken == b.MetadataToken && a.Module == b.Module;

    private static bool IsRecord(Type type) => type.GetMethod("<Clone>$") is not null || type.GetMethod("PrintMembers", BindingFlags.NonPublic | BindingFlags.Instance) is not null;

    // Parameters of a record's head are described there, as parameters.
    private static bool IsPositional(MemberInfo member, Type type, Dictionary<string, XElement> documentation)
        => member is PropertyInfo && documentation.TryGetValue("T:" + IdOf(type), out var head)
            && head.Elements("param").Any(p => p.Attribute("name")?.Value == member.Name && p.Value.Trim().Length > 0);

    private static bool HasWords(MemberInfo member, HashSet<string> documented) => member switch
    {
        MethodInfo m => documented.Any(d => MethodId(m).IsMatch(d)),
        ConstructorInfo c => documented.Any(d => d.StartsWith($"M:{IdOf(c.DeclaringType!)}.#ctor(", StringComparison.Ordinal)),
        PropertyInfo p => documented.Any(d => d == $"P:{IdOf(p.DeclaringType!)}.{p.Name}" || d.StartsWith($"P:{IdOf(p.DeclaringType!)}.{p.Name}(", StringComparison.Ordinal)),
        FieldInfo f => documented.Contains($"F:{IdOf(f.DeclaringType!)}.{f.Name}"),
        EventInfo e => documented.Contains($"E:{IdOf(e.DeclaringType!)}.{e.Name}"),
        _ => false,
    };

    private static Regex MethodId(MethodInfo method)
        => new($"^M:{Regex.Escape(IdOf(method.DeclaringType!))}\\.{Regex.Escape(method.Name)}(``\\d+)?(\\(|$)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));

    private static string IdOf(Type type) => (type.FullName ?? type.Name).Replace('+', '.');
}
