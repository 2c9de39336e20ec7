using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Micrographs;

/// <summary>Micrographs: pictures that particles are measured on, at the measurement's page. The picture stays in the originals as it came.</summary>
public sealed class MicrographFiles : ITechnique
{
    /// <summary>Name kept with every measurement.</summary>
    internal const string TechniqueName = "micrograph";

    /// <summary>Setting: page of the file that holds the picture, from 1.</summary>
    internal const string Page = "page";

    /// <summary>Setting: pixels across.</summary>
    internal const string Width = "width";

    /// <summary>Setting: pixels down.</summary>
    internal const string Height = "height";

    /// <summary>Setting: bits of one sample.</summary>
    internal const string Bits = "bits";

    /// <summary>Setting: resolution as the file states it.</summary>
    internal const string Stated = "resolution in the file";

    /// <summary>Setting: size of a pixel that follows from that, where it can be of the sample.</summary>
    internal const string PixelSize = "pixel by the file";

    private const int ShortestName = 3;
    private const string NoPowder = "img image images photo foto bild pic picture dsc scan sem tem stem micrograph frame snap capture untitled";

    /// <inheritdoc/>
    public string Name => TechniqueName;

    /// <inheritdoc/>
    public string Title => "micrograph";

    /// <inheritdoc/>
    public string Reads => "pictures as TIFF (8 or 16 bits, grey or RGB), PNG or JPEG, to be measured on";

    /// <inheritdoc/>
    public Recognition Recognise(Grid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return grid.Encoding is "TIFF" or "PNG" or "JPEG" && grid.Rows is [{ Cells: [{ Content: PictureFile.First }, ..] }, ..]
            ? Recognition.Certain($"{grid.Encoding} of {Value(grid, Width)} × {Value(grid, Height)} pixels") : Recognition.None;
    }

    /// <inheritdoc/>
    public MeasurementDraft Read(MeasurementSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var grid = source.Grid;
        var settings = ImmutableArray.CreateBuilder<MeasuredSetting>();
        foreach (var (name, unit) in new[] { (Page, ""), (Width, "px"), (Height, "px"), (Bits, "") })
            settings.Add(new(name, (Value(grid, name) + " " + unit).Trim(), double.Parse(Value(grid, name)!, CultureInfo.InvariantCulture), unit, 0));
        if (Value(grid, Stated) is { } stated)
        {
            var pixel = Value(grid, PixelSize);
            settings.Add(new(Stated, stated + (pixel is null ? ", of a printer or screen: it says nothing of the sample" : ""), null, "", 0));
            if (pixel is not null)
                settings.Add(new(PixelSize, double.Parse(pixel, CultureInfo.InvariantCulture).ToString("G5", CultureInfo.InvariantCulture) + " nm", double.Parse(pixel, CultureInfo.InvariantCulture), "nm", 0));
        }

        var powder = PowderName.Settle(source, PowderIn(source.Talk.FileName));
        return new(new RowCount(grid.Rows.Length, 0, 0, 0), [], [new Measurement("", TechniqueName, powder, settings.ToImmutable(), [], source.At(0, null))])
        {
            Settings = [.. settings.Select(s => $"{s.Name} {s.Written}"), .. Value(grid, PictureFile.Pages) is { } pages and not "1" ? [$"{pages} pages in the file; the others are reduced copies or smaller"] : Array.Empty<string>()],
        };
    }

    // Several pictures of one powder are numbered: parent-01, parent-02. What a camera calls a picture is no powder.
    private static string? PowderIn(string fileName)
    {
        var name = Path.GetFileNameWithoutExtension(fileName);
        var stem = name.TrimEnd("0123456789".ToCharArray()).TrimEnd('-', '_', ' ', '.', '(', '#');
        return stem.Length < name.Length && stem.Count(char.IsLetter) >= ShortestName && !MeasuredTable.Has(stem, NoPowder) ? stem : null;
    }

    private static string? Value(Grid grid, string key) => grid.Rows.FirstOrDefault(r => r.At(0).Text == key)?.At(1).Text;
}
