using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tables;

/// <summary>A table as plain facts; how it looks is settled when it is written.</summary>
public sealed record Table
{
    /// <summary>A table.</summary>
    /// <param name="id">Short stable name for files and pages: "vessels". Letters, digits and hyphens.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="rows">Its rows, each with a cell for every column.</param>
    /// <param name="codes">Meaning of each code of missing cells; null when none is missing.</param>
    /// <exception cref="ArgumentException">A row is too short or too long, two columns share a name, or a code has no meaning.</exception>
    public Table(string id, RichText caption, IReadOnlyList<Column> columns, IReadOnlyList<Row> rows, IReadOnlyDictionary<string, string>? codes = null)
    {
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(rows);
        foreach (var row in rows)
        {
            if (row.Cells.Count != columns.Count)
                throw new ArgumentException($"A row of table '{id}' does not have a cell for each column.", nameof(rows));
        }

        if (columns.Select(c => c.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count() < columns.Count)
            throw new ArgumentException($"Two columns of table '{id}' have the same name.", nameof(columns));
        Codes = codes ?? new SortedDictionary<string, string>(StringComparer.Ordinal);
        if (rows.SelectMany(r => r.Cells).OfType<MissingCell>().FirstOrDefault(c => !Codes.ContainsKey(c.Code)) is { } unexplained)
            throw new ArgumentException($"Table '{id}' does not explain the code '{unexplained.Code}'.", nameof(codes));
        (Id, Caption, Columns, Rows) = (id, caption, columns, rows);
    }

    /// <summary>Short stable name.</summary>
    public string Id { get; }

    /// <summary>What it shows.</summary>
    public RichText Caption { get; }

    /// <summary>Its columns.</summary>
    public IReadOnlyList<Column> Columns { get; }

    /// <summary>Its rows.</summary>
    public IReadOnlyList<Row> Rows { get; }

    /// <summary>Meaning of each code of missing cells.</summary>
    public IReadOnlyDictionary<string, string> Codes { get; }

    /// <summary>What n counts, what ± means, and anything else below the table.</summary>
    public IReadOnlyList<RichText> Notes { get; init; } = [];

    /// <summary>The same table with fewer columns.</summary>
    /// <param name="names">Names of the columns that stay, in the order of the table.</param>
    internal Table Only(params IReadOnlyCollection<string> names)
    {
        int[] kept = [.. Enumerable.Range(0, Columns.Count).Where(c => names.Contains(Columns[c].Name))];
        return new(Id, Caption, [.. kept.Select(c => Columns[c])], [.. Rows.Select(r => r with { Cells = [.. kept.Select(c => r.Cells[c])] })], Codes) { Notes = Notes };
    }

    /// <summary>The notes, followed by the meaning of each code that occurs and by what a line through means.</summary>
    public IReadOnlyList<RichText> AllNotes
    {
        get
        {
            var used = Rows.SelectMany(r => r.Cells).OfType<MissingCell>().Select(c => c.Code).ToHashSet(StringComparer.Ordinal);
            var codes = Codes.Where(c => used.Contains(c.Key)).OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => (RichText)$"{c.Key}: {c.Value}.");
            return [.. Notes, .. codes, .. Rows.Any(r => r.Struck) ? [(RichText)"Line through: struck, shown but not used."] : Array.Empty<RichText>()];
        }
    }

    /// <summary>The same table with some columns directly after the one that names the rows: results before what they rest on, where a page is narrow.</summary>
    /// <param name="names">Names of the columns, in the order wanted.</param>
    public Table Leading(params string[] names)
    {
        var naming = Enumerable.Range(0, Columns.Count).Where(i => Columns[i].NamesRows);
        var leading = names.SelectMany(n => Enumerable.Range(0, Columns.Count).Where(i => Columns[i].Name == n));
        int[] order = [.. naming.Concat(leading).Concat(Enumerable.Range(0, Columns.Count)).Distinct()];
        return new(Id, Caption, [.. order.Select(i => Columns[i])], [.. Rows.Select(r => r with { Cells = [.. order.Select(i => r.Cells[i])] })], Codes) { Notes = Notes };
    }
}
