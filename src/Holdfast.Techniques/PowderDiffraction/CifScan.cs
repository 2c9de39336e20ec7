using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Diffraction;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Cif;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A measured pattern in a powder CIF: angles in a loop, or a range with counts in order.</summary>
/// <remarks>Names of the powder dictionary (International Tables for Crystallography G, chapter 3.3), from memory.</remarks>
internal static class CifScan
{
    private static readonly string[] Counts = ["_pd_meas_counts_total", "_pd_meas_intensity_total", "_pd_proc_intensity_total", "_pd_proc_intensity_net"];
    private static readonly string[] Angles = ["_pd_meas_2theta_scan", "_pd_proc_2theta_corrected"];

    /// <summary>True when a block holds a measured pattern.</summary>
    /// <param name="block">The block.</param>
    public static bool IsIn(CifBlock block)
        => Table(block) is { } loop && (Angles.Any(a => loop.Column(a) is not null) || Limit(block, "min") is not null && Limit(block, "inc") is not null);

    /// <summary>Reads it.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="block">Its block.</param>
    public static MeasurementDraft Read(MeasurementSource source, CifBlock block)
    {
        var loop = Table(block)!;
        var tag = Counts.First(c => loop.Column(c) is not null);
        double?[] y = [.. loop.Column(tag)!.Value.Select(v => v.Number?.Value)];
        var angleTag = Angles.FirstOrDefault(a => loop.Column(a) is not null);
        double?[] x = angleTag is null ? Range(source, block, y.Length) : [.. loop.Column(angleTag)!.Value.Select(v => v.Number?.Value)];
        ImmutableArray<ColumnUnderstanding> columns = [.. loop.Tags.Select((t, i) => Shown(loop, t, i, t == tag ? "intensity as measured" : t == angleTag ? "2θ, degrees" : null))];
        var rows = new RowCount(loop.Rows, 0, 0, source.Grid.Rows.Count(r => !r.IsBlank) - loop.Rows);
        if (x.Length == 0)
            return new(rows with { Ready = 0, Undecided = loop.Rows }, columns, []);
        var said = Said(source.Talk, block);
        var name = PowderName.Settle(source, block.Said("_pd_spec_description", "_chemical_name_common", "_chemical_name_systematic", "_pd_phase_name")?.Text ?? block.Name);
        var cell = ReferenceCell.Ask(source);
        var use = ScanUse.Ask(source, [(block.Line, block.Name + " " + block.Said("_pd_spec_description")?.Text)]);
        if (new RadiationQuestion(source, said).Settle(ScanAxis.TwoTheta, x, y, cell) is not { } radiation)
            return new(rows with { Ready = 0, Undecided = loop.Rows }, columns, []);
        int[] kept = [.. Enumerable.Range(0, y.Length).Where(i => x[i] is not null && y[i] is not null)];
        ImmutableArray<MeasuredSetting> settings = [.. radiation.Settings(said), .. use, .. cell, .. block.Items.OrderBy(i => i.Value.Line).Where(i => i.Value.IsSaid).Select(i => new MeasuredSetting(i.Key, i.Value.Text, null, "", i.Value.Line))];
        return new(rows, columns,
        [
            new Measurement("", DiffractionFiles.TechniqueName, name, settings,
                [
                    new(ScanNames.TwoTheta, angleTag ?? "_pd_meas_2theta_range", "°") { Numbers = [.. kept.Select(i => x[i])] },
                    new(ScanNames.Counts, tag, tag.Contains("counts", StringComparison.Ordinal) ? "counts" : "") { Numbers = [.. kept.Select(i => y[i])] },
                ], source.At(loop.Line, null)),
        ])
        {
            HeadingLine = loop.Line,
            Decimal = Amounts.DecimalMark.Point,
            DecimalReason = "a CIF is written with points",
            Settings = [.. settings.Take(6).Where(s => s.Row > 0).Select(s => $"{s.Name} {s.Written} (line {s.Row.ToString(CultureInfo.InvariantCulture)})")],
        };
    }

    // Angles from the range; a count that does not fit it is asked about, and then counted from the lower end.
    private static double?[] Range(MeasurementSource source, CifBlock block, int count)
    {
        var (min, step) = (Limit(block, "min")!.Value, Limit(block, "inc")!.Value);
        var last = Math.Round(min + (count - 1) * step, 8);
        if (Limit(block, "max") is { } max && Math.Abs(max - last) > step / 2)
        {
            var said = string.Create(CultureInfo.InvariantCulture, $"The range ends at {max:0.####}°, the {count} counts at {last:0.####}°. Are the angles counted from the lower end?");
            if (source.Talk.Ask(source.Question("count"), Codes.Ambiguous, said, ["from-start", "leave-out"]) != "from-start")
                return [];
        }

        return [.. Enumerable.Range(0, count).Select(i => (double?)Math.Round(min + i * step, 8))];
    }

    private static CifLoop? Table(CifBlock block) => block.Table(Counts);

    private static double? Limit(CifBlock block, string end) => block.Said($"_pd_meas_2theta_range_{end}", $"_pd_proc_2theta_range_{end}")?.Number?.Value;

    // The strongest wavelength first; a second one of about half its weight makes a doublet.
    private static RadiationSaid Said(Dialogue talk, CifBlock block)
    {
        var lines = new List<(int, string)>();
        if (block.Said("_diffrn_radiation_type") is { } type)
            lines.Add((type.Line, "radiation " + type.Text));
        var said = RadiationSaid.In(lines);
        var lengths = block.Table("_diffrn_radiation_wavelength")?.Column("_diffrn_radiation_wavelength")?.Select(v => v.Number?.Value).OfType<double>().Take(2).ToImmutableArray() ?? [];
        if (lengths.IsEmpty && block.Said("_diffrn_radiation_wavelength")?.Number is { } one)
            lengths = [one.Value];
        if (lengths.Any(l => !Radiation.IsPossible(l)))
        {
            talk.Note(Codes.OddCell, Weight.Caution, $"The wavelength {string.Join(", ", lengths.Where(l => !Radiation.IsPossible(l)).Select(l => l.ToString("G6", CultureInfo.InvariantCulture)))} Å is none that a powder is measured with: it is left aside.", talk.FileName);
            lengths = [.. lengths.Where(Radiation.IsPossible)];
        }

        var row = block.Said("_diffrn_radiation_wavelength")?.Line ?? block.Table("_diffrn_radiation_wavelength")?.Line ?? said.Row;
        return said with { Wavelengths = lengths, OnlyFirst = lengths.Length > 1 ? false : said.OnlyFirst, Row = row, Written = string.Join(", ", lengths.Select(l => l.ToString("0.0######", CultureInfo.InvariantCulture))) };
    }

    private static ColumnUnderstanding Shown(CifLoop loop, string tag, int index, string? measures)
        => new(index, tag, measures is null ? ColumnUse.LeftOut : ColumnUse.Measured, null, null, null, measures is null ? "Not part of the scan: it stays in the original." : null,
            [.. loop.Column(tag)!.Value.Take(3).Select(v => v.Text)], [])
        {
            Measures = measures,
        };
}
