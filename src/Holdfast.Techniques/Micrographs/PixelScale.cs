using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Particles;
using Holdfast.Studies;

namespace Holdfast.Techniques.Micrographs;

/// <summary>How large a pixel of a micrograph is.</summary>
/// <param name="PerPixel">Size of a pixel, in <paramref name="Unit"/>.</param>
/// <param name="RelativeU">Relative standard uncertainty with that of the bar itself, and with the contradiction while it stands; no unit.</param>
/// <param name="ReadingU">Relative standard uncertainty of reading the bar alone; 0 where the file says it; no unit.</param>
/// <param name="Unit">Unit of the sizes: that of the bar, nm where the file says it.</param>
/// <param name="IsByFile">True where it is the file's and not the bar's.</param>
/// <param name="Draws">How often the bar was drawn.</param>
public sealed record PixelScale(double PerPixel, double RelativeU, double ReadingU, string Unit, bool IsByFile, int Draws)
{
    /// <summary>Size of a pixel by the bar, in <see cref="Unit"/>; null where none was drawn.</summary>
    public double? ByBar { get; init; }

    /// <summary>Size of a pixel by the file, in <see cref="Unit"/>; null where it says none.</summary>
    public double? ByFile { get; init; }

    /// <summary>True where bar and file differ by more than reading the bar explains.</summary>
    public bool IsContradicted { get; init; }

    /// <summary>True where the author said which of the two holds.</summary>
    public bool IsSettled { get; init; }

    /// <summary>What is typed beside a bar: its length with unit, and how well it is known where it was calibrated: "500 nm", "2 µm ± 1 %".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="trouble">What is wrong with it, or null.</param>
    /// <returns>Length, its unit, and relative standard uncertainty; null where it cannot be read.</returns>
    public static (double Length, string Unit, double RelativeU)? Bar(string text, out string? trouble)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[] parts = text.Split('±');
        var (length, nm) = (QuantityText.Read(parts[0]), Amounts.Unit.Parse("nm"));
        trouble = length.Value is null ? length.Findings[0].Sentence : null;
        if (length.Value is { } found && !(found.Unit.IsConvertibleTo(nm) && found.Value > 0))
            trouble = $"'{parts[0].Trim()}' is no length above 0. Type what stands at the bar, such as 500 nm.";
        var u = ScaleBar.Uncalibrated;
        if (trouble is null && parts.Length > 1)
        {
            var known = QuantityText.Read(parts[1]);
            if (parts.Length == 2 && known.Value is { } part && part.Unit.IsConvertibleTo(Amounts.Unit.Parse("%")) && part.InUnit("%") is >= 0 and < 50 and var percent)
                u = percent / 100;
            else
                trouble = $"'{parts[1].Trim()}' says not how well the bar is known. Write a standard uncertainty in per cent behind ±, such as 500 nm ± 1 %.";
        }

        return trouble is null ? (length.Value!.Value, length.Value.Unit.Plain, u) : null;
    }

    /// <summary>The scale of a micrograph from the bars that were drawn and what its file says; null where neither says anything.</summary>
    /// <param name="bars">Bars that are not struck, in order.</param>
    /// <param name="statedNanometres">Size of a pixel by the file, or null.</param>
    /// <param name="settled">"bar" or "file" where the author said which holds; null otherwise.</param>
    internal static PixelScale? Of(IReadOnlyList<PictureMark> bars, double? statedNanometres, string? settled)
    {
        if (bars.Count == 0 || Bar(bars[^1].Written, out _) is not { } stated)
            return statedNanometres is { } byFile ? new(byFile, ScaleBar.Uncalibrated, 0, "nm", true, 0) { ByFile = byFile } : null;

        // The last stated length holds: bars with another one were another bar, or a slip of the pen.
        var drawn = bars.Where(b => b.Written == bars[^1].Written).Select(b => (b.Who, Pixels: Outline.Of(b.Places()).Longest)).ToArray();
        double[] observers = [.. drawn.GroupBy(d => d.Who, StringComparer.Ordinal).Select(g => g.Average(d => d.Pixels))];
        double[] pixels = [.. drawn.Select(d => d.Pixels)];
        var byBar = observers.Length > 1 ? ScaleBar.Of(stated.Length, 0, observers) : new ScaleBar(stated.Length / pixels.Average(), ScaleBar.ReadingU(pixels));
        var byTag = statedNanometres is { } nm ? Amounts.Unit.Parse("nm").Convert(nm, Amounts.Unit.Parse(stated.Unit)) : (double?)null;
        var contradicted = byTag is { } tag && ScaleBar.Contradicts(byBar.PerPixel, tag, byBar.RelativeU);
        var u = Math.Sqrt(byBar.RelativeU * byBar.RelativeU + stated.RelativeU * stated.RelativeU);
        var scale = new PixelScale(byBar.PerPixel, u, byBar.RelativeU, stated.Unit, false, pixels.Length) { ByBar = byBar.PerPixel, ByFile = byTag, IsContradicted = contradicted, IsSettled = contradicted && settled is not null };
        if (!contradicted)
            return scale;
        var apart = Math.Log(byBar.PerPixel / byTag!.Value);
        return settled switch
        {
            MarkKinds.ByFile => scale with { PerPixel = byTag.Value, RelativeU = stated.RelativeU, ReadingU = 0, IsByFile = true },
            MarkKinds.ByBar => scale,
            // Until somebody looks, the sizes are known no better than the two agree.
            _ => scale with { RelativeU = Math.Sqrt(u * u + apart * apart) },
        };
    }

    /// <summary>In words: "One pixel is 2.5773 nm, standard uncertainty 3.0 %, by the bar, drawn 2 times".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"One pixel is {PerPixel:G5} {Amounts.Unit.Parse(Unit).Pretty}, standard uncertainty {100 * RelativeU:0.0} %, by {(IsByFile ? "the file" : Draws == 1 ? "the bar, drawn once" : $"the bar, drawn {Draws} times")}");
}
