using System.Collections.Immutable;
using Holdfast.Statistics;

namespace Holdfast.Porosity;

/// <summary>Distribution of pore sizes by Kelvin's equation with the layer on the walls, after Barrett, Joyner and Halenda.</summary>
/// <param name="Steps">Steps down in pressure, largest pores first.</param>
/// <remarks>
/// E. P. Barrett, L. G. Joyner, P. P. Halenda, J. Am. Chem. Soc. 73 (1951) 373 (from memory), with the length of each class of cylinders kept and its film thinned exactly. Kelvin's
/// equation underestimates pores below about 10 nm; nothing is said under 2 nm.
/// </remarks>
public sealed record PoreSizes(ImmutableArray<PoreStep> Steps)
{
    /// <summary>Range of p/p0 that is used; no unit.</summary>
    public const double HighestX = 0.985, LowestX = 0.42;

    /// <summary>Areas by pores and by BET agree within this share; no unit.</summary>
    public const double AreasAgreeWithin = 0.30;

    /// <summary>A peak here, on desorption alone, is the closing of the loop, nm.</summary>
    public const double ClosureFrom = 3.4, ClosureTo = 4.0;

    /// <summary>Relative error of each amount in the repeats that show how far the distribution can be trusted; no unit.</summary>
    public const double AmountError = 0.005;

    /// <summary>Number of such repeats.</summary>
    public const int Repeats = 200;

    private const double KelvinNm = 2 * Nitrogen.SurfaceTension * Nitrogen.LiquidMolarVolume / (Constants.MolarGas * Nitrogen.BathTemperature) * 1e9;

    /// <summary>Radius of the meniscus, nm.</summary>
    /// <param name="x">Relative pressure between 0 and 1; no unit.</param>
    public static double KelvinRadius(double x) => -KelvinNm / Math.Log(x);

    /// <summary>Radius of the pore that empties, nm: meniscus and layer.</summary>
    /// <param name="x">Relative pressure between 0 and 1; no unit.</param>
    public static double PoreRadius(double x) => KelvinRadius(x) + ThicknessCurve.HarkinsJura.At(x);

    /// <summary>Volume of all pores, cm³/g.</summary>
    public double Volume => Steps.Sum(s => s.Volume);

    /// <summary>Area of all pores, m²/g.</summary>
    public double Area => Steps.Sum(s => s.Area);

    /// <summary>Steps in which the film alone would have given more than was measured: no pore opens there.</summary>
    public int Empty => Steps.Count(s => s.Core < 0);

    /// <summary>The step with the largest dV/dlog d; null without any pore.</summary>
    public PoreStep? Mode => Steps.Any(s => s.Volume > 0) ? Steps.MaxBy(s => s.Density) : null;

    /// <summary>The distribution of a branch; null with fewer than three points in the range.</summary>
    /// <param name="branch">Either branch.</param>
    /// <param name="highestX">Highest p/p0 that is used; no unit.</param>
    /// <param name="lowestX">Lowest p/p0 that is used; no unit.</param>
    public static PoreSizes? Of(ImmutableArray<SorptionPoint> branch, double highestX = HighestX, double lowestX = LowestX)
    {
        SorptionPoint[] points = [.. branch.Where(p => p.X <= highestX && p.X >= lowestX).OrderByDescending(p => p.X)];
        return points.Length < 3 ? null : Of(points, Array.ConvertAll(points, p => p.Amount * Nitrogen.LiquidPerMmol));
    }

    /// <summary>The distribution with the spread of each step's dV/dlog d when every amount has the usual error; cm³/g, in the order of <see cref="Steps"/>.</summary>
    /// <param name="branch">Either branch.</param>
    /// <param name="purpose">Names the stream of chance, so that the same data give the same spread.</param>
    public static (PoreSizes Sizes, ImmutableArray<double> Spread)? WithSpread(ImmutableArray<SorptionPoint> branch, string purpose)
    {
        if (Of(branch) is not { } sizes)
            return null;
        SorptionPoint[] points = [.. branch.Where(p => p.X is <= HighestX and >= LowestX).OrderByDescending(p => p.X)];
        var chance = new SeededStream(0, "pore sizes " + purpose);
        var (sum, squares) = (new double[sizes.Steps.Length], new double[sizes.Steps.Length]);
        for (var k = 0; k < Repeats; k++)
        {
            var again = Of(points, Array.ConvertAll(points, p => p.Amount * Nitrogen.LiquidPerMmol * (1 + AmountError * chance.Normal())));
            for (var i = 0; i < sum.Length; i++)
            {
                sum[i] += again.Steps[i].Density;
                squares[i] += again.Steps[i].Density * again.Steps[i].Density;
            }
        }

        return (sizes, [.. sum.Zip(squares, (s, q) => Math.Sqrt(Math.Max(0, q - s * s / Repeats) / (Repeats - 1)))]);
    }

    private static PoreSizes Of(SorptionPoint[] points, double[] liquid)
    {
        var steps = ImmutableArray.CreateBuilder<PoreStep>(points.Length - 1);
        // Radius (nm) and length (in cm³/g per nm²) of each class that is open.
        var open = new List<(double Radius, double Length)>();
        for (var i = 1; i < points.Length; i++)
        {
            var (upper, lower) = (points[i - 1].X, points[i].X);
            double t1 = ThicknessCurve.HarkinsJura.At(upper), t2 = ThicknessCurve.HarkinsJura.At(lower);
            double largest = PoreRadius(upper), smallest = PoreRadius(lower), r = (largest + smallest) / 2;
            var film = open.Sum(o => Math.PI * o.Length * ((o.Radius - t2) * (o.Radius - t2) - (o.Radius - t1) * (o.Radius - t1)));
            var core = liquid[i - 1] - liquid[i] - film;
            var volume = 0.0;
            if (core > 0)
            {
                var length = core / (Math.PI * (r - t2) * (r - t2));
                open.Add((r, length));
                volume = Math.PI * r * r * length;
            }

            steps.Add(new(upper, lower, smallest, largest, film, core, volume, 2 * volume / r * 1000));
        }

        return new(steps.MoveToImmutable());
    }
}
