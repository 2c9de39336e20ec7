using System.Globalization;
using System.Text;
using Holdfast.Claims;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Every figure of a study as files. Where they go is the caller's affair: it is handed a name and the bytes.</summary>
public static class FigureFiles
{
    /// <summary>Writes every figure in every kind and width, named "kinetics-kin-05-85mm.svg".</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="kinds">Kinds of file.</param>
    /// <param name="widthsMm">Final widths in mm, 60 to 190; journals take 85 and 174.</param>
    /// <param name="keep">Receives a file name without folder, and the bytes.</param>
    /// <returns>Files that could not be drawn; the others were handed over.</returns>
    public static IReadOnlyList<Finding> Write(Dossier dossier, IReadOnlyCollection<FigureFileKind> kinds, IReadOnlyCollection<double> widthsMm, Action<string, byte[]> keep)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        ArgumentNullException.ThrowIfNull(kinds);
        ArgumentNullException.ThrowIfNull(widthsMm);
        ArgumentNullException.ThrowIfNull(keep);
        var fallen = new List<Finding>();
        foreach (var figure in StudyFigure.All(dossier))
        {
            foreach (var width in widthsMm)
            {
                var format = new FigureFormat(width) { WithNotes = true };
                foreach (var kind in kinds)
                {
                    var name = string.Create(CultureInfo.InvariantCulture, $"{figure.Id}-{width:0.##}mm.{kind.ToString().ToLowerInvariant()}");
                    var drawn = Room.Of("the file " + name, () => Bytes(figure, format, kind), figure.Id);
                    fallen.AddRange(drawn.Findings);
                    if (drawn.Value is not { } bytes)
                        continue;
                    keep(name, bytes);
                }
            }
        }

        return fallen;
    }

    private static byte[] Bytes(Figure figure, FigureFormat format, FigureFileKind kind) => kind switch
    {
        FigureFileKind.Svg => Encoding.UTF8.GetBytes(SvgFigure.File(figure, format)),
        FigureFileKind.Png => PngFigure.File(figure, format),
        FigureFileKind.Pdf => PdfFigure.File(figure, format),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of file."),
    };
}

/// <summary>Kinds of figure file.</summary>
public enum FigureFileKind
{
    /// <summary>Vector, text kept as text.</summary>
    Svg,

    /// <summary>Raster, for programs that take nothing else.</summary>
    Png,

    /// <summary>Vector, typeface embedded.</summary>
    Pdf,
}
