using System.Collections.Immutable;
using System.Reflection;

namespace Holdfast.Studies;

/// <summary>
/// Something that can be recorded about a sample or read from it: mass, contact time, absorbance. A file's column is recognised
/// by a property's <see cref="Headings"/>. Every static field that holds properties, one or several, is found by
/// <see cref="Catalogue"/>, so a new area of work adds one file of properties and edits nothing else.
/// </summary>
/// <param name="Name">Stable name, used in files and addresses: "contact-time".</param>
/// <param name="Title">Words for a heading: "contact time".</param>
/// <param name="Unit">The unit its stored values are in ("" for none): conversion happens once, when they are taken in.</param>
/// <param name="Symbol">Symbol of the trade ("C0"), or null.</param>
/// <param name="Holds">Number or words.</param>
/// <param name="IsSignal">True for what an instrument shows; such a column makes readings, the others make facts.</param>
/// <param name="Headings">Headings it is recognised by, in lower case, without unit, spaces and punctuation.</param>
public sealed record Property(
    string Name, string Title, string Unit, string? Symbol, Holds Holds, bool IsSignal, ImmutableArray<string> Headings)
{
    private static readonly Lazy<ImmutableArray<Property>> Found = new(() =>
        [.. Catalogue.Types
            .SelectMany(t => t.GetFields(BindingFlags.Public | BindingFlags.Static))
            .Where(f => f.FieldType == typeof(Property) || f.FieldType == typeof(ImmutableArray<Property>))
            .SelectMany(f => f.GetValue(null) switch { Property one => [one], ImmutableArray<Property> several => several, _ => ImmutableArray<Property>.Empty })
            .OrderBy(p => p.Name, StringComparer.Ordinal)]);

    /// <summary>True for an amount of something other than the study's element: its milligrams are never turned into moles by that element's molar mass.</summary>
    public bool OfAnother { get; init; }

    /// <summary>Every property there is, by name.</summary>
    public static ImmutableArray<Property> All => Found.Value;

    /// <summary>The property with this name, or null.</summary>
    /// <param name="name">Stable name.</param>
    public static Property? Named(string name) => All.FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.Ordinal));

    /// <summary>A property that holds a number.</summary>
    public static Property Number(string name, string title, string unit, string? symbol, params string[] headings)
        => new(name, title, unit, symbol, Holds.Number, IsSignal: false, [.. headings]);

    /// <summary>A property that holds words.</summary>
    public static Property Words(string name, string title, params string[] headings)
        => new(name, title, "", null, Holds.Words, IsSignal: false, [.. headings]);

    /// <summary>A signal: what an instrument shows before any arithmetic.</summary>
    public static Property Signal(string name, string title, string unit, string? symbol, params string[] headings)
        => new(name, title, unit, symbol, Holds.Number, IsSignal: true, [.. headings]);
}

/// <summary>What sort of value a property holds.</summary>
public enum Holds
{
    /// <summary>A number with a unit.</summary>
    Number,

    /// <summary>Words or a code.</summary>
    Words,
}
