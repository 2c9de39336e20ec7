using System.Collections.Immutable;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies;

/// <summary>One vial: what it is and everything recorded about it.</summary>
/// <param name="Code">The code on the label, as first written.</param>
/// <param name="Role">What it is for.</param>
/// <param name="Facts">By property name.</param>
public sealed record Sample(string Code, SampleRole Role, ImmutableSortedDictionary<string, Fact> Facts)
{
    /// <summary>Series it belongs to, or null.</summary>
    public string? Series => Words(SampleProperties.Series);

    /// <summary>Sorbent batch, or null.</summary>
    public string? Batch => Words(SampleProperties.Batch);

    /// <summary>The recorded number in the property's unit, or null when it was not recorded.</summary>
    /// <param name="property">Which property.</param>
    public double? Number(Property property)
    {
        ArgumentNullException.ThrowIfNull(property);
        return Facts.TryGetValue(property.Name, out var fact) ? fact.Value : null;
    }

    /// <summary>The recorded words, or null.</summary>
    /// <param name="property">Which property.</param>
    public string? Words(Property property)
    {
        ArgumentNullException.ThrowIfNull(property);
        return Facts.TryGetValue(property.Name, out var fact) ? fact.Words : null;
    }

    /// <summary>The fact itself, with its origin, or null.</summary>
    /// <param name="property">Which property.</param>
    public Fact? Fact(Property property)
    {
        ArgumentNullException.ThrowIfNull(property);
        return Facts.GetValueOrDefault(property.Name);
    }
}
