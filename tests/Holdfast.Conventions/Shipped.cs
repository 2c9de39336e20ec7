using System.Reflection;
using System.Xml.Linq;

namespace Holdfast.Conventions;

/// <summary>The assemblies that reach a user, and the documentation that lies beside them.</summary>
internal static class Shipped
{
    /// <summary>The science.</summary>
    public static Assembly Science { get; } = typeof(Outcome<>).Assembly;

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Assembly> Assemblies { get; } =
        [Science, Assembly.Load("Holdfast.Studies"), Assembly.Load("Holdfast.Claims"), Assembly.Load("Holdfast.Reports"), Assembly.Load("Holdfast.Techniques"), Assembly.Load("Holdfast.Cli")];

    /// <summary>Public types, nested ones included.</summary>
    public static IEnumerable<Type> Types => Assemblies.SelectMany(a => a.GetExportedTypes());

    /// <summary>Ids of everything that has a summary, or takes one over, in the assembly's documentation.</summary>
    /// <param name="assembly">A shipped assembly.</param>
    public static HashSet<string> Documented(Assembly assembly)
        => [.. XDocument.Load(Path.ChangeExtension(assembly.Location, ".xml")).Descendants("member")
            .Where(m => m.Element("inheritdoc") is not null || m.Element("summary")?.Value.Trim().Length > 0)
            .Select(m => m.Attribute("name")!.Value)];

    /// <summary>Every member's documentation by id.</summary>
    /// <param name="assembly">A shipped assembly.</param>
    public static Dictionary<string, XElement> Documentation(Assembly assembly)
        => XDocument.Load(Path.ChangeExtension(assembly.Location, ".xml")).Descendants("member")
            .ToDictionary(m => m.Attribute("name")!.Value, StringComparer.Ordinal);
}
