using System.Globalization;
using System.Text;

namespace Holdfast.Testing;

/// <summary>A table of checked numbers below reference/: comma-separated, header row, fields quoted where they hold a comma.</summary>
internal static class ReferenceTable
{
    /// <summary>All rows of a file, given by its folders and name below reference/.</summary>
    public static IReadOnlyList<ReferenceRow> Read(params string[] parts)
    {
        var path = Repository.Path(["reference", .. parts]);
        var lines = File.ReadAllLines(path).Where(l => l.Length > 0).ToArray();
        var header = Fields(lines[0]);
        return [.. lines.Skip(1).Select(l => new ReferenceRow(header, Fields(l)))];
    }

    private static List<string> Fields(string line)
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
        return fields;
    }
}

/// <summary>One row of a reference table.</summary>
internal sealed record ReferenceRow(IReadOnlyList<string> Header, IReadOnlyList<string> Fields)
{
    /// <summary>The text in the named column.</summary>
    public string this[string column]
        => Header.ToList().IndexOf(column) is var i and >= 0 ? Fields[i] : throw new ArgumentException($"No column '{column}'.", nameof(column));

    /// <summary>The number in the named column.</summary>
    public double Number(string column) => double.Parse(this[column], CultureInfo.InvariantCulture);

    /// <summary>True when the named column is not empty.</summary>
    public bool Has(string column) => this[column].Length > 0;
}
