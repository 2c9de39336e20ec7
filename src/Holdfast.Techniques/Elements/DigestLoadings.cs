using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Studies;

namespace Holdfast.Techniques.Elements;

/// <summary>Loadings of dissolved portions from what was read, mg/g.</summary>
internal static class DigestLoadings
{
    /// <summary>Column of what was read in the solution as it went into the instrument.</summary>
    public const string Reading = "reading";

    /// <summary>Column of what a blank would read there.</summary>
    public const string Blank = "blank";

    /// <summary>Column of the mass of powder.</summary>
    public const string Portion = "portion";

    /// <summary>Column of the volume of the solution before it was diluted.</summary>
    public const string Volume = "volume";

    /// <summary>Column of how many times it was diluted.</summary>
    public const string Dilution = "dilution";

    /// <summary>Loadings row by row, mg/g; null for a measurement of another kind.</summary>
    /// <param name="measurement">The measurement.</param>
    public static MeasuredColumn? Of(Measurement measurement)
    {
        if (measurement.Column(Reading) is not { Numbers: not null } reading)
            return null;
        var (blank, portion, volume, dilution) = (In(measurement, Blank, reading.Unit), In(measurement, Portion, "mg"), In(measurement, Volume, "mL"), In(measurement, Dilution, ""));
        var read = In(measurement, Reading, "mg/L");
        var concentration = Unit.Parse(reading.Unit);
        return new MeasuredColumn(ElementFiles.Mass, "reading less blank, times volume and dilution, over mass", "mg/g")
        {
            Numbers = [.. Enumerable.Range(0, read.Length).Select(i => read[i] is { } c && portion[i] is > 0 and var m && volume[i] is { } v && dilution[i] is { } f
                ? Digest.Loading<Number>(c, concentration.Convert(blank[i] ?? 0, Unit.Parse("mg/L")), v, f, m).Value : (double?)null)],
        };
    }

    private static ImmutableArray<double?> In(Measurement measurement, string column, string unit)
        => measurement.Column(column) is { Numbers: { } numbers } found ? found.Unit == unit || unit.Length == 0 ? numbers : [.. numbers.Select(n => n is { } value ? Unit.Parse(found.Unit).Convert(value, Unit.Parse(unit)) : (double?)null)] : [];
}
