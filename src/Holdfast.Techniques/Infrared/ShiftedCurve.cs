using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Infrared;

/// <summary>A transmittance that lies above 100 %: curves are moved up against each other for a figure, and no absorbance follows from them until that is taken back.</summary>
internal static class ShiftedCurve
{
    /// <summary>The upper quartile of a transmittance may lie this high, per cent: a background taken on another day (common practice).</summary>
    public const double HighestBaseline = 105;

    // Authors move by whole tens.
    private const double Step = 10;

    /// <summary>How far the curve was moved up, in its own unit: 0 where it lies below 100 %; null while it is asked.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="heading">What stands over the curve.</param>
    /// <param name="scale">"percent-transmittance" or "transmittance".</param>
    /// <param name="ordinates">The curve.</param>
    public static double? Ask(MeasurementSource source, string heading, string scale, ImmutableArray<double?> ordinates)
    {
        var whole = scale == "percent-transmittance" ? 100.0 : 1;
        double[] sorted = [.. ordinates.OfType<double>().Order()];
        if (scale == "absorbance" || sorted.Length == 0 || sorted[sorted.Length * 3 / 4] <= HighestBaseline / 100 * whole)
            return 0;
        var (id, unit) = (source.Question("shift:" + heading), whole == 1 ? "" : " %");
        var likely = Math.Ceiling((sorted[^1] / whole * 100 - 100) / Step) * Step / 100 * whole;
        ImmutableArray<string> choices = [likely.ToString("G4", CultureInfo.InvariantCulture), "0"];
        var answer = source.Talk.Ask(id, Codes.Ambiguous,
            string.Create(CultureInfo.InvariantCulture, $"“{heading}”, a transmittance, lies above {whole:0.###}{unit} over most of its range, up to {sorted[^1]:0.##}{unit}. Was the curve shifted upwards for a figure, and by how much?"), choices, heading);
        source.Talk.Explain(id, [$"{choices[0]}{unit} are taken off before the absorbance is worked out", "it stays as it stands: its absorbance is below 0 over most of the range"]);
        if (answer is null)
            return null;
        return CellText.Read(answer.Trim().TrimEnd('%'), DecimalMark.Point) is CellText.Number { Value: >= 0 } number ? number.Value : throw Answers.Unknown(id, answer, "how far it was moved, a number of 0 or more");
    }
}
