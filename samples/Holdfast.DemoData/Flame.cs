using System.Collections.Immutable;
using Holdfast.Statistics;

namespace Holdfast.DemoData;

/// <summary>The invented flame spectrometer at 232.0 nm: its true curve, which bends a little, and its noise.</summary>
public static class Flame
{
    private const double HighestInside = 1.9;
    private static readonly int[] Factors = [1, 2, 5, 10, 20, 25, 50];

    /// <summary>True absorbance of a nickel solution.</summary>
    /// <param name="c">Concentration in mg/L.</param>
    public static double Absorbance(double c) => 0.0010 + 0.0615 * c - 0.0010 * c * c;

    /// <summary>One reading: constant noise and noise in proportion to the signal, added as squares.</summary>
    /// <param name="chance">The series' stream; one normal draw.</param>
    /// <param name="c">Concentration in mg/L.</param>
    public static double Read(SeededStream chance, double c)
    {
        ArgumentNullException.ThrowIfNull(chance);
        var a = Absorbance(c);
        return a + Math.Sqrt(0.0006 * 0.0006 + 0.008 * a * (0.008 * a)) * chance.Normal();
    }

    /// <summary>Dilutes a solution into the straight part of the curve and reads it three times.</summary>
    /// <param name="chance">The series' stream; four normal draws, the dilution first.</param>
    /// <param name="concentration">True concentration in mg/L, at most 95.</param>
    /// <param name="line">The calibration line that turns the mean reading into a concentration.</param>
    public static Portion Portion(SeededStream chance, double concentration, Line line)
    {
        ArgumentNullException.ThrowIfNull(chance);
        var factor = Factors.First(f => concentration / f <= HighestInside);
        var c = concentration / factor * (1 + 0.006 * chance.Normal());
        ImmutableArray<double> readings = [Read(chance, c), Read(chance, c), Read(chance, c)];
        return new(factor, readings, factor * line.Concentration(readings.Average()));
    }
}
