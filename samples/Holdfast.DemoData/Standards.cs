using System.Collections.Immutable;
using Holdfast.Statistics;

namespace Holdfast.DemoData;

/// <summary>The invented calibration: seven standards read three times each, and ten separate blanks.</summary>
/// <param name="Readings">Concentration in mg/L and absorbance, level by level.</param>
/// <param name="Blanks">One reading of each blank.</param>
public sealed record Standards(ImmutableArray<(double C, double A)> Readings, ImmutableArray<double> Blanks)
{
    /// <summary>The highest standard of the line that the student uses, mg/L: the curve bends above it.</summary>
    public const double HighestUsed = 2;

    private static readonly double[] Levels = [0, 0.5, 1, 1.5, 2, 3, 4];

    /// <summary>The line through the standards up to <see cref="HighestUsed"/>.</summary>
    public Line Line => Line.Through([.. Readings.Where(r => r.C <= HighestUsed)]);

    /// <summary>Reads the standards and the blanks.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static Standards Read(ulong seed)
    {
        var calibration = new SeededStream(seed, "AAS-CAL");
        var blank = new SeededStream(seed, "AAS-BLANK");
        return new(
            [.. Levels.SelectMany(c => Enumerable.Range(0, 3).Select(_ => (c, Flame.Read(calibration, c))))],
            [.. Enumerable.Range(0, 10).Select(_ => Flame.Read(blank, 0))]);
    }
}
