using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>
/// Spectra in JCAMP-DX: equally spaced ordinates in any of the forms AFFN, PAC, SQZ, DIF and DUP, or pairs of x and y; linked blocks are one table
/// each.
/// </summary>
/// <remarks>R. S. McDonald and P. A. Wilks, Appl. Spectrosc. 42 (1988) 151 (JCAMP-DX 4.24; from memory).</remarks>
public sealed class JcampFile : IFileReader
{
    private const int LinesShown = 12;

    /// <inheritdoc/>
    public string Name => "JCAMP-DX spectrum";

    /// <inheritdoc/>
    public int Order => 50;

    /// <inheritdoc/>
    public bool Recognises(ReadOnlySpan<byte> bytes)
    {
        var head = Encoding.Latin1.GetString(bytes[..Math.Min(bytes.Length, 4096)]);
        var first = head.TrimStart('\u00EF', '\u00BB', '\u00BF', ' ', '\t').Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .FirstOrDefault(l => !l.StartsWith("$$", StringComparison.Ordinal));
        return first is not null && first.StartsWith("##", StringComparison.Ordinal) && first.Contains('=', StringComparison.Ordinal)
            && JcampRecord.Key(first[2..first.IndexOf('=', StringComparison.Ordinal)]) == "TITLE";
    }

    /// <inheritdoc/>
    public ImmutableArray<Grid> Read(byte[] bytes, string fileName, Answers answers, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        var text = Encoding.Latin1.GetString(bytes);
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        var blocks = JcampRecord.Blocks(lines);
        var spectra = blocks.Where(b => b.Any(r => r.IsData)).Select(b => JcampSpectrum.Of(b, fileName, cancel)).ToList();
        if (spectra.Count == 0)
        {
            throw new StudyException(Codes.Unreadable, blocks.Any(b => b.Any(r => r.Label == "NTUPLES"))
                ? $"{fileName} holds pages of several variables (NTUPLES), which are not read. Export each page as XYDATA."
                : $"{fileName} holds no spectrum (no XYDATA, XYPOINTS or PEAK TABLE), so nothing is taken in. Export it again with its data.");
        }

        ImmutableArray<string> shown = [.. lines.Take(LinesShown).Select(l => l.TrimEnd('\r'))];
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        return [.. spectra.Select((s, i) => new Grid(spectra.Count == 1 ? null : Named(s.Title, i, names), Rows(s))
        {
            Encoding = "Latin-1",
            RawLines = shown,
            Findings = s.Findings,
        })];
    }

    private static string Named(string title, int index, HashSet<string> taken)
    {
        var name = title.Length == 0 ? "block " + Ordinal.Text(index + 1) : title;
        return taken.Add(name) ? name : $"{name} ({Ordinal.Text(index + 1)})";
    }

    private static ImmutableArray<GridRow> Rows(JcampSpectrum spectrum)
        =>
        [
            .. spectrum.Said.Select(r => new GridRow(r.Line, [new Cell(r.Written), new Cell(r.Value)])),
            new GridRow(spectrum.DataLine, [new Cell(spectrum.AbscissaHeading), new Cell(spectrum.OrdinateHeading)]),
            .. spectrum.Points.Select(p => new GridRow(p.Line, [Number(p.X), p.Y is { } y ? Number(y) : default])),
        ];

    private static Cell Number(double value) => new(value.ToString("R", CultureInfo.InvariantCulture), CellKind.Number);
}
