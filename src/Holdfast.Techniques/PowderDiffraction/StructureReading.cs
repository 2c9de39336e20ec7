using System.Globalization;
using Holdfast.Diffraction;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Cif;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A crystal structure to compare patterns with: kept as a measurement whose columns are its atoms and its symmetry operations.</summary>
internal static class StructureReading
{
    private static readonly string[] Lengths = ["a", "b", "c"], Angles = ["alpha", "beta", "gamma"];

    /// <summary>Reads the structure of a CIF.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="block">Its block.</param>
    public static MeasurementDraft Read(MeasurementSource source, CifBlock block)
    {
        CifStructure read;
        try
        {
            read = CifStructure.Of(block, source.Talk.FileName);
        }
        catch (StudyException e)
        {
            source.Talk.Note(e.Code, Weight.Stop, e.Message, source.Talk.FileName);
            return new(new RowCount(0, 0, source.Grid.Rows.Count(r => !r.IsBlank), 0), [], []);
        }

        foreach (var caution in read.Cautions)
            source.Talk.Note(Codes.OddCell, Weight.Caution, $"{read.Name}: {caution}.", source.Talk.FileName);
        source.Talk.Assume(source.Question("structure"), Codes.Ambiguous,
            $"This is the structure of {read.Name}: patterns of the study are compared with its lines, places first, intensities as a hint.", ["compare"]);
        var loop = block.Table("_atom_site_fract_x")!;
        var (sites, operations) = (read.Structure.Sites, read.Structure.Operations);
        var rows = Math.Max(sites.Length, operations.Length);
        var cell = read.Structure.Cell;
        MeasuredColumn Numbers(string name, Func<AtomSite, double> of, string unit) => new(name, "", unit) { Numbers = [.. Enumerable.Range(0, rows).Select(i => i < sites.Length ? of(sites[i]) : (double?)null)] };
        MeasuredColumn Words(string name, Func<int, string> of) => new(name, "", "") { Words = [.. Enumerable.Range(0, rows).Select(of)] };
        MeasuredSetting Setting(string name, double value, string unit, string tag) => new(name, value.ToString("R", CultureInfo.InvariantCulture), value, unit, block.Said(tag)?.Line ?? 0);
        return new(new RowCount(loop.Rows, 0, 0, source.Grid.Rows.Count(r => !r.IsBlank) - loop.Rows), [.. loop.Tags.Select((t, i) => Shown(loop, t, i))],
        [
            new Measurement("", DiffractionFiles.TechniqueName, read.Name,
                [
                    new(ScanNames.Structure, read.Name, null, "", block.Line),
                    .. Lengths.Zip(new[] { cell.A, cell.B, cell.C }, (n, v) => Setting(n, v, "Å", "_cell_length_" + n)),
                    .. Angles.Zip(new[] { cell.Alpha, cell.Beta, cell.Gamma }, (n, v) => Setting(n, v, "°", "_cell_angle_" + n)),
                ],
                [
                    Words(ScanNames.Label, i => i < sites.Length ? sites[i].Label : ""), Words(ScanNames.Element, i => i < sites.Length ? sites[i].Element : ""),
                    Numbers(ScanNames.X, s => s.X, ""), Numbers(ScanNames.Y, s => s.Y, ""), Numbers(ScanNames.Z, s => s.Z, ""), Numbers(ScanNames.Occupancy, s => s.Occupancy, ""), Numbers(ScanNames.B, s => s.B, "Å2"),
                    Words(ScanNames.Operation, i => i < operations.Length ? Written(operations[i]) : ""),
                ], source.At(block.Line, null)),
        ])
        {
            HeadingLine = loop.Line,
            Decimal = Amounts.DecimalMark.Point,
            DecimalReason = "a CIF is written with points",
        };
    }

    /// <summary>The structure a measurement holds, or null when it holds none.</summary>
    /// <param name="measurement">Any measurement.</param>
    public static CrystalStructure? Of(Measurement measurement)
    {
        if (measurement.Setting(ScanNames.Structure) is null)
            return null;
        double Value(string name) => measurement.Setting(name)!.Value!.Value;
        double? At(string column, int row) => measurement.Column(column)!.Numbers!.Value[row];
        var labels = measurement.Column(ScanNames.Label)!.Words!.Value;
        var elements = measurement.Column(ScanNames.Element)!.Words!.Value;
        return new(new(Value("a"), Value("b"), Value("c"), Value("alpha"), Value("beta"), Value("gamma")),
            [.. measurement.Column(ScanNames.Operation)!.Words!.Value.Where(w => w.Length > 0).Select(w => SymmetryOperation.Parse(w)!)],
            [.. Enumerable.Range(0, labels.Length).Where(i => elements[i].Length > 0).Select(i => new AtomSite(labels[i], elements[i], At(ScanNames.X, i)!.Value, At(ScanNames.Y, i)!.Value, At(ScanNames.Z, i)!.Value, At(ScanNames.Occupancy, i)!.Value, At(ScanNames.B, i)!.Value))]);
    }

    private static string Written(SymmetryOperation o)
    {
        static string Share(double t) => Math.Round(t * 24) is var n && Math.Abs(n - t * 24) < 1e-3 ? n == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"+{n}/24") : string.Create(CultureInfo.InvariantCulture, $"+{t:F12}");
        return string.Join(',', Enumerable.Range(0, 3).Select(row => string.Concat(Enumerable.Range(0, 3).Select(axis => o.R[row * 3 + axis] switch
        {
            1 => "+" + "xyz"[axis],
            -1 => "-" + "xyz"[axis],
            _ => "",
        })) + Share(o.T[row] - Math.Floor(o.T[row]))));
    }

    private static ColumnUnderstanding Shown(CifLoop loop, string tag, int index)
    {
        var measures = tag switch
        {
            "_atom_site_label" => "name of the atom",
            "_atom_site_type_symbol" => "element",
            "_atom_site_fract_x" or "_atom_site_fract_y" or "_atom_site_fract_z" => "place in the cell",
            "_atom_site_occupancy" => "occupancy",
            "_atom_site_b_iso_or_equiv" or "_atom_site_u_iso_or_equiv" => "thermal motion",
            _ => null,
        };
        return new(index, tag, measures is null ? ColumnUse.LeftOut : ColumnUse.Measured, null, null, null, measures is null ? "Not needed for the lines: it stays in the original." : null,
            [.. loop.Column(tag)!.Value.Take(3).Select(v => v.Text)], [])
        {
            Measures = measures,
        };
    }
}
