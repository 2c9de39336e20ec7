using System.Globalization;
using System.Text;

namespace Holdfast;

/// <summary>A table of the trade that ships inside the library: comma-separated, header row, fields quoted where they hold a comma.</summary>
internal static class TradeTable
{
    /// <summary>All rows of a table.</summary>
    /// <param name="table">The table's text.</param>
    /// <exception cref="FormatException">A row has more or fewer fields than the header.</exception>
    public static IReadOnlyList<TradeRow> Read(string table)
    {
        string[]? header = null;
        var rows = new List<TradeRow>();
        foreach (var line in table.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var fields = Split(line);
            if (header is null)
                header = fields;
            else if (fields.Length == header.Length)
                rows.Add(new(header, fields));
            else
                throw new FormatException($"'{line}' has the wrong number of fields.");
        }

        return rows;
    }

    private static string[] Split(string line)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
                quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else
                field.Append(c);
        }

        fields.Add(field.ToString());
        return [.. fields];
    }
}

/// <summary>One row of a table.</summary>
/// <param name="Header">Names of the columns.</param>
/// <param name="Fields">Fields of the row, one for each column.</param>
internal sealed record TradeRow(string[] Header, string[] Fields)
{
    /// <summary>The text in a column.</summary>
    public string this[string column]
        => Array.IndexOf(Header, column) is var at and >= 0 ? Fields[at] : throw new ArgumentException($"There is no column '{column}'.", nameof(column));

    /// <summary>The number in a column, in the unit that the column names; null where the field is empty.</summary>
    public double? Number(string column) => this[column] is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;
}
