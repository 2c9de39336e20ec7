using Holdfast.Amounts;

namespace Holdfast.Studies.Import;

/// <summary>A column while it is read: what it means, and how its numbers become the property's unit.</summary>
internal sealed class Column(int index, string heading, ColumnUse use, Property? property, Unit? unit, string? remark)
{
    private const int MostOddCells = 1000;
    private readonly List<OddCell> odd = [];
    private readonly List<string> examples = [];

    public int Index => index;

    public string Heading => heading;

    public ColumnUse Use => use;

    public Property? Property => property;

    public Unit? Unit => unit;

    public string? Remark => remark;

    /// <summary>The way to the property's unit; null where the numbers are in it already, or have none.</summary>
    public UnitBridge? Bridge { get; init; }

    /// <summary>What numbers are multiplied by before anything else: 100 for fractions that are kept in per cent.</summary>
    public double Scale { get; init; } = 1;

    /// <summary>Rows of a per cent column that hold fractions of 1, as answered; null for none.</summary>
    public HashSet<int>? Fractions { get; init; }

    /// <summary>The way from a unit that stands in a cell; null where cells hold none.</summary>
    public Func<UnitText, UnitBridge?>? UnitsInCells { get; init; }

    /// <summary>True where cells hold hours and minutes, "2:30", that are kept in minutes.</summary>
    public bool HoldsHoursAndMinutes { get; init; }

    /// <summary>What is subtracted from each number: a blank that is still in it.</summary>
    public double Less { get; init; }

    /// <summary>True for a volume of suspension, kept as the mass of powder in it.</summary>
    public bool IsSuspension { get; init; }

    /// <summary>Why it is taken for what it is, in words, or null.</summary>
    public string? Evidence { get; init; }

    /// <summary>Another unit for single rows, by the code as written: an answer said so.</summary>
    public Dictionary<string, UnitBridge> OtherUnit { get; } = new(StringComparer.Ordinal);

    /// <summary>True for concentrations that were worked out here from what was read: of the liquid as it was read, diluted or not.</summary>
    public bool IsOfTheLiquidRead { get; init; }

    /// <summary>The same column with another use.</summary>
    /// <param name="other">The other use.</param>
    /// <param name="what">What it holds then, or null.</param>
    /// <param name="why">What a person should know about it, or null.</param>
    /// <param name="isOfTheLiquidRead">See <see cref="IsOfTheLiquidRead"/>.</param>
    public Column Become(ColumnUse other, Property? what, string? why, bool isOfTheLiquidRead = false)
        => new(index, heading, other, what, unit, why) { Bridge = Bridge, Scale = Scale, UnitsInCells = UnitsInCells, Evidence = Evidence, IsOfTheLiquidRead = isOfTheLiquidRead };

    /// <summary>What a cell of this column holds.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="row">Its row, as a person counts.</param>
    /// <param name="mark">The file's decimal mark; null while it is not settled.</param>
    /// <param name="code">Code of the row as written, or null.</param>
    public Readout Read(Cell cell, int row, DecimalMark? mark, string? code = null)
    {
        if (cell.IsBlank)
            return Readout.Nothing;
        Show(cell);
        switch (cell.Kind)
        {
            case CellKind.Error:
                return Note(row, cell, "an error of the worksheet");
            case CellKind.FormulaWithoutValue:
                return Note(row, cell, "a formula whose result the file does not hold");
            case CellKind.Date:
                return Note(row, cell, "a date");
        }

        if (cell.Kind == CellKind.Text && property == Properties.SpectrometryProperties.Dilution && CellParts.DilutionIn(cell.Text) is { } madeUp)
            return new Readout(madeUp, null, null);
        if (HoldsHoursAndMinutes)
            return CellParts.Minutes(cell) is { } minutes ? new Readout(minutes, null, null) : Note(row, cell, "no hours and minutes");
        var other = code is null ? null : OtherUnit.GetValueOrDefault(code);
        var (text, way) = (cell.Text, other ?? Bridge);
        if (UnitsInCells is not null && CellParts.Split(text) is var (number, stated) && UnitsInCells(stated) is { } own)
            (text, way) = (number, own);
        else if (cell.Kind == CellKind.Text && property == Properties.SpectrometryProperties.Dilution && CellParts.Factor(text) is { } factor)
            text = factor;
        else if (cell.Kind == CellKind.Text && unit is not null && CellParts.Split(text) is (var bare, UnitText.Known same) && same.Unit.HasSameScale(unit))
            text = bare;
        double? factorBeside = null;
        if (cell.Kind == CellKind.Text && property == Properties.SpectrometryProperties.ReportedConcentration && CellParts.Multiplied(text) is var (shown, times))
        {
            text = shown;
            factorBeside = CellText.Read(times, DecimalMark.Point) is CellText.Number f ? f.Value : null;
        }

        if (cell.Kind == CellKind.Text && CellParts.Remarked(text) is { } remarked)
            text = remarked;
        double? scatter = null;
        if (cell.Kind == CellKind.Text && CellParts.Scatter(text) is var (mean, spread))
        {
            scatter = CellText.Read(spread, mark) is CellText.Number u ? Difference(u.Value, way) : null;
            text = mean;
        }

        return CellText.Read(text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) switch
        {
            CellText.Number n => Convert((Fractions?.Contains(row) == true ? 100 * n.Value : n.Value) - Less, way) is { } value ? new Readout(value, null, null) { U = scatter, Factor = factorBeside } : Note(row, cell, "too large for a number"),
            CellText.Censored { Side: CensoredSide.Below } c => new Readout(null, c.Limit is { } limit ? Convert(limit, way) : null, "below a limit"),
            CellText.Censored => new Readout(null, null, "above what can be read"),
            CellText.Ambiguous => Note(row, cell, "two numbers are possible"),
            CellText.NotANumber { Kind: NotANumberKind.Missing } => Readout.Nothing,
            CellText.NotANumber { Kind: NotANumberKind.Words } => Note(row, cell, "no number"),
            CellText.NotANumber { Kind: NotANumberKind.OutOfRange } => Note(row, cell, "too large or too small for a number"),
            CellText.NotANumber => Note(row, cell, "not a number"),
            _ => Readout.Nothing,
        };
    }

    /// <summary>The number of a cell in the property's unit, without a note; null for none.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="mark">The file's decimal mark, or null.</param>
    public double? Value(Cell cell, DecimalMark? mark)
        => CellText.Read(cell.Text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) is CellText.Number n ? Convert(n.Value, Bridge) : null;

    /// <summary>A difference or uncertainty in the property's unit, from one in the column's.</summary>
    public double? ReadDifference(Cell cell, int row, DecimalMark? mark)
    {
        if (cell.IsBlank)
            return null;
        Show(cell);
        if (CellText.Read(cell.Text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) is CellText.Number { Value: >= 0 } n)
            return Difference(n.Value, Bridge);
        Note(row, cell, "no uncertainty");
        return null;
    }

    /// <summary>Notes an odd cell found by other means.</summary>
    public Readout Note(int row, Cell cell, string why)
    {
        if (odd.Count < MostOddCells)
            odd.Add(new OddCell(row, cell.Text, why));
        return new Readout(null, null, why);
    }

    /// <summary>Remembers a cell as an example.</summary>
    public void Show(Cell cell)
    {
        if (examples.Count < 3 && !cell.IsBlank)
            examples.Add(cell.Text);
    }

    /// <summary>A cell's text with the unit of its column, as it will be kept.</summary>
    public string Written(Cell cell) => unit is null || unit.IsOne || cell.Text.EndsWith(unit.Plain, StringComparison.Ordinal) ? cell.Text : cell.Text + " " + unit.Plain;

    /// <summary>For the preview.</summary>
    public ColumnUnderstanding Understood() => new(index, heading, use, property?.Name, unit is null or { IsOne: true } ? null : unit.Plain,
        property is { Unit.Length: > 0 } ? property.Unit : null, remark, [.. examples], [.. odd])
    { Evidence = Evidence };

    private double? Convert(double value, UnitBridge? way) => way is null ? value * Scale : way.Convert(value * Scale);

    private double? Difference(double value, UnitBridge? way) => way is null ? value * Scale : way.ConvertDifference(value * Scale);
}

/// <summary>What a cell of a number column holds, in the property's unit.</summary>
/// <param name="Value">The number, or null.</param>
/// <param name="Below">The limit it lies below, or null.</param>
/// <param name="Why">Why there is no number though something is written; null for a number and for nothing.</param>
internal readonly record struct Readout(double? Value, double? Below, string? Why)
{
    /// <summary>Nothing is written, or a sign for nothing.</summary>
    public static Readout Nothing => default;

    /// <summary>Scatter that stood in the same cell, in the property's unit, or null.</summary>
    public double? U { get; init; }

    /// <summary>A factor that stood beside the number in its cell: "0.30 (x4)"; null for none.</summary>
    public double? Factor { get; init; }

    /// <summary>True when nothing is written.</summary>
    public bool IsNothing => Value is null && Why is null;
}
