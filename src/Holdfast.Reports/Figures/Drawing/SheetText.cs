namespace Holdfast.Reports.Figures.Drawing;

/// <summary>A line of text.</summary>
/// <param name="X">Place of the anchor, from the left, in pt.</param>
/// <param name="Y">The base line, from the top, in pt.</param>
/// <param name="Line">The set runs.</param>
public sealed record SheetText(double X, double Y, SetLine Line) : SheetItem
{
    /// <summary>Which part of the text lies at the anchor.</summary>
    public TextAnchor Anchor { get; init; }

    /// <summary>True for a text that reads upwards, turned about its anchor.</summary>
    public bool Upwards { get; init; }

    /// <summary>Its tone.</summary>
    public Tone Tone { get; init; } = Tone.Text;

    /// <summary>Where the text starts when read along its own line, in pt from the anchor.</summary>
    public double Start => Anchor switch
    {
        TextAnchor.Middle => -Line.Width / 2,
        TextAnchor.End => -Line.Width,
        _ => 0,
    };
}
