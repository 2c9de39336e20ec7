using System.Collections.Immutable;

namespace Holdfast.Porosity;

/// <summary>
/// Volume of micropores and area outside them, from a straight line of the amount against the layer on a flat surface: its thickness (t-plot) or the amount on a
/// non-porous reference (α_s-plot).
/// </summary>
/// <param name="Points">Points of the line: layer (nm, or α_s), volume (cm³(STP)/g).</param>
/// <param name="ExternalArea">Area outside micropores, m²/g.</param>
/// <param name="ExternalAreaU">Its standard uncertainty by the scatter about the line, m²/g.</param>
/// <param name="MicroporeVolume">Volume of micropores, cm³/g.</param>
/// <param name="MicroporeVolumeU">Its standard uncertainty by the scatter about the line, cm³/g.</param>
/// <param name="R2">Coefficient of determination; no unit.</param>
/// <param name="From">Lower end of the range of the layer: nm, or α_s.</param>
/// <param name="To">Upper end of the range of the layer: nm, or α_s.</param>
/// <remarks>B. C. Lippens, J. H. de Boer (t), K. S. W. Sing (α_s); formulas from memory.</remarks>
public sealed record LayerPlot(
    ImmutableArray<(double Layer, double Volume)> Points, double ExternalArea, double ExternalAreaU, double MicroporeVolume, double MicroporeVolumeU, double R2, double From, double To)
{
    /// <summary>Fewest points of a line.</summary>
    public const int FewestPoints = 4;

    /// <summary>Smallest R² of a line; no unit.</summary>
    public const double SmallestR2 = 0.99;

    /// <summary>Range of thickness that is used, nm.</summary>
    public const double UsualFrom = 0.35, UsualTo = 0.50;

    /// <summary>Range of α_s that is used: above the filling of micropores, below condensation; no unit (common practice).</summary>
    public const double AlphaFrom = 0.7, AlphaTo = 1.0;

    /// <summary>Ranges it is moved to, to see how much that matters, nm.</summary>
    public static ImmutableArray<(double From, double To)> Moved { get; } = [(0.30, 0.45), (0.40, 0.60)];

    /// <summary>Area per slope of cm³(STP)/g per nm, m²/g.</summary>
    public const double AreaPerSlope = Nitrogen.LiquidPerMmol / Nitrogen.StpPerMmol * 1000;

    /// <summary>Slope of the line, cm³(STP)/g per nm, or per α_s.</summary>
    public double Slope { get; private init; }

    /// <summary>Intercept of the line, cm³(STP)/g.</summary>
    public double Intercept { get; private init; }

    /// <summary>The t-plot over a range of thickness; null with fewer than four points in it.</summary>
    /// <param name="adsorption">Adsorption branch, p/p0 strictly rising between 0 and 1.</param>
    /// <param name="curve">Thickness on a flat surface.</param>
    /// <param name="fromNm">Lower end of the thickness, nm.</param>
    /// <param name="toNm">Upper end of the thickness, nm.</param>
    public static LayerPlot? ByThickness(ImmutableArray<SorptionPoint> adsorption, ThicknessCurve curve, double fromNm = UsualFrom, double toNm = UsualTo)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return Over([.. adsorption.Select(p => (curve.At(p.X), p.Amount * Nitrogen.StpPerMmol))], fromNm, toNm, AreaPerSlope);
    }

    /// <summary>The α_s-plot against the isotherm of a non-porous solid; null with fewer than four points in the range, or where the reference does not reach p/p0 0.4.</summary>
    /// <param name="adsorption">Adsorption branch, p/p0 strictly rising between 0 and 1.</param>
    /// <param name="reference">Adsorption branch of the reference, measured the same way.</param>
    /// <param name="referenceArea">Area of the reference, m²/g.</param>
    /// <param name="from">Lower end of α_s; no unit.</param>
    /// <param name="to">Upper end of α_s; no unit.</param>
    public static LayerPlot? ByReference(ImmutableArray<SorptionPoint> adsorption, ImmutableArray<SorptionPoint> reference, double referenceArea, double from = AlphaFrom, double to = AlphaTo)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(referenceArea);
        if (SorptionBranches.At(reference, 0.4) is not { } standard)
            return null;
        var points = adsorption.Select(p => (Layer: SorptionBranches.At(reference, p.X) / standard, Volume: p.Amount * Nitrogen.StpPerMmol)).Where(p => p.Layer is not null);
        return Over([.. points.Select(p => (p.Layer!.Value, p.Volume))], from, to, referenceArea / (standard * Nitrogen.StpPerMmol));
    }

    /// <summary>What must be said beside it.</summary>
    /// <param name="whole">BET area, m²/g; null where there is none.</param>
    public ImmutableArray<Finding> Findings(double? whole) =>
    [
        .. R2 < SmallestR2 ? [PorosityFindings.NoTPlot($"its points lie on no line (R² {R2.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture)})")] : Array.Empty<Finding>(),
        .. MicroporeVolume < -2 * MicroporeVolumeU ? [PorosityFindings.NegativeIntercept(MicroporeVolume)] : Array.Empty<Finding>(),
        .. whole is { } a && ExternalArea > a + 2 * ExternalAreaU ? [PorosityFindings.ExternalAboveWhole(ExternalArea, a)] : Array.Empty<Finding>(),
    ];

    private static LayerPlot? Over(ImmutableArray<(double Layer, double Volume)> all, double from, double to, double areaPerSlope)
    {
        ImmutableArray<(double Layer, double Volume)> points = [.. all.Where(p => p.Layer >= from && p.Layer <= to)];
        if (points.Length < FewestPoints)
            return null;
        double mx = points.Average(p => p.Layer), my = points.Average(p => p.Volume);
        double sxx = points.Sum(p => (p.Layer - mx) * (p.Layer - mx)), sxy = points.Sum(p => (p.Layer - mx) * (p.Volume - my)), syy = points.Sum(p => (p.Volume - my) * (p.Volume - my));
        var slope = sxy / sxx;
        var rest = Math.Max(0, syy - slope * sxy);
        var variance = rest / (points.Length - 2);
        const double Liquid = Nitrogen.LiquidPerMmol / Nitrogen.StpPerMmol;
        return new(points, slope * areaPerSlope, Math.Sqrt(variance / sxx) * areaPerSlope, (my - slope * mx) * Liquid, Math.Sqrt(variance * (1.0 / points.Length + mx * mx / sxx)) * Liquid,
            syy > 0 ? 1 - rest / syy : 0, from, to)
        {
            Slope = slope,
            Intercept = my - slope * mx,
        };
    }
}
