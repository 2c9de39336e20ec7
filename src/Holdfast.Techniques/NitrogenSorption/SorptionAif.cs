using System.Globalization;
using System.Text;
using Holdfast.Reports.Documents;
using Holdfast.Reports.HandOver;
using Holdfast.Studies;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>An isotherm as adsorption information file: pressures and amounts as they were taken in, in the units of the file they came from.</summary>
/// <remarks>Names of the dictionary of the format (J. D. Evans et al., Langmuir 37 (2021) 4222, doi 10.1021/acs.langmuir.1c00122).</remarks>
public sealed class SorptionAif : IMeasurementFile
{
    /// <inheritdoc/>
    public string Technique => NitrogenIsotherms.TechniqueName;

    /// <inheritdoc/>
    public string Format => "adsorption information file (AIF)";

    /// <inheritdoc/>
    public DocumentFile? Of(Measurement measurement, Study study)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        ArgumentNullException.ThrowIfNull(study);
        if (measurement.Column(SorptionReading.Amount) is not { Numbers: { } amounts } amount)
            return null;
        var relative = measurement.Column(SorptionReading.Relative);
        var saturation = measurement.Column(SorptionReading.Saturation)?.Numbers;
        if ((relative ?? measurement.Column(SorptionReading.Pressure)) is not { Numbers: { } pressures } pressure)
            return null;
        var p0 = measurement.Setting("p0");
        var isWhole = measurement.Setting(SorptionReading.AmountIs)?.Written == SorptionReading.WholeSample;
        var text = new StringBuilder();
        text.Append(NumberText.Block(measurement.Id, measurement.Sample)).Append('\n');
        if (study.Invented)
            text.Append("# INVENTED DEMO DATA: no number here is a measurement.\n");
        if (relative is not null)
            text.Append("# Only relative pressures were taken in: they stand as pressures with p0 = 1, and the unit of the pressure is not known.\n");
        if (isWhole)
            text.Append("# Amounts are of the whole sample, not per gram.\n");
        Item("_adsnt_material_id", NumberText.Cif(measurement.Sample));
        Item("_adsnt_sample_id", NumberText.Cif(measurement.Id));
        Item("_adsnt_info", NumberText.Cif($"taken in from {measurement.Origin.FileName}"));
        if (measurement.Settings.FirstOrDefault(s => s.Name == "mass" && s.Value is not null) is { Value: { } mass } weighed)
        {
            Item("_adsnt_sample_mass", NumberText.Of(mass));
            Item("_units_mass", NumberText.Cif(weighed.Unit));
        }

        if (string.Join(", ", measurement.Settings.Where(s => s.Name.StartsWith("degas", StringComparison.Ordinal)).Select(s => s.Written)) is { Length: > 0 } degassed)
            Item("_adsnt_degas_summary", NumberText.Cif(degassed));
        Item("_exptl_adsorptive", NumberText.Cif(measurement.Setting("adsorptive")?.Written ?? "N2"));
        if (measurement.Setting("bath-temperature") is { Value: { } bath, Unit: "K" })
        {
            Item("_exptl_temperature", NumberText.Of(bath));
            Item("_units_temperature", "K");
        }

        if (relative is null && p0?.Value is { } saturated)
            Item("_exptl_p0", NumberText.Of(saturated));
        Item("_units_pressure", relative is not null ? "?" : NumberText.Cif(pressure.Unit.Length > 0 ? pressure.Unit : p0?.Unit ?? ""));
        Item("_units_loading", NumberText.Cif(amount.Unit));
        var branches = measurement.Column(SorptionReading.BranchColumn)?.Words;
        int[] rows = [.. Enumerable.Range(0, amounts.Length).Where(i => pressures[i] is not null && amounts[i] is not null)];
        // Where no file said which branch a point is of, the highest pressure is the turn.
        var turn = rows.Length == 0 ? -1 : rows.MaxBy(i => pressures[i]!.Value);
        var scale = relative?.Unit == "%" ? 0.01 : 1;
        Loop("adsorp", [.. rows.Where(i => branches is { } b ? b[i] != SorptionReading.Desorption : i <= turn)]);
        Loop("desorp", [.. rows.Where(i => branches is { } b ? b[i] == SorptionReading.Desorption : i > turn)]);
        return new(measurement.Id + ".aif", Encoding.UTF8.GetBytes(text.ToString()));

        void Item(string name, string value) => text.Append(CultureInfo.InvariantCulture, $"{name} {value}\n");

        void Loop(string branch, int[] points)
        {
            if (points.Length == 0)
                return;
            var hasP0 = relative is not null || saturation is not null;
            text.Append(CultureInfo.InvariantCulture, $"loop_\n_{branch}_pressure\n{(hasP0 ? $"_{branch}_p0\n" : "")}_{branch}_amount\n");
            foreach (var i in points)
            {
                var own = relative is not null ? "1 " : saturation is { } s ? (s[i] is { } one ? NumberText.Of(one) : "?") + " " : "";
                text.Append(CultureInfo.InvariantCulture, $"{NumberText.Of(scale * pressures[i]!.Value)} {own}{NumberText.Of(amounts[i]!.Value)}\n");
            }
        }
    }
}
