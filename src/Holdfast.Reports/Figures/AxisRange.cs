namespace Holdfast.Reports.Figures;

/// <summary>The values an axis shows.</summary>
/// <param name="Low">Lower end, in the axis unit.</param>
/// <param name="High">Upper end, in the axis unit; above <paramref name="Low"/>.</param>
public readonly record struct AxisRange(double Low, double High)
{
    // A linear axis begins at zero when its smallest value is below this share of the largest: the empty part is then small.
    private const double NearZero = 0.2;
    private const double Pad = 0.05;

    // Values that agree to eight digits are one value to a reader, and ticks between them would need labels of nine.
    private const double Narrow = 1e-8;

    /// <summary>Range of the horizontal axis.</summary>
    /// <param name="panel">The panel.</param>
    public static AxisRange OfX(Panel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        var values = new List<double>();
        foreach (var layer in panel.Layers)
        {
            values.AddRange(layer switch
            {
                Marks m => m.Points.SelectMany(p => Ends(p.X, p.XBar)),
                ModelCurve c => c.Points.Select(p => p.X),
                Trace t => t.Points.Select(p => p.X),
                Band b => b.Points.Select(p => p.X),
                Bars b => b.Items.SelectMany(i => new[] { i.From, i.To }),
                Sticks s => s.Points.Select(p => p.X),
                ReferenceLine { At: AxisName.X } r => [r.Value],
                Annotation a => [a.X],
                _ => [],
            });
        }

        if (panel.Residuals is { } strip)
            values.AddRange(strip.Marks.SelectMany(m => m.Points).SelectMany(p => Ends(p.X, p.XBar)));

        // A scan fills its panel from its first reading to its last.
        var scans = panel.Layers.OfType<Trace>().SelectMany(t => t.Points).Select(p => p.X).ToArray();
        if (scans.Length > 1 && panel.X.Scale == AxisScale.Linear)
            return Choose(panel.X with { Min = panel.X.Min ?? scans.Min(), Max = panel.X.Max ?? scans.Max() }, values, fromZero: false);
        return Choose(panel.X, values, fromZero: false);
    }

    /// <summary>Range of the vertical axis.</summary>
    /// <param name="panel">The panel.</param>
    /// <exception cref="ArgumentException">The panel holds bars and its y axis does not start at zero.</exception>
    public static AxisRange OfY(Panel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        var x = OfX(panel);
        var values = new List<double>();
        foreach (var layer in panel.Layers)
        {
            values.AddRange(layer switch
            {
                Marks m => m.Points.SelectMany(p => Ends(p.Y, p.YBar)),
                ModelCurve c => c.Points.Where(p => p.X >= c.FittedFrom && p.X <= c.FittedTo).Select(p => p.Y),
                Trace t => t.Points.Where(p => p.X >= x.Low && p.X <= x.High).Select(p => p.Y),
                Band b => b.Points.Where(p => p.X >= x.Low && p.X <= x.High).SelectMany(p => new[] { p.Low, p.High }),
                Bars b => b.Items.SelectMany(i => Ends(i.Height, i.YBar)),
                Sticks s => s.Points.Select(p => p.Height),
                ReferenceLine { At: AxisName.Y } r => [r.Value],
                Annotation a => [a.Y],
                _ => [],
            });
        }

        // Reference lines may hang below a curve instead: then they begin at zero and nothing stands on it.
        var bars = panel.Layers.Any(l => l is Bars or Sticks { Hang: false });
        if (bars && (panel.Y.Scale != AxisScale.Linear || panel.Y.Min is > 0 or < 0 || values.Any(v => v < 0)))
            throw new ArgumentException("Bars stand on zero: the y axis is linear, starts at zero and no bar lies below.", nameof(panel));
        var range = Choose(panel.Y, values, bars);

        // A text above the highest mark needs room.
        return panel.Y is { Scale: AxisScale.Linear, Max: null } && panel.Layers.Any(l => l is Annotation)
            ? range with { High = range.High + 0.06 * (range.High - range.Low) }
            : range;
    }

    /// <summary>Range of the axis of a residual strip: even about zero, so that a lean to one side shows.</summary>
    /// <param name="strip">The strip.</param>
    public static AxisRange OfResiduals(Residuals strip)
    {
        ArgumentNullException.ThrowIfNull(strip);
        var reach = strip.Marks.SelectMany(m => m.Points).SelectMany(p => Ends(p.Y, p.YBar)).Select(Math.Abs).DefaultIfEmpty(1).Max();
        reach = reach == 0 ? 1 : reach * 1.15;
        return new(strip.Y.Min ?? -reach, strip.Y.Max ?? reach);
    }

    private static IEnumerable<double> Ends(double value, ErrorBar? bar) => bar is { } b ? [value, b.Low, b.High] : [value];

    private static AxisRange Choose(Axis axis, List<double> values, bool fromZero)
    {
        foreach (var value in values)
        {
            if (!double.IsFinite(value))
                throw new ArgumentException($"Axis '{axis.Name}' is given a value that is not a number.", nameof(values));
        }

        var range = axis.Scale switch
        {
            AxisScale.Named => new(0.5, axis.Places.Count + 0.5),
            AxisScale.Logarithmic => Logarithmic(axis, values),
            _ => Linear(axis, values, fromZero),
        };
        return range.Low < range.High
            ? range
            : throw new ArgumentException($"Axis '{axis.Name}' has its lower end at or above its upper end.", nameof(axis));
    }

    private static AxisRange Linear(Axis axis, List<double> values, bool fromZero)
    {
        var low = values.Count == 0 ? 0 : values.Min();
        var high = values.Count == 0 ? 1 : values.Max();
        if (high - low <= Narrow * Math.Max(Math.Abs(low), Math.Abs(high)) && low != 0 && !fromZero)
            (low, high) = (low - Math.Abs(low) * 0.1, high + Math.Abs(high) * 0.1);
        var atZero = fromZero || (low >= 0 && low <= NearZero * high);
        if (atZero)
            low = 0;
        if (high <= low)
            high = low + 1;
        var span = high - low;
        var (from, to) = (atZero ? 0 : low - Pad * span, high + Pad * span);

        // One end that was asked for gives way where every value lies beyond it: uptakes that are all below zero are shown as they are.
        if (axis.Min >= to && axis.Max is null)
            return new(from, axis.Min.Value);
        return axis.Max <= from && axis.Min is null ? new(axis.Max.Value, to) : new(axis.Min ?? from, axis.Max ?? to);
    }

    private static AxisRange Logarithmic(Axis axis, List<double> values)
    {
        if (axis.Min is <= 0 || axis.Max is <= 0)
            throw new ArgumentException($"The logarithmic axis '{axis.Name}' cannot start or end at zero or below.", nameof(axis));
        var shown = values.Where(v => v > 0).ToArray();
        var low = shown.Length == 0 ? 1 : shown.Min();
        var high = shown.Length == 0 ? 10 : shown.Max();
        var pad = Math.Pow(10, Math.Max(0.05, Pad * Math.Log10(high / low)));
        return new(axis.Min ?? low / pad, axis.Max ?? high * pad);
    }
}
