using System.Runtime.InteropServices;
using Holdfast.Amounts;

namespace Holdfast.Fitting.Solving;

/// <summary>
/// Starting points by variable projection (G. H. Golub and V. Pereyra, SIAM J. Numer. Anal. 10 (1973) 413): for each point of a grid
/// over the shape parameters the best scale follows in closed form, so that two- and three-parameter curves need a search in one
/// or two dimensions only. Every local minimum of the grid is a start.
/// </summary>
internal static class Scan
{
    private const int MostStarts = 6;

    /// <summary>Natural starting parameters, best first.</summary>
    /// <param name="x">Abscissas.</param>
    /// <param name="y">Readings.</param>
    /// <param name="w">Weights.</param>
    public static List<double[]> Starts<TCurve>(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> w)
        where TCurve : struct, ICurve<TCurve>
    {
        var axes = Axes(TCurve.Scan, Scale.Of(x, y));
        var sizes = axes.Select(a => a.Length).ToArray();
        var total = sizes.Aggregate(1, (all, size) => all * size);
        var sums = new double[total];
        var at = new double[axes.Length];
        var p = new double[TCurve.Card.Parameters.Count];
        var f = new double[x.Length];
        for (var cell = 0; cell < total; cell++)
        {
            Place(axes, cell, at);
            sums[cell] = Project<TCurve>(x, y, w, at, p, f);
        }

        var starts = new List<(double Sum, double[] P)>();
        for (var cell = 0; cell < total; cell++)
        {
            if (!double.IsFinite(sums[cell]) || !IsLocalMinimum(sums, sizes, cell))
                continue;
            Place(axes, cell, at);
            Project<TCurve>(x, y, w, at, p, f);
            starts.Add((sums[cell], [.. p]));
        }

        return [.. starts.OrderBy(s => s.Sum).Take(MostStarts).Select(s => s.P)];
    }

    // Best scale for the given shapes, parameters into p; infinite when the curve or the card does not allow them.
    private static double Project<TCurve>(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> w, ReadOnlySpan<double> shapes, Span<double> p, Span<double> f)
        where TCurve : struct, ICurve<TCurve>
    {
        TCurve.FromScale(1, shapes, p);
        var parameters = MemoryMarshal.Cast<double, Number>(p);
        double product = 0, square = 0, readings = 0;
        for (var i = 0; i < x.Length; i++)
        {
            f[i] = TCurve.Value<Number>(x[i], parameters).Value;
            product += w[i] * f[i] * y[i];
            square += w[i] * f[i] * f[i];
            readings += w[i] * y[i] * y[i];
        }

        var c = product / square;
        if (!double.IsFinite(c) || c == 0)
            return double.PositiveInfinity;
        TCurve.FromScale(c, shapes, p);
        var card = TCurve.Card.Parameters;
        for (var j = 0; j < p.Length; j++)
        {
            if (!double.IsFinite(p[j]) || p[j] < card[j].Above || (p[j] == card[j].Above && card[j].Kind != Kind.Fraction) || p[j] > card[j].Below)
                return double.PositiveInfinity;
        }

        return readings - c * product;
    }

    private static double[][] Axes(IReadOnlyList<Kind> kinds, Scale scale)
    {
        var points = kinds.Count switch { 0 => 1, 1 => 60, 2 => 24, _ => 12 };
        return [.. kinds.Select(k => Axis(k, scale, points))];
    }

    private static double[] Axis(Kind kind, Scale s, int points) => kind switch
    {
        Kind.PerX => Logarithmic(0.01 / s.LargestX, 100 / s.LeastX, points),
        Kind.X => Logarithmic(0.01 * s.LeastX, 100 * s.LargestX, points),
        Kind.Response => Logarithmic(0.01 * s.LargestY, 10 * s.LargestY, points),
        Kind.PerResponse => Logarithmic(0.01 / s.LargestY, 100 / s.LargestY, points),
        Kind.ResponsePerX => Logarithmic(0.01 * s.LargestY / s.LargestX, 100 * s.LargestY / s.LeastX, points),
        Kind.PerXAndResponse => Logarithmic(0.01 / (s.LargestX * s.LargestY), 100 / (s.LeastX * s.LargestY), points),
        Kind.Exponent => Logarithmic(0.2, 3, Math.Max(points / 2, 9)),
        Kind.Fraction => [.. Enumerable.Range(0, 9).Select(i => 0.02 + 0.12 * i)],
        Kind.Other => Logarithmic(0.01, 100, points),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of parameter."),
    };

    private static double[] Logarithmic(double from, double to, int points)
        => [.. Enumerable.Range(0, points).Select(i => from * Math.Pow(to / from, points == 1 ? 0.5 : i / (points - 1.0)))];

    private static void Place(double[][] axes, int cell, Span<double> at)
    {
        for (var a = 0; a < axes.Length; a++)
        {
            at[a] = axes[a][cell % axes[a].Length];
            cell /= axes[a].Length;
        }
    }

    private static bool IsLocalMinimum(double[] sums, int[] sizes, int cell)
    {
        var stride = 1;
        foreach (var size in sizes)
        {
            var position = cell / stride % size;
            if ((position > 0 && sums[cell - stride] < sums[cell]) || (position < size - 1 && sums[cell + stride] < sums[cell]))
                return false;
            stride *= size;
        }

        return true;
    }

    /// <summary>The scale of the data, from which grids and limits follow.</summary>
    private readonly record struct Scale(double LeastX, double LargestX, double LargestY)
    {
        public static Scale Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
        {
            double least = double.PositiveInfinity, largest = 0, response = 0;
            foreach (var v in x)
            {
                if (v != 0)
                    least = Math.Min(least, Math.Abs(v));
                largest = Math.Max(largest, Math.Abs(v));
            }

            foreach (var v in y)
                response = Math.Max(response, Math.Abs(v));
            return largest == 0 ? new(1, 1, response) : new(least, largest, response);
        }
    }
}
