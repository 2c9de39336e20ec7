namespace Holdfast.Porosity;

/// <summary>What one step down in pressure empties.</summary>
/// <param name="UpperX">p/p0 at the start of the step; no unit.</param>
/// <param name="LowerX">p/p0 at its end; no unit.</param>
/// <param name="SmallestRadius">Pore radius at its end, nm.</param>
/// <param name="LargestRadius">Pore radius at its start, nm.</param>
/// <param name="Film">Liquid that left as film from pores already open, cm³/g.</param>
/// <param name="Core">Liquid that left as cores, cm³/g; below 0 where the film alone would give more than was measured.</param>
/// <param name="Volume">Volume of the pores that open, cm³/g.</param>
/// <param name="Area">Their area, m²/g.</param>
public readonly record struct PoreStep(double UpperX, double LowerX, double SmallestRadius, double LargestRadius, double Film, double Core, double Volume, double Area)
{
    /// <summary>Mean diameter, nm.</summary>
    public double Diameter => SmallestRadius + LargestRadius;

    /// <summary>dV/dlog10 d, cm³/g.</summary>
    public double Density => Volume / Math.Log10(LargestRadius / SmallestRadius);
}
