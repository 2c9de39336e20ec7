using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Studies;

/// <summary>One sitting at an instrument: its standards calibrate its samples.</summary>
/// <param name="Id">Stable id, from the file's name: "aas-run1".</param>
/// <param name="Signal">Name of the signal property read.</param>
/// <param name="Details">What the file said about itself, by key as written ("Element", "Wavelength"), for the methods text.</param>
/// <param name="Origin">The file.</param>
public sealed record Run(string Id, string Signal, ImmutableSortedDictionary<string, string> Details, Origin Origin)
{
    /// <summary>What the file said under one of these keys, the first that it holds; null for none. Case does not matter.</summary>
    /// <param name="keys">Keys: "Excitation".</param>
    public string? Detail(params ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
        {
            foreach (var (written, value) in Details)
            {
                if (value.Length > 0 && string.Equals(written.Trim(), key, StringComparison.OrdinalIgnoreCase))
                    return value;
            }
        }
        return null;
    }

    /// <summary>The number that such a detail begins with, in the unit asked for; null for none, and where its own unit is another kind of thing.</summary>
    /// <param name="unit">Unit wanted, "" for none; a number without one is taken to be in it.</param>
    /// <param name="keys">Keys: "Excitation".</param>
    public double? Number(string unit, params ReadOnlySpan<string> keys)
    {
        if (Detail(keys)?.Split(' ', 2, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) is not { Length: > 0 } words
            || !double.TryParse(words[0].Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
            return null;
        return unit.Length > 0 && words.Length > 1 && Unit.Read(words[1]) is UnitText.Known { Unit: var written }
            ? written.IsConvertibleTo(Unit.Parse(unit)) ? written.Convert(value, Unit.Parse(unit)) : null
            : value;
    }
}
