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
        var fields = TableFields.Of(table);
        var to = new StringBuilder();
        to.AppendJoin(separator, fields.Select(f => f.Name)).Append("\r\n");
        foreach (var row in table.Rows)
            to.AppendJoin(separator, fields.Select(f => Quoted(Text(f.Value(row), mark), separator))).Append("\r\n");
        return to.ToString();
    }

    private static string Text(object? value, DecimalMark mark) => value switch
    {
        double number => number.ToString("R", CultureInfo.InvariantCulture).Replace('.', mark == DecimalMark.Comma ? ',' : '.'),
        string text => Guarded(text),
        bool said => said ? "true" : "false",
        _ => "",
    };

    // OWASP, "CSV injection": a field that starts with one of these may be run when a spreadsheet opens the file.
    private static string Guarded(string text) => text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' ? "'" + text : text;

    private static string Quoted(string field, char separator)
        => field.AsSpan().IndexOfAny([separator, '"', '\n', '\r']) < 0 && field.Trim() == field
            ? field
            : "\"" + field.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
}
