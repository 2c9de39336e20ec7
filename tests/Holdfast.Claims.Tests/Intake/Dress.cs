using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Claims.Tests.Intake;

/// <summary>The same table in another appearance: what a spreadsheet, a language or a habit does to a file without a change of its meaning.</summary>
internal static partial class Dress
{
    /// <summary>Each of them, by name.</summary>
    public static IReadOnlyDictionary<string, Func<byte[], byte[]>> All { get; } = new SortedDictionary<string, Func<byte[], byte[]>>(StringComparer.Ordinal)
    {
        ["comma decimals, semicolons, Windows page"] = b => Rewrite(b, rows => rows.Select(r => r.Select(Comma).ToArray()), ';', "\r\n", Encoding.Latin1, onlyWithoutCommas: true),
        ["tabs, UTF-16"] = b => Rewrite(b, rows => rows, '\t', "\r\n", Encoding.Unicode),
        ["a title above"] = b => Rewrite(b, rows => [["Group 4, autumn course"], [""], .. rows]),
        ["lines below"] = b => Rewrite(b, rows => [.. rows, [""], ["Checked by the supervisor"], ["printed on 3 March"]]),
        ["an empty first column"] = b => Rewrite(b, rows => rows.Select(r => r.Prepend("").ToArray())),
        ["empty cells to the right and rows below"] = b => Rewrite(b, rows => [.. rows.Select(r => r.Concat(["", "", ""]).ToArray()), ["", "", ""], ["", "", ""]]),
        ["units in square brackets"] = b => Rewrite(b, rows => Heading(rows, (name, unit) => $"{name} [{unit}]")),
        ["units behind a stroke, per litre as a power"] = b => Rewrite(b, rows => Heading(rows, (name, unit) => $"{name} / {Quotient().Replace(unit, "$1 $2-1")}")),
        ["units behind a comma"] = b => Rewrite(b, rows => Heading(rows, (name, unit) => $"{name}, {unit}"), ';'),
        ["units behind \"in\""] = b => Rewrite(b, rows => Heading(rows, (name, unit) => $"{name} in {unit}")),
        ["units without brackets"] = b => Rewrite(b, rows => Heading(rows, (name, unit) => $"{name} {unit}")),
    };

    // Files that no plain separator cuts evenly stay as they are.
    private static byte[] Rewrite(byte[] bytes, Func<List<string[]>, IEnumerable<string[]>> change, char? to = null, string end = "\n", Encoding? encoding = null, bool onlyWithoutCommas = false)
    {
        var text = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) || IsUtf8(bytes) ? Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF') : Encoding.Latin1.GetString(bytes);
        var lines = text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        if (text.Contains('\0', StringComparison.Ordinal) || text.Contains('"', StringComparison.Ordinal) || Separator(lines) is not { } from || (onlyWithoutCommas && (from == ';' || text.Any(c => c > 255) || CommaNumber().IsMatch(text))))
            return bytes;
        var mark = to ?? from;
        var rows = change([.. lines.Select(l => l.Split(from))]);
        var written = string.Join(end, rows.Select(r => string.Join(mark, r.Select(c => c.Contains(mark, StringComparison.Ordinal) ? $"\"{c}\"" : c)))) + end;
        var into = encoding ?? Encoding.UTF8;
        return [.. into.Preamble, .. into.GetBytes(written)];
    }

    private static bool IsUtf8(byte[] bytes)
    {
        try
        {
            _ = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    private static char? Separator(string[] lines)
    {
        var filled = lines.Where(l => l.Trim().Length > 0).ToList();
        foreach (var mark in "\t;,")
        {
            var usual = filled.GroupBy(l => l.Count(c => c == mark)).MaxBy(g => g.Count())!;
            if (usual.Key >= 1 && usual.Count() * 10 >= filled.Count * 6)
                return mark;
        }

        return null;
    }

    private static IEnumerable<string[]> Heading(List<string[]> rows, Func<string, string, string> write)
    {
        var width = rows.Max(r => r.Length);
        var at = rows.FindIndex(r => r.Count(c => c.Trim().Length > 0) >= Math.Max(2, width * 0.6) && !r.Any(c => double.TryParse(c, NumberStyles.Float, CultureInfo.InvariantCulture, out _)));
        return rows.Select((r, i) => i != at ? r : r.Select(c => InBrackets().Match(c) is { Success: true } m && m.Groups["unit"].Value.Any(char.IsLetter) ? write(m.Groups["name"].Value, m.Groups["unit"].Value) : c).ToArray());
    }

    private static string Comma(string cell) => PointNumber().Replace(cell, "$1,$2");

    [GeneratedRegex(@"(?<![\d.])(\d+)\.(\d+)(?![\d.])")]
    private static partial Regex PointNumber();

    [GeneratedRegex(@"\d,\d")]
    private static partial Regex CommaNumber();

    [GeneratedRegex(@"^(?<name>.*[^\s/])\s*\((?<unit>[^()]{1,7})\)\s*$")]
    private static partial Regex InBrackets();

    [GeneratedRegex(@"^([a-zA-Zµ]+)/([a-zA-Z]+)$")]
    private static partial Regex Quotient();
}
