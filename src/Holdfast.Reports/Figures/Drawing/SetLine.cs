using Holdfast.Reports.Fonts;

namespace Holdfast.Reports.Figures.Drawing;

/// <summary>A label set in type: runs at their places, and how wide they are together.</summary>
/// <param name="Runs">The runs.</param>
/// <param name="Width">Width of the whole in pt.</param>
/// <param name="Bold">Bold or not.</param>
public sealed record SetLine(IReadOnlyList<PlacedRun> Runs, double Width, bool Bold)
{
    /// <summary>Sets a label.</summary>
    /// <param name="label">The label.</param>
    /// <param name="size">Size of the type on the line, in pt.</param>
    /// <param name="bold">Bold or not.</param>
    public static SetLine Of(RichText label, double size, bool bold = false)
    {
        ArgumentNullException.ThrowIfNull(label);
        var runs = new List<PlacedRun>(label.Runs.Count);
        double x = 0;
        foreach (var run in label.Runs)
        {
            var shifted = run.Shift != Shift.None;
            var its = shifted ? Math.Max(size * Lettering.ShiftedShare, Lettering.SmallestShifted) : size;
            var drop = run.Shift switch { Shift.Sub => 0.2 * size, Shift.Super => -0.36 * size, _ => 0 };
            runs.Add(new(run.Text, run.Italic, x, drop, its));
            x += LiberationSans.Face(bold, run.Italic).Width(run.Text) * its;
        }

        return new(runs, x, bold);
    }

    /// <summary>Sets a label in as many lines as it needs; it breaks at spaces and behind hyphens between letters.</summary>
    /// <param name="label">The label.</param>
    /// <param name="size">Size of the type on the line, in pt.</param>
    /// <param name="width">Width to keep within, in pt; a longer word still stands alone.</param>
    public static IReadOnlyList<SetLine> Wrapped(RichText label, double size, double width)
    {
        ArgumentNullException.ThrowIfNull(label);
        var lines = new List<SetLine>();
        var line = RichText.Empty;
        foreach (var word in Words(label))
        {
            var joint = line.Runs.Count == 0 || line.Runs[^1].Text.EndsWith('-') ? "" : " ";
            var longer = line.With(joint).With(word);
            if (line.Runs.Count > 0 && Of(longer, size).Width > width)
            {
                lines.Add(Of(line, size));
                longer = word;
            }

            line = longer;
        }

        if (line.Runs.Count > 0)
            lines.Add(Of(line, size));
        return lines;
    }

    // A hyphen between letters allows a break behind it: "pseudo-second-order".
    private static string Breakable(string text)
    {
        for (var i = text.Length - 2; i > 0; i--)
        {
            if (text[i] == '-' && char.IsLetter(text[i - 1]) && char.IsLetter(text[i + 1]))
                text = text.Insert(i + 1, " ");
        }

        return text;
    }

    private static IEnumerable<RichText> Words(RichText label)
    {
        var word = new List<RichRun>();
        foreach (var run in label.Runs)
        {
            var parts = Breakable(run.Text).Split(' ');
            for (var i = 0; i < parts.Length; i++)
            {
                if (i > 0 && word.Count > 0)
                {
                    yield return new(word.ToArray());
                    word.Clear();
                }

                if (parts[i].Length > 0)
                    word.Add(run with { Text = parts[i] });
            }
        }

        if (word.Count > 0)
            yield return new(word.ToArray());
    }
}
