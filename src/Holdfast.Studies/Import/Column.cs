using Holdfast.Amounts;

namespace Holdfast.Studies.Import;

/// <summary>A column while it is read: what it means, and how its numbers become the property's unit.</summary>
internal sealed class Column(int index, string heading, ColumnUse use, Property? property, Unit? unit, string? remark, UnitBridge? bridge = null)
{
    private const int MostOddCells = 1000;
    private readonly List<OddCell> odd = [];
    private readonly List<string> examples = [];

    public int Index => index;

    public string Heading => heading;

    public ColumnUse Use => use;

    public Property? Property => property;

    public Unit? Unit => unit;

    /// <summary>What a cell of this column holds.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="row">Its row, as a person counts.</param>
    /// <param name="mark">The file's decimal mark; null while it is not settled.</param>
    public Readout Read(Cell cell, int row, DecimalMark? mark)
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
        return CellText.Read(cell.Text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) switch
        {
            CellText.Number n => Convert(n.Value) is { } value ? new Readout(value, null, null) : Note(row, cell, "too large for a number"),
            CellText.Censored { Side: CensoredSide.Below } c => new Readout(null, c.Limit is { } limit ? Convert(limit) : null, "below a limit"),
            CellText.Censored => new Readout(null, null, "above what can be read"),
            CellText.Ambiguous => Note(row, cell, "two numbers are possible"),
            CellText.NotANumber { Kind: NotANumberKind.Missing } => Readout.Nothing,
            CellText.NotANumber { Kind: NotANumberKind.Words } => Note(row, cell, "no number"),
            CellText.NotANumber { Kind: NotANumberKind.OutOfRange } => Note(row, cell, "too large or too small for a number"),
            CellText.NotANumber => Note(row, cell, "not a number"),
            _ => Readout.Nothing,
        };
    }

    /// <summary>A difference or uncertainty in the property's unit, from one in the column's.</summary>
    public double? ReadDifference(Cell cell, int row, DecimalMark? mark)
    {
        if (cell.IsBlank)
            return null;
        Show(cell);
        if (CellText.Read(cell.Text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) is CellText.Number { Value: >= 0 } n)
            return bridge is null ? n.Value : bridge.ConvertDifference(n.Value);
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
    public string Written(Cell cell) => unit is null || unit.IsOne ? cell.Text : cell.Text + " " + unit.Plain;

    /// <summary>For the preview.</summary>
    public ColumnUnderstanding Understood() => new(index, heading, use, property?.Name, unit is null or { IsOne: true } ? null : unit.Plain,
        property is { Unit.Length: > 0 } ? property.Unit : null, remark, [.. examples], [.. odd]);

    private double? Convert(double value) => bridge is null ? value : bridge.Convert(value);
}

/// <summary>What a cell of a number column holds, in the property's unit.</summary>
/// <param name="Value">The number, or null.</param>
/// <param name="Below">The limit it lies below, or null.</param>
/// <param name="Why">Why there is no number though something is written; null for a number and for nothing.</param>
internal readonly record struct Readout(double? Value, double? Below, string? Why)
{
    /// <summary>Nothing is written, or a sign for nothing.</summary>
    public static Readout Nothing => default;

    /// <summary>True when nothing is written.</summary>
    public bool IsNothing => Value is null && Why is null;
}
