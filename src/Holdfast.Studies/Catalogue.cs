using System.Collections.Immutable;
using System.Reflection;

namespace Holdfast.Studies;

/// <summary>
/// Every kind of thing that a frame asks for without knowing it: properties, file readers, techniques, claim rules, sections, figures, derived numbers,
/// verbs. They are found in all assemblies of Holdfast that the program was built with and that say that they hold kinds, so an addition edits nothing.
/// </summary>
public static class Catalogue
{
    private static readonly Lazy<ImmutableArray<Type>> Found = new(() =>
        [.. (Listed() is [_, ..] listed ? listed : Reached(Assembly.GetEntryAssembly()!))
            .Where(a => a.IsDefined(typeof(HoldsKindsAttribute)))
            .SelectMany(a => a.GetTypes())
            .OrderBy(t => t.FullName, StringComparer.Ordinal)]);

    /// <summary>Every type of those assemblies, in the order of their full names.</summary>
    public static ImmutableArray<Type> Types => Found.Value;

    /// <summary>One of each class that is of a kind and has a constructor without parameters, in the order of their full names.</summary>
    /// <typeparam name="TKind">The interface of the kind.</typeparam>
    public static IEnumerable<TKind> Of<TKind>() where TKind : class
        => Types.Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(TKind))).Select(t => (TKind)Activator.CreateInstance(t)!);

    /// <summary>An assembly and all of Holdfast that it refers to, at once or through another. A program in one file has no list, and is found so.</summary>
    /// <param name="from">The program.</param>
    internal static ImmutableArray<Assembly> Reached(Assembly from)
    {
        List<Assembly> reached = [from];
        for (var i = 0; i < reached.Count; i++)
            reached.AddRange(reached[i].GetReferencedAssemblies().Where(r => IsOurs(r.Name)).Select(Assembly.Load).Except(reached));
        return [.. reached];
    }

    // The platform's own list of what the program was built with: another program's files in the same folder are none of ours.
    private static ImmutableArray<Assembly> Listed()
        => [.. (AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES") as string ?? "").Split(Path.PathSeparator)
            .Select(Path.GetFileNameWithoutExtension).Where(IsOurs).Select(name => Assembly.Load(name!))];

    private static bool IsOurs(string? name) => name is not null && name.StartsWith("Holdfast", StringComparison.Ordinal);
}

/// <summary>Says that an assembly holds kinds of things that <see cref="Catalogue"/> finds. Tests and tools do not say so: what they make up reaches no program.</summary>
[AttributeUsage(AttributeTargets.Assembly)]
public sealed class HoldsKindsAttribute : Attribute;
