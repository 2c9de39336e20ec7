using System.Globalization;
using System.Text;
using Holdfast.Amounts;

namespace Holdfast.Reports.Tables;

/// <summary>
/// A table as CSV (RFC 4180): every digit, the unit in the name of the column, uncertainties in columns of their own. With a decimal comma the
/// separator is a semicolon. Words that a spreadsheet would run as a formula get an apostrophe in front.
/// </summary>
public static class TableCsv
{
    /// <summary>The text of a file.</summary>
    /// <param name="table">The table.</param>
    /// <param name="mark">Point with commas between fields, or comma with semicolons.</param>
    public static string Of(Table table, DecimalMark mark = DecimalMark.Point)
    {
        ArgumentNullException.ThrowIfNull(table);
        var separator = mark == DecimalMark.Comma ? ';' : ',';
        var fields = table.Columns.SelectMany((column, c) => Fields(table, column, c)).ToList();
        if (table.Rows.Any(r => r.Struck))
            fields.Add(("struck", row => row.Struck ? "true" : "false"));
        if (table.Rows.Any(r => r.Doubtful))
            fields.Add(("in_doubt", row => row.Doubtful ? "true" : "false"));

        var to = new StringBuilder();
        to.AppendJoin(separator, fields.Select(f => f.Name)).Append("\r\n");
        foreach (var row in table.Rows)
            to.AppendJoin(separator, fields.Select(f => Quoted(Text(f.Value(row), mark), separator))).Append("\r\n");
        return to.ToString();
    }

    // The columns of the file for a column of the table: value, and as its cells need them, uncertainty, limit and status.
    private static IEnumerable<(string Name, Func<Row, object?> Value)> Fields(Table table, Column column, int index)
    {
        var cells = table.Rows.Select(r => r.Cells[index]).ToArray();
        yield return (column.DataName(), row => row.Cells[index] switch
        {
            TextCell text => Guarded(text.Text.Plain),
            NumberCell number => number.Value,
            MeasuredCell measured => measured.Value,
            _ => null,
        });
        if (cells.Any(c => c is MeasuredCell))
            yield return (column.DataName("u_"), row => row.Cells[index] is MeasuredCell measured ? measured.U : null);
        if (cells.Any(c => c is CensoredCell))
            yield return (column.DataName("limit_"), row => row.Cells[index] is CensoredCell censored ? censored.Limit : null);
        if (cells.Any(c => c is CensoredCell or MissingCell))
        {
            yield return ("status_" + column.Name, row => row.Cells[index] switch
            {
                CensoredCell { Side: CensoredSide.Below } => "below",
                CensoredCell => "above",
                MissingCell missing => Guarded(missing.Code),
                _ => "",
            });
        }
    }

    private static string Text(object? value, DecimalMark mark) => value switch
    {
        double number => number.ToString("R", CultureInfo.InvariantCulture).Replace('.', mark == DecimalMark.Comma ? ',' : '.'),
        string text => text,
        _ => "",
    };

    // OWASP, "CSV injection": a field that starts with one of these may be run when a spreadsheet opens the file.
    private static string Guarded(string text) => text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' ? "'" + text : text;

    private static string Quoted(string field, char separator)
        => field.AsSpan().IndexOfAny([separator, '"', '\n', '\r']) < 0 && field.Trim() == field
            ? field
            : "\"" + field.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
}
