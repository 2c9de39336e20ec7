using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>Something that a person drew or said on the picture of a measurement: a line, an outline, the bar. The picture itself is never touched.</summary>
/// <param name="Measurement">Id of the measurement whose picture it is: "M-0001".</param>
/// <param name="Kind">Word that the technique gives it: "line".</param>
/// <param name="Points">Its points as x, y, x, y …, in pixels of the whole picture from its upper left corner, x to the right and y down; empty for what was only said.</param>
/// <param name="Written">What was said with it: "500 nm"; empty for nothing.</param>
/// <param name="Repeats">Id of the mark that was drawn afresh, or null.</param>
/// <param name="Entry">Number of the history entry that made it.</param>
/// <param name="Who">Who drew it.</param>
public sealed record PictureMark(string Measurement, string Kind, ImmutableArray<double> Points, string Written, string? Repeats, long Entry, string Who)
{
    /// <summary>Its address: "M-0001.57". It comes from the entry, so that no two are ever alike.</summary>
    public string Id => IdOf(Measurement, Entry);

    /// <summary>Its points, one by one.</summary>
    /// <returns>x and y, in pixels.</returns>
    public IEnumerable<(double X, double Y)> Places()
    {
        for (var i = 0; i + 1 < Points.Length; i += 2)
            yield return (Points[i], Points[i + 1]);
    }

    /// <summary>The address of the mark that an entry made.</summary>
    /// <param name="measurement">Id of the measurement.</param>
    /// <param name="entry">Number of the entry.</param>
    internal static string IdOf(string measurement, long entry) => measurement + "." + History.Ordinal.Text(entry);
}
