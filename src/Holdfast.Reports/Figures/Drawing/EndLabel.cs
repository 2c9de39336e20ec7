namespace Holdfast.Reports.Figures.Drawing;

/// <summary>A label right of the plot, at the height where its layer ends.</summary>
/// <param name="Lines">The text.</param>
/// <param name="Wanted">Height where it wants to stand, in pt.</param>
/// <param name="Sample">The specimen before it.</param>
/// <param name="FromEdge">True when the layer runs up to the right edge, so that a leader can show a shift.</param>
internal sealed record EndLabel(IReadOnlyList<SetLine> Lines, double Wanted, Sample Sample, bool FromEdge)
{
    private const double Leader = 5;
    private const double Gap = 3;

    /// <summary>Height it takes, in pt.</summary>
    public double Height => Lines.Count * Lettering.Label * Lettering.Leading + 1;

    /// <summary>Room the labels need right of the plot, in pt; 0 without labels.</summary>
    public static double Room(IReadOnlyList<EndLabel> labels)
        => labels.Count == 0 ? 0 : Leader + Sample.Width + Gap + labels.SelectMany(l => l.Lines).Max(l => l.Width) + 1;

    /// <summary>Width a label's text may take in a panel of a given width before it breaks, in pt.</summary>
    public static double TextWidth(double panelWidth) => Math.Max(48, 0.34 * panelWidth - Leader - Sample.Width - Gap);

    /// <summary>The labels, shifted apart, with leaders where a shift is large enough to puzzle.</summary>
    public static IEnumerable<SheetItem> Draw(IReadOnlyList<EndLabel> labels, Clip box)
    {
        var places = Apart.Place(labels.Select(l => l.Wanted).ToArray(), labels.Select(l => l.Height).ToArray(), box.Top - 4, box.Bottom + 2);
        for (var i = 0; i < labels.Count; i++)
        {
            var label = labels[i];
            if (label.FromEdge && Math.Abs(places[i] - label.Wanted) > 1.5)
                yield return new SheetPath(Outline.Line(box.Right + 0.5, label.Wanted, box.Right + Leader - 0.5, places[i])) { Stroke = Tone.Grey };
            foreach (var item in label.Sample.Draw(box.Right + Leader, places[i]))
                yield return item;
            var line = places[i] + Lettering.HalfCapital * Lettering.Label - (label.Lines.Count - 1) * Lettering.Label * Lettering.Leading / 2;
            foreach (var set in label.Lines)
            {
                yield return new SheetText(box.Right + Leader + Sample.Width + Gap, line, set);
                line += Lettering.Label * Lettering.Leading;
            }
        }
    }
}
