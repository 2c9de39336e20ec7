using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Holdfast.Studies.Package;

/// <summary>A table of the plain package: a name, typed fields, rows of cells. UTF-8, comma, point, quoted after RFC 4180, lines end with LF.</summary>
/// <param name="name">Name of the resource; its file is this with ".csv".</param>
/// <param name="description">What it holds, in words.</param>
/// <param name="fields">Its columns.</param>
/// <param name="key">Names of the columns that tell a row from all others.</param>
public sealed class PlainTable(string name, string description, ImmutableArray<PlainField> fields, ImmutableArray<string> key)
{
    private readonly StringBuilder body = new();

    /// <summary>Name of the resource; its file is this with ".csv".</summary>
    public string Name => name;

    /// <summary>What it holds, in words.</summary>
    public string Description => description;

    /// <summary>Its columns.</summary>
    public ImmutableArray<PlainField> Fields => fields;

    /// <summary>Names of the columns that tell a row from all others.</summary>
    public ImmutableArray<string> Key => key;

    /// <summary>How many rows were added.</summary>
    public int Rows { get; private set; }

    /// <summary>Adds a row: text, whole numbers, numbers, truth values or null, as many as there are fields.</summary>
    /// <param name="cells">The cells.</param>
    public void Add(params ReadOnlySpan<object?> cells)
    {
        if (cells.Length != Fields.Length)
            throw new ArgumentException($"{Name} has {Fields.Length.ToString(CultureInfo.InvariantCulture)} fields.", nameof(cells));
        for (var i = 0; i < cells.Length; i++)
        {
            if (i > 0)
                body.Append(',');
            body.Append(Cell(cells[i]));
        }
        body.Append('\n');
        Rows++;
    }

    /// <summary>The file's bytes.</summary>
    public byte[] ToBytes() => Encoding.UTF8.GetBytes(string.Join(',', Fields.Select(f => Quote(f.Name))) + "\n" + body);

    private static string Cell(object? value) => value switch
    {
        null => "",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        int whole => whole.ToString(CultureInfo.InvariantCulture),
        long whole => whole.ToString(CultureInfo.InvariantCulture),
        bool truth => truth ? "true" : "false",
        DateTimeOffset time => time.ToString("yyyy-MM-ddTHH:mm:ss.fffzzz", CultureInfo.InvariantCulture),
        string text => Quote(PlainCell.Guard(text)),
        _ => throw new ArgumentException($"A cell cannot hold a {value.GetType().Name}.", nameof(value)),
    };

    // A lone space or an empty text is quoted too, so that it does not read as a missing value.
    private static string Quote(string text)
        => text.Length == 0 || text.AsSpan().ContainsAny(",\"\r\n\0") || text[0] == ' ' || text[^1] == ' '
            ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\""
            : text;
}
