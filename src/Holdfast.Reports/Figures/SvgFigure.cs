using System.Globalization;
using System.Text;
using Holdfast.Reports.Figures.Drawing;
using Holdfast.Reports.Fonts;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Figures;

/// <summary>
/// A figure as SVG: text stays text and sizes are true. A file brings its typeface; in a page only presentation attributes are used, so that it may
/// stand where the content policy forbids inline styles.
/// </summary>
public static class SvgFigure
{
    /// <summary>The tree, for a page or a document.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="format">Its final size.</param>
    /// <param name="options">For a file or for a page; null for a file.</param>
    public static Element Tree(Figure figure, FigureFormat format, SvgOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var sheet = FigureLayout.Of(figure, format);
        var use = options ?? SvgOptions.File;
        var id = use.IdPrefix + figure.Id;
        var content = new List<Node>
        {
            Html.Element("title", [("id", id + "-title")], figure.Title),
            Html.Element("desc", [("id", id + "-desc")], figure.Alt),
        };
        if (figure.MadeFrom.Count > 0 && !use.OnScreen)
            content.Add(Html.Element("metadata", string.Join("; ", figure.MadeFrom)));
        if (!use.OnScreen)
            content.Add(new Stylesheet(EmbeddedFaces.Css(sheet.Flat.OfType<SheetText>().SelectMany(t => t.Line.Runs, (t, r) => (t.Line.Bold, r.Italic, r.Text)))));
        content.AddRange(sheet.Items.Select(i => Draw(i, use)));
        return Html.Element(
            "svg",
            [
                ("xmlns", "http://www.w3.org/2000/svg"),
                ("id", id),
                ("class", use.OnScreen ? "figure-sheet" : null),
                ("width", Number(sheet.WidthMm) + "mm"),
                ("height", Number(sheet.HeightMm) + "mm"),
                ("viewBox", $"0 0 {Number(sheet.Width)} {Number(sheet.Height)}"),
                ("role", use.OnScreen ? "group" : "img"),
                ("aria-labelledby", $"{id}-title {id}-desc"),
                ("font-family", LiberationSans.Family),
                ("fill", "none"),
            ],
            content);
    }

    /// <summary>The text of a file.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="format">Its final size.</param>
    public static string File(Figure figure, FigureFormat format)
        => "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + Tree(figure, format).ToXml() + "\n";

    private static Element Draw(SheetItem item, SvgOptions use) => item switch
    {
        SheetPath path => Draw(path, use),
        SheetText text => Draw(text, use),
        SheetGroup group => Draw(group, use),
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "No such item."),
    };

    private static Element Draw(SheetGroup group, SvgOptions use)
    {
        var inside = group.Items.Select(i => Draw(i, use));
        if (!use.OnScreen)
            return Html.Element("g", inside);
        if (group.Kind == GroupKind.Series)
            return Html.Element("g", [("class", "figure-series"), ("role", "list"), ("aria-label", group.Spoken)], inside);

        // A mark measures 2 mm; the place to hit is made larger.
        var (x, y) = group.Centre;
        Node hit = Html.Element("circle", [("cx", Number(x)), ("cy", Number(y)), ("r", "7"), ("pointer-events", "all")]);
        var address = group.Id is null ? null : use.MarkAddress?.Invoke(group.Id);
        IEnumerable<Node> parts = [Html.Element("title", group.Spoken), .. inside, hit];
        if (address is not null)
            parts = [Html.Element("a", [("href", address), ("aria-label", group.Spoken)], parts)];
        return Html.Element("g", [("class", "figure-mark"), ("role", "listitem"), ("data-id", group.Id)], parts);
    }

    private static Element Draw(SheetPath path, SvgOptions use) => Html.Element(
        "path",
        [
            ("d", Steps(path.Steps)),
            ("class", use.OnScreen ? Classes(path.Fill, path.Stroke) : null),
            ("fill", path.Fill is { } fill ? Palette.Light(fill) : null),
            ("fill-opacity", path is { Fill: not null, FillOpacity: < 1 } ? Number(path.FillOpacity) : null),
            ("stroke", path.Stroke is { } stroke ? Palette.Light(stroke) : null),
            ("stroke-width", path.Stroke is null ? null : Number(path.LineWidth)),
            ("stroke-dasharray", path is { Stroke: not null, Dash.Count: > 0 } ? string.Join(' ', path.Dash.Select(Number)) : null),
            ("stroke-linejoin", path is { Stroke: not null, Round: true } ? "round" : null),
        ]);

    private static Element Draw(SheetText text, SvgOptions use)
    {
        var runs = text.Line.Runs;
        var single = runs.Count == 1 && runs[0] is { Drop: 0 };
        var (x, y) = (Number(text.X), Number(text.Y));
        IEnumerable<Node> content = single ? [runs[0].Text] : runs.Select(r => Draw(r, text));
        return Html.Element(
            "text",
            [
                ("x", single ? x : null),
                ("y", single ? y : null),
                ("transform", text.Upwards ? $"rotate(-90 {x} {y})" : null),
                ("class", use.OnScreen ? Classes(text.Tone, null) : null),
                ("fill", Palette.Light(text.Tone)),
                ("font-size", single ? Number(runs[0].Size) : null),
                ("font-weight", text.Line.Bold ? "bold" : null),
                ("font-style", single && runs[0].Italic ? "italic" : null),
                ("text-anchor", !single ? null : text.Anchor switch { TextAnchor.Middle => "middle", TextAnchor.End => "end", _ => null }),
            ],
            content);
    }

    // Runs of several styles stand each at its own place: renderers differ in how they centre a line of mixed runs.
    private static Element Draw(PlacedRun run, SheetText text) => Html.Element(
        "tspan",
        [
            ("x", Number(text.X + text.Start + run.X)),
            ("y", Number(text.Y + run.Drop)),
            ("font-size", Number(run.Size)),
            ("font-style", run.Italic ? "italic" : null),
        ],
        run.Text);

    private static string Classes(Tone? fill, Tone? stroke)
        => ((fill is { } f ? "fill-" + Palette.Class(f) : "") + (stroke is { } s ? " stroke-" + Palette.Class(s) : "")).Trim();

    private static string Steps(IReadOnlyList<PathStep> steps)
    {
        var d = new StringBuilder();
        foreach (var step in steps)
        {
            d.Append(step.Verb switch
            {
                PathVerb.Move => $"M{Number(step.X)} {Number(step.Y)}",
                PathVerb.Line => $"L{Number(step.X)} {Number(step.Y)}",
                PathVerb.Curve => $"C{Number(step.X1)} {Number(step.Y1)} {Number(step.X2)} {Number(step.Y2)} {Number(step.X)} {Number(step.Y)}",
                _ => "Z",
            });
        }

        return d.ToString();
    }

    // A hundredth of a point is 3.5 µm: finer than any printer, coarse enough that no machine's rounding shows.
    private static string Number(double value)
    {
        var text = value.ToString("0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}
