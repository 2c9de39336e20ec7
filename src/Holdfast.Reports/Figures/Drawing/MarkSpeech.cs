using System.Globalization;

namespace Holdfast.Reports.Figures.Drawing;

/// <summary>A mark in words, for readers who listen.</summary>
internal static class MarkSpeech
{
    /// <summary>The words: "V-12: time, in minutes: 30; loading, in milligrams per gram: 12.4 (12 to 12.8)".</summary>
    public static string Of(Panel panel, Mark mark)
    {
        var x = Value(panel.X, mark.X, mark.XBar, mark.State is MarkState.BelowX ? "below " : mark.State is MarkState.AboveX ? "above " : "");
        var y = Value(panel.Y, mark.Y, mark.YBar, mark.State is MarkState.BelowY ? "below " : mark.State is MarkState.AboveY ? "above " : "");
        return (mark.Id is null ? "" : mark.Id + ": ") + x + "; " + y + (mark.State switch { MarkState.Struck => "; struck", MarkState.LeftOut => "; left out", _ => "" });
    }

    /// <summary>A bar in words.</summary>
    public static string Of(Panel panel, Bar bar)
    {
        var x = panel.X.Scale == AxisScale.Named ? Value(panel.X, Math.Round((bar.From + bar.To) / 2), null, "")
            : $"{panel.X.Spoken}: {Short(bar.From)} to {Short(bar.To)}";
        return (bar.Id is null ? "" : bar.Id + ": ") + x + "; " + Value(panel.Y, bar.Height, bar.YBar, "");
    }

    private static string Value(Axis axis, double value, ErrorBar? bar, string limit)
    {
        if (axis.Scale == AxisScale.Named && value >= 1 && value <= axis.Places.Count)
            return axis.Places[(int)value - 1].Spoken;
        var range = bar is { } b ? $" ({Short(b.Low)} to {Short(b.High)})" : "";
        return $"{axis.Spoken}: {limit}{Short(value)}{range}";
    }

    // Four figures are enough to hear; the table and the trail have them all.
    private static string Short(double value) => value.ToString("G4", CultureInfo.InvariantCulture).Replace("-", "minus ", StringComparison.Ordinal);
}
