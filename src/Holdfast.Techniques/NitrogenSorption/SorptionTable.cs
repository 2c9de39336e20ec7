using System.Collections.Immutable;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>One table of an isotherm in a grid: its heading, its rows, and which columns belong together.</summary>
/// <param name="Heading">The heading.</param>
/// <param name="Units">The line of units under it, or null.</param>
/// <param name="Labels">The line above it that names branches or powders, or null.</param>
/// <param name="Title">A line above it that names the branch of the whole table, or null.</param>
/// <param name="Body">Rows below, up to the next table.</param>
/// <param name="Meanings">What each column holds.</param>
/// <param name="Series">Columns that belong together, a curve each.</param>
internal sealed record SorptionTable(
    GridRow Heading, GridRow? Units, GridRow? Labels, string? Title, ImmutableArray<GridRow> Body, ImmutableArray<SorptionColumn> Meanings, ImmutableArray<SorptionSeries> Series)
{
    private const int FewestRows = 3;
    private const int RowsSearched = 3;

    /// <summary>Heading of a column with its unit, as written.</summary>
    /// <param name="column">Place of the column, from 0.</param>
    public string Written(int column) => Join(Heading, Units, column);

    /// <summary>True for a table that the isotherm was made into, for a line or for pores: it is left out.</summary>
    public bool IsDerived => Series.IsEmpty;

    /// <summary>True for a row with numbers under a pressure and its amount, whatever the decimal mark.</summary>
    /// <param name="row">A row of the body.</param>
    public bool LooksLikeData(GridRow row)
    {
        bool IsNumber(int column) => row.At(column) is { IsBlank: false } cell && TableLayout.IsNumeric(cell);
        return Series.Any(s => IsNumber(s.Relative ?? s.Absolute!.Value) && IsNumber(s.Amount));
    }

    /// <summary>The tables of a grid, one below the other, derived ones included; none where no heading names a pressure and an amount over numbers.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="unitOfPressure">What a setting says of the unit of pressure: "relative" turns pressures into p/p0; null for nothing.</param>
    public static ImmutableArray<SorptionTable> In(Grid grid, string? unitOfPressure)
    {
        var rows = grid.Rows;
        var starts = new List<int>();
        for (var i = 0; i < rows.Length; i++)
        {
            // A line of units is no heading of its own: "p/p0 | cm3/g" under words.
            if (IsHeading(rows, i) && !(starts is [.., var last] && i > 0 && last == i - 1 && ReferenceEquals(UnitsBelow(rows, last), rows[i])))
                starts.Add(i);
        }

        return [.. starts.Select((at, k) => Of(rows, at, k + 1 < starts.Count ? starts[k + 1] : rows.Length, unitOfPressure))];
    }

    private static bool IsHeading(ImmutableArray<GridRow> rows, int at)
    {
        if (rows[at].Filled < 2 || rows[at].Cells.Any(c => !c.IsBlank && TableLayout.IsNumeric(c)))
            return false;
        var meanings = Meant(rows[at], UnitsBelow(rows, at));
        if (!meanings.Any(m => m is SorptionColumn.Relative or SorptionColumn.Absolute) || !(meanings.Contains(SorptionColumn.Amount) || meanings.Contains(SorptionColumn.Branch)))
            return false;
        var pressure = meanings.IndexOf(meanings.Contains(SorptionColumn.Relative) ? SorptionColumn.Relative : SorptionColumn.Absolute);
        // Numbers follow at once, but for a line of units and one that names the branch: a line of settings stands over no numbers.
        var below = rows.Skip(at + 1).Where(r => !r.IsBlank).ToList();
        var first = below.FindIndex(r => !r.At(pressure).IsBlank && TableLayout.IsNumeric(r.At(pressure)));
        return first is >= 0 and <= 2 && below.Take(first).All(r => r.Filled == 1 || ReferenceEquals(r, UnitsBelow(rows, at)) || r.Cells.All(c => c.IsBlank || (!TableLayout.IsNumeric(c) && SorptionWords.Setting(c.Text) is null)))
            && below.Skip(first).Take(FewestRows).Count(r => !r.At(pressure).IsBlank && TableLayout.IsNumeric(r.At(pressure))) >= FewestRows;
    }

    private static GridRow? UnitsBelow(ImmutableArray<GridRow> rows, int at)
    {
        var below = at + 1 < rows.Length ? rows[at + 1] : null;
        return below is { IsBlank: false } && !below.Cells.Any(c => !c.IsBlank && TableLayout.IsNumeric(c))
            && below.Cells.Any(c => !c.IsBlank && (AmountUnit.In(c.Text) is not null || PressureUnit.In(c.Text) is not null))
            && below.Cells.Select((c, i) => (c, i)).All(x => SorptionWords.Meaning(x.c.Text) is not SorptionColumn.Relative || SorptionWords.Meaning(rows[at].At(x.i).Text) is SorptionColumn.Relative) ? below : null;
    }

    private static string Join(GridRow heading, GridRow? units, int column) => units is null || units.At(column).IsBlank ? heading.At(column).Text : $"{heading.At(column).Text} ({units.At(column).Text.Trim('(', ')', '[', ']')})";

    private static ImmutableArray<SorptionColumn> Meant(GridRow heading, GridRow? units)
        => [.. Enumerable.Range(0, heading.Cells.Length).Select(c => SorptionWords.Meaning(Join(heading, units, c)))];

    private static SorptionTable Of(ImmutableArray<GridRow> rows, int at, int to, string? unitOfPressure)
    {
        var units = UnitsBelow(rows, at);
        var meanings = Meant(rows[at], units).ToArray();
        var first = at + (units is null ? 1 : 2);
        ImmutableArray<GridRow> body = [.. rows[first..to].Where(r => !r.IsBlank)];
        var isRelative = unitOfPressure is not null && FileWords.Plain(unitOfPressure).Contains("rel", StringComparison.Ordinal);
        for (var c = 0; c < meanings.Length; c++)
        {
            if (isRelative && meanings[c] == SorptionColumn.Absolute)
                meanings[c] = SorptionColumn.Relative;
            // "Adsorption" over numbers holds the amounts of that branch.
            if (meanings[c] == SorptionColumn.Branch && body.Count(r => !r.At(c).IsBlank && TableLayout.IsNumeric(r.At(c))) * 2 > body.Length)
                meanings[c] = SorptionColumn.Amount;
            // A column whose every word names a branch is one, whatever it is called.
            if (meanings[c] == SorptionColumn.Other && body.Count(r => SorptionWords.IsBranchLabel(r.At(c).Text)) * 10 > body.Count(r => !r.At(c).IsBlank) * 8)
                meanings[c] = SorptionColumn.Branch;
        }

        var isDerived = meanings.Contains(SorptionColumn.Derived) && !meanings.Contains(SorptionColumn.Saturation) && !meanings.Contains(SorptionColumn.Absolute);
        var labels = at > 0 && !rows[at - 1].IsBlank && rows[at - 1].Cells.Where(c => !c.IsBlank).All(c => !TableLayout.IsNumeric(c) && SorptionWords.Setting(c.Text) is null && c.Text.IndexOfAny([':', '=']) < 0) ? rows[at - 1] : null;
        var title = Enumerable.Range(1, RowsSearched).Select(k => at - k).Where(k => k >= 0 && rows[k].Filled == 1).Select(k => rows[k].Cells.First(c => !c.IsBlank).Text).FirstOrDefault(SorptionWords.IsBranchLabel);
        ImmutableArray<SorptionSeries> series = isDerived ? [] : Together([.. meanings], rows[at], units, labels);
        // A line that named nothing of the columns is one of the settings.
        if (series.All(s => s.Powder is null && (labels is null || !labels.Cells.Any(c => SorptionWords.IsBranchLabel(c.Text)))))
            labels = null;
        return new(rows[at], units, labels, title is null ? null : SorptionWords.Branch(title), body, [.. meanings], series);
    }

    // Each p/p0, or each pressure where none is relative, begins a curve; amounts that follow belong to it.
    private static ImmutableArray<SorptionSeries> Together(ImmutableArray<SorptionColumn> meanings, GridRow heading, GridRow? units, GridRow? labels)
    {
        var kind = meanings.Contains(SorptionColumn.Relative) ? SorptionColumn.Relative : SorptionColumn.Absolute;
        int[] all = [.. Enumerable.Range(0, meanings.Length)];
        int[] axes = [.. all.Where(c => meanings[c] == kind)], amounts = [.. all.Where(c => meanings[c] == SorptionColumn.Amount)];
        var series = ImmutableArray.CreateBuilder<SorptionSeries>();
        foreach (var amount in amounts)
        {
            var axis = axes.LastOrDefault(a => a < amount, axes[0]);
            // From this axis (or the left edge) up to the next one.
            var from = axis == axes[0] ? 0 : axis;
            var end = axes.FirstOrDefault(a => a > axis, meanings.Length);
            int? Near(SorptionColumn what) => all.Where(c => c >= from && c < end && meanings[c] == what).Cast<int?>().FirstOrDefault() ?? (axes.Length == 1 ? all.Where(c => meanings[c] == what).Cast<int?>().FirstOrDefault() : null);
            var label = labels is null ? null : all.Where(c => c >= from && c <= amount && !labels.At(c).IsBlank).Select(c => labels.At(c).Text).LastOrDefault();
            var branch = SorptionWords.Branch(heading.At(amount).Text) ?? SorptionWords.Branch(heading.At(axis).Text) ?? (label is not null ? SorptionWords.Branch(label) : null);
            var powder = label is not null && !SorptionWords.IsBranchLabel(label) && label.Any(char.IsLetter) && AmountUnit.In(label) is null && SorptionWords.Setting(label) is null && axes.Length > 1 ? label : null;
            series.Add(new(kind == SorptionColumn.Relative ? axis : null, kind == SorptionColumn.Absolute ? axis : Near(SorptionColumn.Absolute), Near(SorptionColumn.Saturation), amount,
                all.Where(c => meanings[c] == SorptionColumn.Branch).Cast<int?>().FirstOrDefault(), branch, powder));
        }

        // The same amounts in a second unit are no second curve.
        return [.. series.GroupBy(s => (s.Relative ?? s.Absolute, s.Branch, s.Powder)).Select(g => g.OrderByDescending(s => AmountUnit.In(Join(heading, units, s.Amount)) is { Per: AmountPer.Gram } ? 1 : 0).ThenBy(s => s.Amount).ToArray())
            .Select(g => g[0] with { Again = g.Length > 1 ? g[1].Amount : null }).OrderBy(s => s.Amount)];
    }
}

/// <summary>Columns of one curve.</summary>
/// <param name="Relative">Column of p/p0, or null.</param>
/// <param name="Absolute">Column of the pressure, or null.</param>
/// <param name="Saturation">Column of the saturation pressure, or null.</param>
/// <param name="Amount">Column of the amount.</param>
/// <param name="BranchColumn">Column that names the branch row by row, or null.</param>
/// <param name="Branch">Branch of the whole curve, or null.</param>
/// <param name="Powder">Powder by a label above, or null.</param>
internal sealed record SorptionSeries(int? Relative, int? Absolute, int? Saturation, int Amount, int? BranchColumn, string? Branch, string? Powder)
{
    /// <summary>Column of the same amounts in a second unit, or null.</summary>
    public int? Again { get; init; }
}
