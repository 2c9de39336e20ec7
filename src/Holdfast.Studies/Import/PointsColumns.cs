using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>Columns of numbers that belong to no sample: points for a fit.</summary>
internal static class PointsColumns
{
    /// <summary>True when at least two columns hold mostly numbers.</summary>
    public static bool Are(TableLayout layout) => Numeric(layout).Count >= 2;

    /// <summary>Places of the columns that hold mostly numbers.</summary>
    public static List<int> Numeric(TableLayout layout) => [.. Enumerable.Range(0, layout.Headings.Length).Where(i =>
    {
        var filled = layout.Body.Select(r => r.At(i)).Where(c => !c.IsBlank).ToList();
        var numbers = filled.Count(c => c.Kind == CellKind.Number || (c.Kind == CellKind.Text && CellText.Read(c.Text, null) is CellText.Number or CellText.Ambiguous or CellText.Censored));
        return numbers > 0 && numbers * 2 > filled.Count;
    })];

    /// <summary>Understands them.</summary>
    public static Draft Understand(TableSource source, DecimalMark? mark)
    {
        var layout = source.Layout;
        var cells = layout.Body.Where(r => !r.IsBlank).ToImmutableArray();
        var numeric = Numeric(layout);
        var columns = layout.Headings.Select((h, i) => new Column(i, h, numeric.Contains(i) ? ColumnUse.Cell : ColumnUse.NotUnderstood, null, null, null)).ToList();
        var points = ImmutableArray.CreateBuilder<PointsColumn>();
        foreach (var i in numeric)
        {
            var header = Header.Read(layout.Headings[i]);
            var stated = header.Unit is UnitText.Absent && layout.Units is { } line ? Unit.Read(line.At(i).Text) : header.Unit;
            if (source.Talk.Answers.To("unit:" + header.Name) is { } answer)
                stated = Answers.Unit(answer) as UnitText.Known ?? throw Answers.Unknown("unit:" + header.Name, answer, "one clear unit, for example mg/L");
            if (stated is UnitText.Ambiguous several)
                source.Talk.Ask("unit:" + header.Name, Codes.Ambiguous, $"{several.Text} can mean several units in {header.Name}. {several.Question}", [.. several.Candidates.Select(c => c.Plain)], header.Name);
            else if (stated is not UnitText.Known)
                source.Talk.Note(Codes.UnitMissing, Weight.Caution, $"{header.Name} has no unit. A fit of it has no unit either. Choose one, for example mg/L.", header.Name);
            points.Add(new PointsColumn(header.Name, (stated as UnitText.Known)?.Unit, [.. cells.Select(r => columns[i].Read(r.At(i), r.Number, mark).Value)]));
        }
        return new Draft(new RowCount(cells.Length, 0, layout.Body.Length - cells.Length, 0), [.. columns.Select(c => c.Understood())], new TakenIn())
        {
            Points = new PointsTable(points.ToImmutable(), source.At(0, null)),
        };
    }
}
