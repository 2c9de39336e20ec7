using Holdfast.Reports.Fonts;
using PdfSharp.Drawing;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>A piece of a line that is not divided: letters of one look, a space, a place to break, an equation.</summary>
internal abstract record Atom
{
    /// <summary>Width in pt.</summary>
    public abstract double Width { get; }

    /// <summary>How far it reaches above the base line, in pt.</summary>
    public abstract double Above { get; }

    /// <summary>How far it reaches below the base line, in pt.</summary>
    public abstract double Below { get; }

    /// <summary>The address it leads to, or null.</summary>
    public string? LeadsTo { get; init; }

    /// <summary>The address that leads to it, or null.</summary>
    public string? Place { get; init; }

    /// <summary>Draws it.</summary>
    /// <param name="to">The page.</param>
    /// <param name="faces">The typefaces.</param>
    /// <param name="x">Its left end, in pt.</param>
    /// <param name="y">The base line, in pt from the top.</param>
    public abstract void Draw(XGraphics to, PdfFaces faces, double x, double y);
}

/// <summary>Letters of one look.</summary>
/// <param name="Text">The letters.</param>
/// <param name="Look">How they look.</param>
internal sealed record Letters(string Text, Look Look) : Atom
{
    // A line through goes through the middle of small letters (x-height 0.53 em).
    private const double Middle = 0.26;
    private const double Thin = 0.6;
    private static readonly XBrush Ink = new XSolidBrush(XColor.FromArgb(0x1A, 0x1A, 0x1A));
    private static readonly XPen Line = new(XColor.FromArgb(0x1A, 0x1A, 0x1A), Thin);
    private static readonly XBrush Marker = new XSolidBrush(XColor.FromArgb(0xFF, 0xF1, 0x76));

    /// <summary>A part of the letters; the place stays with the first.</summary>
    /// <param name="from">First letter.</param>
    /// <param name="to">Behind the last.</param>
    public Letters Part(int from, int to) => new(Text[from..to], Look) { LeadsTo = LeadsTo, Place = from == 0 ? Place : null };

    private double Size => Look.Drop == 0 ? Look.Size : Look.Size * Look.ShiftedShare;

    /// <inheritdoc/>
    public override double Width { get; } = LiberationSans.Face(Look.Bold, Look.Italic).Width(Text) * (Look.Drop == 0 ? Look.Size : Look.Size * Look.ShiftedShare);

    /// <inheritdoc/>
    public override double Above => Math.Max(0, (0.75 * Size) - (Look.Drop * Look.Size));

    /// <inheritdoc/>
    public override double Below => Math.Max(0, (0.22 * Size) + (Look.Drop * Look.Size));

    /// <inheritdoc/>
    public override void Draw(XGraphics to, PdfFaces faces, double x, double y)
    {
        if (Look.Marked)
            to.DrawRectangle(Marker, x, y - (0.8 * Look.Size), Width, 1.05 * Look.Size);
        to.DrawString(Text, faces.Font(Size, Look.Bold, Look.Italic), Ink, x, y + (Look.Drop * Look.Size));
        if (Look.Struck)
            to.DrawLine(Line, x, y - (Middle * Look.Size), x + Width, y - (Middle * Look.Size));
    }
}

/// <summary>Room between letters.</summary>
/// <param name="Room">Width in pt.</param>
/// <param name="Breaks">True where a line may end at it; it is then left out.</param>
/// <param name="Ends">True where a line must end.</param>
internal sealed record Gap(double Room, bool Breaks = false, bool Ends = false) : Atom
{
    /// <summary>How the letters beside it look where it stands for a space: it is then written as one, so that words stay apart when the page is read aloud (ISO 32000-1, 14.8.2.5).</summary>
    public Look? Space { get; init; }

    /// <inheritdoc/>
    public override double Width => Room;

    /// <inheritdoc/>
    public override double Above => 0;

    /// <inheritdoc/>
    public override double Below => 0;

    /// <inheritdoc/>
    public override void Draw(XGraphics to, PdfFaces faces, double x, double y)
    {
        if (Space is { } look)
            new Letters(" ", look).Draw(to, faces, x, y);
    }
}

/// <summary>Atoms at their places and the lines between them: an equation.</summary>
/// <param name="Parts">Each with its left end and its base line, in pt from those of the whole; below counts up.</param>
/// <param name="Lines">Lines from point to point.</param>
/// <param name="Room">Width in pt.</param>
internal sealed record Built(IReadOnlyList<(Atom Atom, double X, double Y)> Parts, IReadOnlyList<(double X1, double Y1, double X2, double Y2)> Lines, double Room) : Atom
{
    private static readonly XPen Pen = new(XColor.FromArgb(0x1A, 0x1A, 0x1A), 0.6);

    /// <inheritdoc/>
    public override double Width => Room;

    /// <inheritdoc/>
    public override double Above => Parts.Select(p => p.Atom.Above - p.Y).Concat(Lines.Select(l => -l.Y1)).DefaultIfEmpty(0).Max();

    /// <inheritdoc/>
    public override double Below => Parts.Select(p => p.Atom.Below + p.Y).DefaultIfEmpty(0).Max();

    /// <inheritdoc/>
    public override void Draw(XGraphics to, PdfFaces faces, double x, double y)
    {
        foreach (var (atom, dx, dy) in Parts)
            atom.Draw(to, faces, x + dx, y + dy);
        foreach (var (x1, y1, x2, y2) in Lines)
            to.DrawLine(Pen, x + x1, y + y1, x + x2, y + y2);
    }
}

/// <summary>How letters look.</summary>
/// <param name="Size">Size of the text in pt.</param>
/// <param name="Bold">Bold or not.</param>
/// <param name="Italic">Slanted or not.</param>
/// <param name="Drop">How far below the base line, as a share of the size; raised when negative.</param>
/// <param name="Struck">With a line through.</param>
/// <param name="Marked">Marked as a gap.</param>
internal readonly record struct Look(double Size, bool Bold = false, bool Italic = false, double Drop = 0, bool Struck = false, bool Marked = false)
{
    /// <summary>Drop of raised letters.</summary>
    public const double Raised = -0.36;

    /// <summary>Drop of lowered letters.</summary>
    public const double Lowered = 0.2;

    /// <summary>Size of raised and lowered letters as a share of the text's.</summary>
    public double ShiftedShare => 0.72;
}
