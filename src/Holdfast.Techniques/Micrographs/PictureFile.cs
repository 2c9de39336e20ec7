using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Micrographs;

/// <summary>Pictures: TIFF, PNG and JPEG. Read as a table of what the header says; the pixels stay in the original.</summary>
public sealed class PictureFile : IFileReader
{
    /// <summary>First cell of the table.</summary>
    internal const string First = "picture";

    /// <summary>Row of the pages: how many.</summary>
    internal const string Pages = "pages";

    /// <inheritdoc/>
    public string Name => "picture";

    /// <inheritdoc/>
    public int Order => 5;

    /// <inheritdoc/>
    public long Largest => Limits.Picture;

    /// <inheritdoc/>
    public bool Recognises(ReadOnlySpan<byte> bytes) => PictureHead.FormatOf(bytes) is not null;

    /// <inheritdoc/>
    public ImmutableArray<Grid> Read(byte[] bytes, string fileName, Answers answers, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        var head = PictureHead.Of(bytes, fileName);
        var rows = new List<(string Key, string Value)> { (First, head.Format), (Pages, Text(head.Pages.Length)), (MicrographFiles.Page, Text(head.Main + 1)) };
        var page = head.Pages[head.Main];
        rows.Add((MicrographFiles.Width, Text(page.Width)));
        rows.Add((MicrographFiles.Height, Text(page.Height)));
        rows.Add((MicrographFiles.Bits, Text(page.Bits)));
        if (page.Stated is { } stated)
            rows.Add((MicrographFiles.Stated, stated.Written));
        if (page.Stated is { IsOfPrint: false } scale)
            rows.Add((MicrographFiles.PixelSize, scale.Nanometres.ToString("R", CultureInfo.InvariantCulture)));
        ImmutableArray<GridRow> table = [.. rows.Select((r, i) => new GridRow(i + 1, [new Cell(r.Key), new Cell(r.Value)]))];
        return [new Grid(null, table) { Encoding = head.Format, RawLines = [.. rows.Select(r => $"{r.Key}: {r.Value}")] }];
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
