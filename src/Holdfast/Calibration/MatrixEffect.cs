using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>Does the matrix change the slope? Slope of additions in the sample over slope of the standards.</summary>
/// <param name="Ratio">Slope of additions over slope of standards; no unit.</param>
/// <param name="Z">Difference of the slopes in its standard errors; no unit.</param>
/// <param name="Interval">90 % interval of the ratio, to first order.</param>
public sealed record MatrixEffect(double Ratio, double Z, Interval Interval)
{
    private const double Margin = 0.10;

    /// <summary>Compares two slopes.</summary>
    /// <param name="standards">Slope of the standards.</param>
    /// <param name="additions">Slope of the additions, same unit.</param>
    public static MatrixEffect Of(Estimate standards, Estimate additions)
    {
        var ratio = Statistics.Ratio.Of(additions, standards);
        return new(ratio.Value, Statistics.Ratio.Deviations(standards, additions), ratio.Interval(0.90));
    }

    /// <summary>True when the slopes differ beyond doubt (z above 3), or by more than 10 % with an interval that leaves out 1.</summary>
    public bool IsShown => Z > 3 || (Math.Abs(Ratio - 1) > Margin && !Interval.Contains(1));

    /// <summary>True when the whole interval lies within 10 % of 1: only this shows that there is no effect.</summary>
    public bool IsExcluded => Interval.LiesWithin(1 - Margin, 1 + Margin);
}
