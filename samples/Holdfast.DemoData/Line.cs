namespace Holdfast.DemoData;

/// <summary>A straight calibration line.</summary>
/// <param name="Slope">Absorbance per mg/L.</param>
/// <param name="Intercept">Absorbance at 0 mg/L.</param>
public readonly record struct Line(double Slope, double Intercept)
{
    /// <summary>The least-squares line through the points.</summary>
    /// <param name="points">Concentration in mg/L and absorbance; at least two different concentrations.</param>
    public static Line Through(IReadOnlyCollection<(double C, double A)> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var meanC = points.Average(p => p.C);
        var meanA = points.Average(p => p.A);
        var slope = points.Sum(p => (p.C - meanC) * (p.A - meanA)) / points.Sum(p => (p.C - meanC) * (p.C - meanC));
        return new(slope, meanA - slope * meanC);
    }

    /// <summary>Concentration in mg/L that gives this absorbance.</summary>
    /// <param name="absorbance">Mean absorbance.</param>
    public double Concentration(double absorbance) => (absorbance - Intercept) / Slope;
}
