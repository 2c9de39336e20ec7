using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Tests;

/// <summary>Studies of a few invented vessels, made by hand.</summary>
internal static class SmallStudy
{
    private static readonly Origin Sheet = new(null, "sheet.csv", null, 2, "value");

    /// <summary>Vessels of one series at 20 mg/L and 2 g/L; each concentration left is a reported one, in mg/L.</summary>
    public static Study Of(params double[] left) => new()
    {
        Title = "small",
        Analyte = "Pb",
        Samples = [.. left.Select((_, i) => Vessel(Code(i)))],
        Runs = [new Run("lab", SpectrometryProperties.ReportedConcentration.Name, ImmutableSortedDictionary<string, string>.Empty, Sheet)],
        Readings = [.. left.Select((c, i) => new Reading(
            "R-000" + (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), Code(i), "lab", i + 1,
            SpectrometryProperties.ReportedConcentration.Name, c, null, 1, 1, "as written", Sheet))],
        Version = 2,
        Fingerprint = "0123",
    };

    private static string Code(int i) => "V-" + (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static Sample Vessel(string code) => new(code, SampleRole.Vessel, new (Property Property, double Value)[]
    {
        (BatchProperties.InitialConcentration, 20), (BatchProperties.Volume, 25), (BatchProperties.Mass, 50), (BatchProperties.ContactTime, 60),
    }.Select(f => new Fact(f.Property.Name, f.Value, null, null, null, "as written", Sheet))
        .Append(new Fact(SampleProperties.Series.Name, null, null, null, "S", "S", Sheet))
        .ToImmutableSortedDictionary(f => f.Property, f => f, StringComparer.Ordinal));
}
