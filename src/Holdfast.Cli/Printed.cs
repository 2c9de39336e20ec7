using System.Globalization;
using System.Text;
using System.Text.Json;
using Holdfast.Amounts;
using Holdfast.Reports.Tables;

namespace Holdfast.Cli;

/// <summary>A table printed for a person, as CSV or as JSON.</summary>
internal static class Printed
{
    /// <summary>Prints a table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="form">"text", "csv" or "json".</param>
    /// <param name="output">Where to.</param>
    public static void Write(Table table, string form, TextWriter output)
    {
        switch (form)
        {
            case "csv":
                output.Write(TableCsv.Of(table));
                break;
            case "json":
                output.WriteLine(Json(table));
                break;
            default:
                Text(table, output);
                break;
        }
    }

    /// <summary>Prints several tables: one JSON object with all of them, or one after the other.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="form">"text", "csv" or "json".</param>
    /// <param name="output">Where to.</param>
    public static void Write(IReadOnlyList<Table> tables, string form, TextWriter output)
    {
        if (tables.Count != 1 && form == "json")
        {
            output.WriteLine(Object(json =>
            {
                json.WriteStartArray("tables");
                foreach (var table in tables)
                {
                    json.WriteStartObject();
                    Members(json, table);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }));
            return;
        }

        foreach (var table in tables)
        {
            Write(table, form, output);
            if (table != tables[^1])
                output.WriteLine();
        }
    }

    /// <summary>Indented JSON of the shape every verb shares: one object with its schema.</summary>
    /// <param name="write">Writes the members after the schema.</param>
    public static string Object(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("schema", "holdfast/1");
            write(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>Prints each row of a table as one line of JSON, so that lines of many runs can be put one after the other.</summary>
    /// <param name="table">The table; its id is the kind of the lines.</param>
    /// <param name="output">Where to.</param>
    public static void Lines(Table table, TextWriter output)
    {
        foreach (var row in table.Rows)
        {
            using var stream = new MemoryStream();
            using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            {
                json.WriteStartObject();
                json.WriteString("schema", "holdfast/1");
                json.WriteString("line", table.Id);
                Cells(json, row, table);
                json.WriteEndObject();
            }

            output.WriteLine(Encoding.UTF8.GetString(stream.ToArray()));
        }
    }

    private static string Json(Table table) => Object(json => Members(json, table));

    private static void Members(Utf8JsonWriter json, Table table)
    {
        json.WriteString("table", table.Id);
        json.WriteString("caption", table.Caption.Plain);
        json.WriteStartArray("columns");
        foreach (var column in table.Columns)
        {
            json.WriteStartObject();
            json.WriteString("name", column.Name);
            json.WriteString("heading", column.Heading.Plain);
            if (column.Unit is not null)
                json.WriteString("unit", column.Unit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("rows");
        foreach (var row in table.Rows)
        {
            json.WriteStartObject();
            Cells(json, row, table);
            // A table with a column of that name says it there.
            if (row.Struck && table.Columns.All(c => c.Name != "struck"))
                json.WriteBoolean("struck", true);
            if (row.Doubtful)
                json.WriteBoolean("in_doubt", true);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("notes");
        foreach (var note in table.AllNotes)
            json.WriteStringValue(note.Plain);
        json.WriteEndArray();
    }

    private static void Cells(Utf8JsonWriter json, Row row, Table table)
    {
        for (var i = 0; i < row.Cells.Count; i++)
        {
            json.WritePropertyName(table.Columns[i].Name);
            Cell(json, row.Cells[i], table, table.Columns[i]);
        }
    }

    private static void Cell(Utf8JsonWriter json, Cell cell, Table table, Column column)
    {
        if (JsonNumber.Of(cell, column.Unit ?? "", table.Codes) is { } number)
            number.Write(json);
        else
            json.WriteStringValue(((TextCell)cell).Text.Plain);
    }

    private static void Text(Table table, TextWriter output)
    {
        var headings = table.Columns.Select(c => c.Heading.Plain).ToArray();
        var rows = table.Rows.Select(r => r.Cells.Select((c, i) => Words(c) + (table.Columns[i].NamesRows ? Sign(r) : "")).ToArray()).ToArray();
        var numeric = table.Columns.Select((_, i) => table.Rows.Any(r => r.Cells[i] is NumberCell or MeasuredCell or CensoredCell)).ToArray();
        var widths = headings.Select((h, i) => rows.Select(r => r[i].Length).Append(h.Length).Max()).ToArray();
        output.WriteLine(table.Caption.Plain);
        output.WriteLine();
        Line(headings);
        output.WriteLine(string.Join("  ", widths.Select(w => new string('-', w))));
        foreach (var row in rows)
            Line(row);
        if (table.AllNotes.Count > 0)
            output.WriteLine();
        foreach (var note in table.AllNotes)
            output.WriteLine(note.Plain);

        void Line(string[] cells) => output.WriteLine(
            string.Join("  ", cells.Select((c, i) => numeric[i] ? c.PadLeft(widths[i]) : c.PadRight(widths[i]))).TrimEnd());
    }

    // What the page says by a line through or a dagger, so that the notes below the table have their row.
    private static string Sign(Row row) => row.Struck ? " (struck)" : row.Doubtful ? " †" : "";

    private static string Words(Cell cell) => cell switch
    {
        MeasuredCell measured => RoundedNumber.Shown(measured.Value, measured.U).PlusMinus,
        NumberCell { Decimals: { } decimals } number => number.Value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture),
        NumberCell number => RoundedNumber.WithoutUncertainty(number.Value).PlusMinus,
        CensoredCell censored => RoundedNumber.Censored(censored.Side, censored.Limit, censored.LimitName),
        TextCell text => text.Text.Plain,
        MissingCell missing => missing.Code,
        _ => "",
    };
}
