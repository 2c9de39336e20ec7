using Holdfast.Amounts;

namespace Holdfast.Reports.Tables;

/// <summary>The columns of a table as data files have them: value, and as its cells need them, uncertainty, limit and status in columns of their own.</summary>
/// <param name="Name">Name in data files, with the unit.</param>
/// <param name="Heading">Heading for a reader, without the unit.</param>
/// <param name="Unit">Its unit; null for none.</param>
/// <param name="Value">The value in a row: a number, a text, true or false; null for nothing.</param>
internal sealed record TableFields(string Name, string Heading, string? Unit, Func<Row, object?> Value)
{
    /// <summary>The fields of a table, in the order of its columns.</summary>
    /// <param name="table">The table.</param>
    public static IReadOnlyList<TableFields> Of(Table table)
    {
        var fields = table.Columns.SelectMany((column, c) => Of(table, column, c)).ToList();
        if (table.Rows.Any(r => r.Struck))
            fields.Add(new("struck", "Struck", null, row => row.Struck));
        if (table.Rows.Any(r => r.Doubtful))
            fields.Add(new("in_doubt", "In doubt", null, row => row.Doubtful));
        return fields;
    }

    private static IEnumerable<TableFields> Of(Table table, Column column, int index)
    {
        var cells = table.Rows.Select(r => r.Cells[index]).ToArray();
        var heading = column.Heading.Plain;
        yield return new(column.DataName(), heading, column.Unit, row => row.Cells[index] switch
        {
            TextCell text => text.Text.Plain,
            NumberCell number => number.Value,
            MeasuredCell measured => measured.Value,
            _ => null,
        });
        if (cells.Any(c => c is MeasuredCell))
            yield return new(column.DataName("u_"), $"± of {heading}", column.Unit, row => row.Cells[index] is MeasuredCell measured ? measured.U : null);
        if (cells.Any(c => c is CensoredCell))
            yield return new(column.DataName("limit_"), $"Limit of {heading}", column.Unit, row => row.Cells[index] is CensoredCell censored ? censored.Limit : null);
        if (cells.Any(c => c is CensoredCell or MissingCell))
        {
            yield return new("status_" + column.Name, $"Status of {heading}", null, row => row.Cells[index] switch
            {
                CensoredCell { Side: CensoredSide.Below } => "below",
                CensoredCell => "above",
                MissingCell missing => missing.Code,
                _ => "",
            });
        }
    }
}
