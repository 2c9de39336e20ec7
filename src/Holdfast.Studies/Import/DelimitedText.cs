using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Package;

namespace Holdfast.Studies.Import;

/// <summary>Text files of any dialect: UTF-8, UTF-16 or Windows-1252; semicolon, comma, tab, bar or runs of spaces.</summary>
public sealed class DelimitedText : IFileReader
{
    private const int LinesShown = 12;

    /// <inheritdoc/>
    public string Name => "delimited text";

    /// <inheritdoc/>
    public int Order => 100;

    /// <inheritdoc/>
    public bool Recognises(ReadOnlySpan<byte> bytes) => bytes.Length > 0 && TextDecoding.Decode(bytes[..Math.Min(bytes.Length, 64 << 10)].ToArray()) is not null;

    /// <inheritdoc/>
    public ImmutableArray<Grid> Read(byte[] bytes, string fileName, Answers answers, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(answers);
        if (TextDecoding.Decode(bytes) is not var (text, encoding))
            throw new StudyException(Codes.Unreadable, $"{fileName} is not text that can be read, so nothing is taken in. Export it as CSV.");
        text = QuotedMail.Bare(text);
        var said = Announced(ref text);
        var separator = answers.To("separator") ?? said ?? Separator.Of(text, fileName);
        if (!CellSplitter.Separators.Contains(separator))
            throw new ArgumentException($"A separator is one of {string.Join(" ", CellSplitter.Separators)}, not {separator}.", nameof(answers));
        var splitter = new CellSplitter(text, separator, fileName);
        var rows = splitter.Rows(cancel: cancel).Select(r => Unframed(r, separator)).ToList();
        if (said is not null)
            rows = rows.ConvertAll(r => r with { Number = r.Number + 1 });
        return
        [
            new Grid(null, [.. rows.Select(Unguard)])
            {
                Encoding = encoding,
                Separator = separator,
                RawLines = [.. text.Split('\n', LinesShown + 1).Take(LinesShown).Select(l => l.TrimEnd('\r'))],
                Findings = splitter.OpenQuote == 0 ? [] :
                [
                    Finding.Of(Codes.OddCell, Weight.Caution, $"Line {Ordinal.Text(splitter.OpenQuote)} opens a quotation mark that is never closed. "
                        + "It is read as a character; look at that row.", "line " + Ordinal.Text(splitter.OpenQuote)),
                ],
            },
        ];
    }

    // Some spreadsheet programs write the separator into a first line of its own.
    private static string? Announced(ref string text)
    {
        if (!text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) || text.Length < 5)
            return null;
        var mark = text[4] == '\t' ? "tab" : text[4].ToString();
        var end = text.IndexOf('\n', StringComparison.Ordinal);
        if (end < 0 || end > 7 || !CellSplitter.Separators.Contains(mark))
            return null;
        text = text[(end + 1)..];
        return mark;
    }

    // "| A | B |": bars that frame a row are no cells.
    internal static GridRow Unframed(GridRow row, string separator)
        => separator == "|" && row.Cells.Length > 2 && row.Cells[0].IsBlank && row.Cells[^1].IsBlank ? row with { Cells = row.Cells[1..^1] } : row;

    // A cell that a plain package guarded against spreadsheet programs reads as it was.
    private static GridRow Unguard(GridRow row) => row.Cells.Any(c => c.Content is ['\'', ..])
        ? row with { Cells = [.. row.Cells.Select(c => c.Content is ['\'', ..] ? new Cell(PlainCell.Unguard(c.Content)) : c)] }
        : row;
}
