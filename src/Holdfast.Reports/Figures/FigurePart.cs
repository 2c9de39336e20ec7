using System.Globalization;

namespace Holdfast.Reports.Figures;

/// <summary>
/// A closer look at one panel: which panel, and the values its axes then show. The part is laid out anew, with ticks of its own, so that it is a figure
/// like any other, on screen and as a file.
/// </summary>
/// <param name="Panel">Place of the panel in its figure, from 0.</param>
/// <param name="X">Values along x, in the unit of that axis.</param>
/// <param name="Y">Values along y, in the unit of that axis.</param>
public sealed record FigurePart(int Panel, AxisRange X, AxisRange Y)
{
    // Closer than this share of the whole axis, ticks would differ in digits that nobody measured.
    private const double Closest = 1e-4;

    // A box narrower than this, in pt, is a slip of the hand.
    private const double Slip = 4;

    /// <summary>The whole of one panel.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="panel">Place of the panel, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The figure has no such panel.</exception>
    public static FigurePart Whole(Figure figure, int panel)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentOutOfRangeException.ThrowIfNegative(panel);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(panel, figure.Panels.Count);
        return new(panel, AxisRange.OfX(figure.Panels[panel]), AxisRange.OfY(figure.Panels[panel]));
    }

    /// <summary>Reads the part of an address, "0:2..20:0.5..3", as <see cref="ToString"/> writes it.</summary>
    /// <param name="text">The text; null for none.</param>
    /// <param name="figure">The figure it belongs to.</param>
    /// <returns>The part, or null when the text names none that this figure can show.</returns>
    public static FigurePart? Read(string? text, Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return text?.Split(':') is [var panel, var x, var y]
            && int.TryParse(panel, NumberStyles.None, CultureInfo.InvariantCulture, out var place) && place < figure.Panels.Count
            && Span(x) is { } across && Span(y) is { } upright
            ? new FigurePart(place, across, upright).Fitting(figure)
            : null;
    }

    /// <summary>The part within a box drawn on the figure.</summary>
    /// <param name="figure">The figure the box was drawn on.</param>
    /// <param name="format">Its size.</param>
    /// <param name="from">One corner, in pt from the top left of the sheet.</param>
    /// <param name="to">The corner opposite, in pt.</param>
    /// <returns>The part, of the panel that the first corner lies in; null when it lies in none or the box is too small.</returns>
    public static FigurePart? Within(Figure figure, FigureFormat format, (double X, double Y) from, (double X, double Y) to)
    {
        var plots = FigureLayout.Of(figure, format).Plots;
        for (var panel = 0; panel < plots.Count; panel++)
        {
            var area = plots[panel];
            if (!area.Box.Holds(from.X, from.Y))
                continue;
            var (x, y) = (Math.Clamp(to.X, area.Box.Left, area.Box.Right), Math.Clamp(to.Y, area.Box.Top, area.Box.Bottom));
            return Math.Abs(x - from.X) < Slip || Math.Abs(y - from.Y) < Slip
                ? null
                : new FigurePart(panel, Between(area.X, from.X, x), Between(area.Y, from.Y, y)).Fitting(figure);
        }

        return null;
    }

    /// <summary>Half of what is shown, about its middle; as it is where it cannot be shown closer.</summary>
    /// <param name="figure">The whole figure.</param>
    public FigurePart Closer(Figure figure) => Scaled(figure, 0.5);

    /// <summary>Twice what is shown, at most the whole panel.</summary>
    /// <param name="figure">The whole figure.</param>
    public FigurePart Wider(Figure figure)
    {
        var (whole, wide) = (Whole(figure, Panel), Scaled(figure, 2));
        return wide with { X = Held(wide.X, whole.X), Y = Held(wide.Y, whole.Y) };
    }

    /// <summary>The figure that shows this part and nothing else.</summary>
    /// <param name="figure">The whole figure.</param>
    public Figure Of(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var panel = figure.Panels[Panel];
        var (x, y) = (panel.X.Scale == AxisScale.Named ? panel.X : panel.X with { Min = X.Low, Max = X.High }, panel.Y with { Min = Y.Low, Max = Y.High });
        Layer[] layers = [.. panel.Layers.Select(l => l is ModelCurve curve ? curve.Between(X.Low, X.High, panel.X.Scale == AxisScale.Logarithmic) : l)];
        var note = ((RichText)"A part of the figure: ").With(panel.X.Scale == AxisScale.Named ? RichText.Empty : Said(panel.X, X).With("; ")).With(Said(panel.Y, Y)).With(".");
        return figure with
        {
            Panels = [panel with { X = x, Y = y, Layers = layers }],
            Notes = [.. figure.Notes, .. this == Whole(figure, Panel) ? Array.Empty<RichText>() : [note]],
        };
    }

    /// <summary>As it stands in an address: "0:2..20:0.5..3".</summary>
    public override string ToString()
        => string.Create(CultureInfo.InvariantCulture, $"{Panel}:{X.Low:R}..{X.High:R}:{Y.Low:R}..{Y.High:R}");

    private static RichText Said(Axis axis, AxisRange range)
    {
        RichText ends = string.Create(CultureInfo.InvariantCulture, $"{axis.Name} {range.Low:G4} to {range.High:G4}");
        return axis.Unit is { Length: > 0 } unit ? ends.With("\u00A0").With(RichText.Unit(unit)) : ends;
    }

    private static AxisRange? Span(string text)
        => text.Split("..") is [var low, var high]
            && double.TryParse(low, NumberStyles.Float, CultureInfo.InvariantCulture, out var from)
            && double.TryParse(high, NumberStyles.Float, CultureInfo.InvariantCulture, out var to)
            && double.IsFinite(from) && double.IsFinite(to)
            ? new AxisRange(from, to)
            : null;

    private static AxisRange Between(AxisMap map, double one, double other)
    {
        var (a, b) = (map.ValueAt(one), map.ValueAt(other));
        return new(Math.Min(a, b), Math.Max(a, b));
    }

    private static AxisRange Held(AxisRange range, AxisRange whole) => new(Math.Max(range.Low, whole.Low), Math.Min(range.High, whole.High));

    private FigurePart Scaled(Figure figure, double by)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var panel = figure.Panels[Panel];
        return (this with { X = About(X, panel.X.Scale, by), Y = About(Y, panel.Y.Scale, by) }).Fitting(figure) ?? this;
    }

    private static AxisRange About(AxisRange range, AxisScale scale, double by)
    {
        if (scale == AxisScale.Logarithmic)
        {
            var (middle, reach) = (Math.Sqrt(range.Low * range.High), Math.Pow(range.High / range.Low, by / 2));
            return new(middle / reach, middle * reach);
        }

        var (centre, half) = ((range.Low + range.High) / 2, (range.High - range.Low) / 2 * by);
        return new(centre - half, centre + half);
    }

    // What the axes can show of it: named places stay whole, bars stand on zero, a logarithmic axis begins above zero. Null when nothing is left.
    private FigurePart? Fitting(Figure figure)
    {
        var panel = figure.Panels[Panel];
        var whole = Whole(figure, Panel);
        var part = this;
        if (panel.X.Scale == AxisScale.Named)
            part = part with { X = whole.X };
        if (panel.Layers.Any(l => l is Bars or Sticks { Hang: false }))
            part = part with { Y = part.Y with { Low = 0 } };
        return Shows(panel.X, part.X, whole.X) && Shows(panel.Y, part.Y, whole.Y) ? part : null;
    }

    private static bool Shows(Axis axis, AxisRange range, AxisRange whole) => axis.Scale == AxisScale.Logarithmic
        ? range.Low > 0 && Math.Log(range.High / range.Low) > Closest * Math.Log(whole.High / whole.Low)
        : range.High - range.Low > Closest * (whole.High - whole.Low);
}
