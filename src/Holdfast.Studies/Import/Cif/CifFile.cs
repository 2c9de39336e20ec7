using System.Collections.Immutable;
using System.Text;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import.Cif;

/// <summary>
/// Files in CIF syntax, whatever they hold: each data block is one grid, with a row "tag, value" for every single item and below it each table under its
/// tags. What the tags mean is the affair of a technique.
/// </summary>
public sealed class CifFile : IFileReader
{
    private const int LinesShown = 12;

    /// <inheritdoc/>
    public string Name => "CIF";

    /// <inheritdoc/>
    public int Order => 60;

    /// <inheritdoc/>
    public bool Recognises(ReadOnlySpan<byte> bytes) => CifText.Recognises(Encoding.UTF8.GetString(bytes[..Math.Min(bytes.Length, 64 << 10)]));

    /// <inheritdoc/>
    public ImmutableArray<Grid> Read(byte[] bytes, string fileName, Answers answers, CancellationToken cancel)
    {
        if (TextDecoding.Decode(bytes) is not var (text, encoding))
            throw new StudyException(Codes.Unreadable, $"{fileName} is not text that can be read, so nothing is taken in. Export it again.");
        var blocks = CifText.Read(text, fileName, cancel);
        ImmutableArray<string> shown = [.. text.Split('\n', LinesShown + 1).Take(LinesShown).Select(l => l.TrimEnd('\r'))];
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        return [.. blocks.Select((b, i) => new Grid(blocks.Length == 1 ? null : names.Add(b.Name) ? b.Name : $"{b.Name} ({Ordinal.Text(i + 1)})", Rows(b)) { Encoding = encoding, RawLines = shown })];
    }

    private static ImmutableArray<GridRow> Rows(CifBlock block)
    {
        var rows = ImmutableArray.CreateBuilder<GridRow>();
        rows.Add(new GridRow(block.Line, [new Cell("data_" + block.Name)]));
        rows.AddRange(block.Items.OrderBy(i => i.Value.Line).Select(i => new GridRow(i.Value.Line, [new Cell(i.Key), AsCell(i.Value)])));
        foreach (var loop in block.Loops)
        {
            // A row without a cell keeps the tables apart.
            rows.Add(new GridRow(loop.Line, []));
            rows.Add(new GridRow(loop.Line, [.. loop.Tags.Select(t => new Cell(t))]));
            for (var i = 0; i < loop.Values.Length; i += loop.Tags.Length)
                rows.Add(new GridRow(loop.Values[i].Line, [.. loop.Values[i..(i + loop.Tags.Length)].Select(AsCell)]));
        }

        return rows.ToImmutable();
    }

    private static Cell AsCell(CifValue value) => !value.IsSaid ? default : new(value.Text, value.IsPlain && CifNumber.Of(value.Text) is { Uncertainty: null } ? CellKind.Number : CellKind.Text);
}
