using System.Collections.Frozen;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>
/// A table of published uptakes: columns sorbent, metal, q and source, with Ce, or with C0 and dose from which Ce follows by the mass balance C0 − D·q; where known u, pH,
/// T, water and read. Units stand in the headings; numbers have a decimal point. A row that cannot be used is left out and said.
/// </summary>
public static class PublishedTable
{
    /// <summary>Code of a row or column that is left out.</summary>
    public const string LeftOut = "HF-792";

    /// <summary>Code of a row whose concentrations, dose and uptake contradict each other.</summary>
    public const string OpenBalance = "HF-793";

    /// <summary>Largest gap between C0 and Ce + D·q of one row, as a share of C0, before the row is said to contradict itself; no unit. Common practice.</summary>
    public const double Balance = 0.05;

    private static readonly Unit Concentration = Unit.Parse("mg/L");
    private static readonly FrozenDictionary<string, Unit?> Columns = new Dictionary<string, Unit?>(StringComparer.OrdinalIgnoreCase)
    {
        ["sorbent"] = null,
        ["metal"] = null,
        ["Ce"] = Concentration,
        ["q"] = Unit.Parse("mg/g"),
        ["u"] = Unit.Parse("mg/g"),
        ["C0"] = Concentration,
        ["dose"] = Unit.Parse("g/L"),
        ["pH"] = null,
        ["T"] = Unit.Parse("K"),
        ["water"] = null,
        ["source"] = null,
        ["read"] = null,
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>Reads one.</summary>
    /// <param name="file">A text file with separators.</param>
    /// <param name="cancel">Stops the reading.</param>
    /// <returns>The uptakes in the order of the rows, with findings for what was left out.</returns>
    /// <exception cref="StudyException">The file is not text.</exception>
    public static Outcome<IReadOnlyList<PublishedUptake>> Read(IncomingFile file, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(file);
        GridRow[] rows = [.. new DelimitedText().Read(file.Bytes, file.Name, Answers.None, cancel)[0].Rows.Where(r => !r.IsBlank)];
        var findings = new List<Finding>();
        var at = new Dictionary<string, (int Column, Unit? Unit)>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; rows.Length > 0 && i < rows[0].Cells.Length; i++)
        {
            if (Understood(rows[0].At(i).Text) is not { } column)
                findings.Add(Said($"{file.Name}: the column “{rows[0].At(i).Text}” is not used. Columns: {string.Join(", ", Columns.Keys.Order(StringComparer.OrdinalIgnoreCase))}, with their units."));
            else
                at[column.Name] = (i, column.Unit);
        }

        var found = new List<PublishedUptake>();
        foreach (var row in rows.Skip(1))
        {
            if (One(new(row, at), out var why) is { } uptake)
            {
                found.Add(uptake);
                if (uptake is { Start: { } c0, Dose: { } dose } && Math.Abs(c0 - uptake.Left - dose * uptake.Uptake) > Balance * c0)
                {
                    findings.Add(Finding.Of(OpenBalance, Weight.Caution, FormattableString.Invariant(
                        $"{file.Name}, row {row.Number}: Ce + dose × q is {uptake.Left + dose * uptake.Uptake:G4} mg/L and C0 {c0:G4} mg/L. Look the numbers up again in {uptake.Source}."), uptake.Sorbent));
                }
            }
            else
            {
                findings.Add(Said($"{file.Name}, row {Ordinal.Text(row.Number)} is left out: {why}"));
            }
        }

        return new(found, findings);
    }

    // A heading that is one of ours, with a unit that can be converted where it needs one.
    private static (string Name, Unit? Unit)? Understood(string heading)
    {
        var header = Header.Read(heading);
        if (!Columns.TryGetValue(header.Name, out var wanted))
            return null;
        if (wanted is not { } house)
            return (header.Name, null);
        return header.Unit is UnitText.Known { Unit: var unit } && unit.IsConvertibleTo(house) ? (header.Name, unit) : null;
    }

    private static PublishedUptake? One(Cells cells, out string why)
    {
        var sorbent = cells.Words("sorbent");
        var metal = cells.Words("metal");
        var source = cells.Words("source");
        double? q = cells.Number("q"), ce = cells.Number("Ce"), c0 = cells.Number("C0"), dose = cells.Number("dose"), u = cells.Number("u"), ph = cells.Number("pH"), t = cells.Number("T");
        var left = ce ?? (c0 is { } start && dose is { } d && q is { } amount ? start - d * amount : null);
        why = cells.Odd is { } odd ? odd
            : sorbent is null || metal is null ? "it names no sorbent or no metal."
            : source is null ? "it names no source. A value without one cannot be defended."
            : q is not > 0 ? "it has no q above 0 with a unit (mg/g). A fitted capacity is no uptake at a concentration."
            : left is null ? "it has neither Ce nor both C0 and dose, with units, so nothing can be set beside it."
            : left is not > 0 ? "its Ce is not above 0."
            : u is <= 0 || c0 is <= 0 || dose is <= 0 || t is <= 0 ? "u, C0, dose and T are above 0, or empty."
            : "";
        return why.Length > 0 ? null
            : new(sorbent!, ElementNames.Find(metal!)?.Symbol ?? metal!, left!.Value, q!.Value, u, c0, dose, ph, t, cells.Words("water"), source!, cells.Words("read"));
    }

    private static Finding Said(string sentence) => Finding.Of(LeftOut, Weight.Caution, sentence);

    private sealed class Cells(GridRow row, Dictionary<string, (int Column, Unit? Unit)> at)
    {
        /// <summary>What is written where a number belongs; null when nothing is.</summary>
        public string? Odd { get; private set; }

        public string? Words(string name) => at.TryGetValue(name, out var place) && row.At(place.Column) is { IsBlank: false } cell ? cell.Text : null;

        public double? Number(string name)
        {
            if (Words(name) is not { } text)
                return null;
            if (CellText.Read(text, DecimalMark.Point) is not CellText.Number { Value: var value } || !double.IsFinite(value))
            {
                Odd ??= $"“{text}” under {name} is no number with a decimal point.";
                return null;
            }

            return at[name].Unit is { } unit && Columns[name] is { } house ? unit.Convert(value, house) : value;
        }
    }
}
