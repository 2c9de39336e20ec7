using System.Globalization;
using System.Text;
using Holdfast.Reports.Documents;
using Holdfast.Reports.HandOver;
using Holdfast.Studies;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A measured pattern as powder CIF: angles and counts as they were taken in, with the wavelength. A pattern over d or Q, and a structure, are left to their own files.</summary>
/// <remarks>Names of the powder dictionary (International Tables for Crystallography G, chapter 3.3), from memory, in the form of CIF 1.1 with underscores.</remarks>
public sealed class PatternCif : IMeasurementFile
{
    /// <inheritdoc/>
    public string Technique => DiffractionFiles.TechniqueName;

    /// <inheritdoc/>
    public string Format => "powder CIF";

    /// <inheritdoc/>
    public DocumentFile? Of(Measurement measurement, Study study)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        ArgumentNullException.ThrowIfNull(study);
        var (axis, factor) = measurement.Column(ScanNames.TwoTheta) is { } whole ? (whole, 1) : (measurement.Column(ScanNames.Theta), 2);
        if (axis?.Numbers is not { } angles || measurement.Column(ScanNames.Counts) is not { Numbers: { } counts } intensity)
            return null;
        int[] rows = [.. Enumerable.Range(0, counts.Length).Where(i => angles[i] is not null && counts[i] is not null)];
        if (rows.Length == 0)
            return null;
        var text = new StringBuilder();
        text.Append(NumberText.Block(measurement.Id, measurement.Sample)).Append('\n');
        if (study.Invented)
            text.Append("# INVENTED DEMO DATA: no number here is a measurement.\n");
        Item("_pd_spec_description", NumberText.Cif(measurement.Sample));
        if (measurement.Setting(ScanNames.Radiation) is { } radiation)
            Item("_diffrn_radiation_type", NumberText.Cif(radiation.Written));
        if (measurement.Setting(ScanNames.Wavelength)?.Value is { } first)
        {
            var second = measurement.Setting(ScanNames.Second)?.Value;
            text.Append("loop_\n_diffrn_radiation_wavelength_id\n_diffrn_radiation_wavelength\n_diffrn_radiation_wavelength_wt\n");
            text.Append(CultureInfo.InvariantCulture, $"1 {NumberText.Of(first)} 1\n");
            if (second is { } other)
                text.Append(CultureInfo.InvariantCulture, $"2 {NumberText.Of(other)} {NumberText.Of(measurement.Setting(ScanNames.Ratio)?.Value ?? 0.5)}\n");
        }

        text.Append("loop_\n_pd_meas_2theta_scan\n").Append(intensity.Unit == "counts" ? "_pd_meas_counts_total\n" : "_pd_meas_intensity_total\n");
        foreach (var i in rows)
            text.Append(CultureInfo.InvariantCulture, $"{NumberText.Of(factor * angles[i]!.Value)} {NumberText.Of(counts[i]!.Value)}\n");
        return new(measurement.Id + ".cif", Encoding.UTF8.GetBytes(text.ToString()));

        void Item(string name, string value) => text.Append(CultureInfo.InvariantCulture, $"{name} {value}\n");
    }
}
