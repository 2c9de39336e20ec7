using System.Globalization;

namespace Holdfast.Reports.Figures;

/// <summary>Sentences that follow from what is drawn, so that no sign in a picture is left unexplained.</summary>
internal static class PictureNotes
{
    /// <summary>The sentences.</summary>
    public static IEnumerable<RichText> Of(Figure figure)
    {
        var marks = figure.Panels.SelectMany(p => p.AllMarks).ToArray();
        var struck = Count(marks, MarkState.Struck);
        if (struck > 0)
            yield return string.Create(CultureInfo.InvariantCulture, $"Hollow grey marks: {struck} struck, shown but not used.");
        var leftOut = Count(marks, MarkState.LeftOut);
        if (leftOut > 0)
            yield return string.Create(CultureInfo.InvariantCulture, $"Hollow marks in colour: {leftOut} left out, shown but not used.");
        if (marks.Any(m => m.State is MarkState.BelowX or MarkState.AboveX or MarkState.BelowY or MarkState.AboveY))
            yield return "Arrows: known only to lie beyond the limit from which the arrow starts.";
        if (figure.Panels.SelectMany(p => p.Layers).OfType<ModelCurve>().Any(GoesBeyond))
            yield return "Short dashes: the model beyond the range it was fitted to.";
        var outside = figure.Panels.Sum(p => p.AllMarks.Count(m => IsOutside(p, m)));
        if (outside > 0)
            yield return string.Create(CultureInfo.InvariantCulture, $"{outside} outside the range of the axes; the table has them.");
        var hidden = figure.Panels.Sum(p => p.AllMarks.Count(m => IsHidden(p, m)));
        if (hidden > 0)
            yield return string.Create(CultureInfo.InvariantCulture, $"{hidden} at zero or below cannot be shown on a logarithmic axis; the table has them.");
    }

    // A vessel drawn in two panels is one vessel.
    private static int Count(IEnumerable<Mark> marks, MarkState state)
    {
        var such = marks.Where(m => m.State == state).ToArray();
        return such.Count(m => m.Id is null) + such.Select(m => m.Id).OfType<string>().Distinct(StringComparer.Ordinal).Count();
    }

    // True when a logarithmic axis cannot show the mark.
    private static bool IsHidden(Panel panel, Mark mark)
        => (panel.X.Scale == AxisScale.Logarithmic && mark.X <= 0) || (panel.Y.Scale == AxisScale.Logarithmic && mark.Y <= 0);

    private static bool IsOutside(Panel panel, Mark mark)
        => !IsHidden(panel, mark) && !(Holds(AxisRange.OfX(panel), mark.X) && Holds(AxisRange.OfY(panel), mark.Y));

    private static bool Holds(AxisRange range, double value)
        => value >= range.Low - 1e-9 * (range.High - range.Low) && value <= range.High + 1e-9 * (range.High - range.Low);

    private static bool GoesBeyond(ModelCurve curve)
        => curve.Points.Count > 0 && (curve.Points[0].X < curve.FittedFrom || curve.Points[^1].X > curve.FittedTo);
}
