using System.Collections.Immutable;
using System.Text;

namespace Holdfast.Studies.Import;

/// <summary>Splits text into rows of cells: RFC 4180 for a separator, or runs of spaces.</summary>
/// <remarks>A quotation mark counts only at the start of a cell. One that is never closed is taken as a character, and said.</remarks>
internal sealed class CellSplitter(string text, string separator, string fileName)
{
    /// <summary>Names of the separators that are tried, the more telling ones first.</summary>
    public static readonly ImmutableArray<string> Separators = ["tab", ";", "|", ",", "spaces"];

    private readonly ImmutableArray<Cell>.Builder cells = ImmutableArray.CreateBuilder<Cell>();
    private readonly StringBuilder cell = new();
    private readonly List<(int From, int To)> places = [];
    private readonly List<(int From, int To)[]> spots = [];
    private int from;
    private const int LinesLookedAt = 200;
    private const int FewestWide = 3;
    private const int FewestDashed = 3;
    private static readonly ImmutableArray<string> Dashes = [" - ", " – ", " — ", " → ", " -> "];
    private string? dash;
    private bool? wideFile;
    private int at;
    private int line = 1;
    private bool quotesCount = true;

    /// <summary>Line on which a quotation mark is opened that is never closed, or 0.</summary>
    public int OpenQuote { get; private set; }

    /// <summary>The rows.</summary>
    /// <param name="most">Stop after so many.</param>
    /// <param name="cancel">Stops it.</param>
    public ImmutableArray<GridRow> Rows(int most = Limits.Rows, CancellationToken cancel = default)
    {
        var rows = ImmutableArray.CreateBuilder<GridRow>();
        while (at < text.Length && rows.Count < most)
        {
            if (rows.Count % 1024 == 0)
                cancel.ThrowIfCancellationRequested();
            var start = line;
            cells.Clear();
            if (separator == "spaces")
                ReadSpaced();
            else
                ReadSeparated(separator == "tab" ? '\t' : separator[0]);
            if (cells.Count > Limits.Columns)
                throw Limits.Exceeded(fileName, "more than 4096 columns");
            rows.Add(new GridRow(start, cells.ToImmutable()));
            if (separator == "spaces")
                Placed(rows.Count);
        }

        if (wideFile == true)
            BlankColumns.Align(rows, spots);
        return at < text.Length && most == Limits.Rows ? throw Limits.Exceeded(fileName, "more than 2 000 000 rows") : rows.ToImmutable();
    }

    // Where each cell of the row stood in its line.
    private void Placed(int count)
    {
        while (spots.Count < count)
            spots.Add([.. places]);
        places.Clear();
    }

    private void ReadSeparated(char mark)
    {
        while (true)
        {
            if (quotesCount && at < text.Length && text[at] == '"')
                ReadQuoted();
            while (at < text.Length && text[at] != mark && text[at] is not ('\r' or '\n'))
                cell.Append(text[at++]);
            End();
            if (at >= text.Length || text[at] != mark)
                break;
            at++;
        }
        NextLine();
    }

    private void ReadQuoted()
    {
        var (start, startLine) = (at, line);
        at++;
        while (at < text.Length)
        {
            if (text[at] == '"' && at + 1 < text.Length && text[at + 1] == '"')
            {
                cell.Append('"');
                at += 2;
            }
            else if (text[at] == '"')
            {
                at++;
                return;
            }
            else
            {
                if (text[at] == '\n' || (text[at] == '\r' && !(at + 1 < text.Length && text[at + 1] == '\n')))
                    line++;
                cell.Append(text[at++]);
            }
        }
        (at, line) = (start, startLine);
        OpenQuote = OpenQuote == 0 ? startLine : OpenQuote;
        quotesCount = false;
        cell.Clear();
    }

    // Two spaces or a tab end a cell; where a line has none of those, one space does. A unit in brackets stays with its name.
    private void ReadSpaced()
    {
        var end = text.AsSpan(at).IndexOfAny('\r', '\n');
        var whole = end < 0 ? text[at..] : text.Substring(at, end);
        var row = whole.Trim();
        var indent = whole.Length - whole.TrimStart().Length;
        at += end < 0 ? text.Length - at : end;
        if (wideFile is null)
        {
            var lines = text.Split('\n').Take(LinesLookedAt).Select(l => l.Trim()).ToList();
            wideFile = lines.Count(l => l.Contains("  ", StringComparison.Ordinal)) >= FewestWide;
            dash = wideFile.Value ? null : Dashes.FirstOrDefault(d => lines.Count(l => l.Contains(d, StringComparison.Ordinal)) >= FewestDashed);
        }

        // "4 - 40 min": notes by hand, with a dash between what belongs together.
        if (dash is not null)
        {
            foreach (var part in row.Split(dash))
            {
                cell.Append(part.Trim());
                End();
            }

            NextLine();
            return;
        }

        var wide = wideFile.Value || row.Contains("  ", StringComparison.Ordinal) || row.Contains('\t', StringComparison.Ordinal);
        for (var i = 0; i < row.Length;)
        {
            var gap = 0;
            while (i < row.Length && row[i] is ' ' or '\t')
            {
                gap += row[i] == '\t' ? 2 : 1;
                i++;
            }
            if (cell.Length > 0 && (gap >= 2 || !wide) && !(row[i] is '(' or '[' && gap < 2))
            {
                places.Add((indent + from, indent + i - gap));
                End();
            }
            else if (cell.Length > 0)
                cell.Append(' ');
            if (cell.Length == 0)
                from = i;
            var depth = 0;
            for (; i < row.Length && (depth > 0 || row[i] is not (' ' or '\t')); i++)
            {
                depth += row[i] is '(' or '[' ? 1 : row[i] is ')' or ']' ? -1 : 0;
                cell.Append(row[i]);
            }
        }

        places.Add((indent + from, indent + row.Length));
        End();
        NextLine();
    }

    private void End()
    {
        if (cell.Length > Limits.Cell)
            throw Limits.Exceeded(fileName, "a cell of more than 32 767 characters");
        cells.Add(new Cell(cell.Length == 0 ? null : FullWidth.Narrow(cell.ToString())));
        cell.Clear();
    }

    private void NextLine()
    {
        if (at < text.Length && text[at] == '\r')
            at++;
        if (at < text.Length && text[at] == '\n')
            at++;
        line++;
    }
}
