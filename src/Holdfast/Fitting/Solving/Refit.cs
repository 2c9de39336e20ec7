using System.Numerics;
using System.Runtime.Intrinsics;
using Holdfast.Amounts;

namespace Holdfast.Fitting.Solving;

/// <summary>
/// The small and fast solver for curves of at most four parameters: Levenberg–Marquardt on scaled normal equations with Cholesky,
/// entirely on the stack. It serves the thousands of inner fits of scans, profiles and resamples; a fit that is reported is
/// finished by <see cref="LevenbergMarquardt"/> with orthogonal factors.
/// </summary>
/// <remarks>
/// K. Levenberg, Quart. Appl. Math. 2 (1944) 164; D. W. Marquardt, J. SIAM 11 (1963) 431; scaling by a slowly forgotten maximum of the
/// diagonal after: J. J. Moré, Lecture Notes in Mathematics 630 (1978) 105 (all from memory).
/// </remarks>
internal static class Refit
{
    private const int Width = Normal4.Width;
    private const int MostPasses = 200;
    private const double StepTolerance = 1e-9;
    private const double DropTolerance = 1e-16;

    /// <summary>Where an inner fit ended.</summary>
    /// <param name="S">Weighted sum of squares.</param>
    /// <param name="Settled">False when the most passes were used up or no value could be computed.</param>
    public readonly record struct End(double S, bool Settled);

    /// <summary>Fits the parameters that are not held, starting at and returning to <paramref name="theta"/>.</summary>
    /// <param name="prediction">The model.</param>
    /// <param name="coordinates">The coordinates of its parameters.</param>
    /// <param name="y">Readings.</param>
    /// <param name="w">Weights.</param>
    /// <param name="theta">Start, and end, in the solver's coordinates.</param>
    /// <param name="held">Bit j set: parameter j stays where it is.</param>
    /// <param name="mu">First damping, without unit.</param>
    /// <param name="matrix">J′WJ at the end, held parameters included.</param>
    /// <param name="gradient">J′Wr at the end, held parameters included.</param>
    public static End Run<TPrediction>(
        in TPrediction prediction,
        Coordinates coordinates,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> w,
        Span<double> theta,
        uint held,
        double mu,
        out Normal4 matrix,
        out Vector256<double> gradient)
        where TPrediction : struct, IPrediction
    {
        var count = coordinates.Count;
        Span<Slopes> seeds = stackalloc Slopes[Width];
        Span<double> trial = stackalloc double[Width], step = stackalloc double[Width], scale = stackalloc double[Width];
        seeds = seeds[..count];
        scale.Clear();
        var damping = new Damping(mu);
        Seed(coordinates, theta, seeds);
        var s = Normal4.Gather(prediction, seeds, y, w, out matrix, out gradient);
        if (!IsSound(s, matrix, gradient))
            return new(double.NaN, false);

        for (var pass = 1; pass < MostPasses; pass++)
        {
            var free = Free(coordinates, theta, held, gradient);
            for (var j = 0; j < count; j++)
                scale[j] = Math.Max(Damping.Remembered * scale[j], matrix[j * Width + j]);
            if (free == 0 || !Solve(matrix, gradient, scale, damping.Mu, free, step))
                return new(s, true);
            var small = Advance(coordinates, theta, step, trial);
            var predicted = PredictedDrop(matrix, gradient, step);
            Seed(coordinates, trial, seeds);
            var sTrial = Normal4.Gather(prediction, seeds, y, w, out var matrixTrial, out var gradientTrial);
            var gain = (s - sTrial) / predicted;
            if (IsSound(sTrial, matrixTrial, gradientTrial) && (gain > Damping.LeastGain || (sTrial <= s && small)))
            {
                trial[..count].CopyTo(theta);
                (s, matrix, gradient) = (sTrial, matrixTrial, gradientTrial);
                damping.Accept(gain);
            }
            else
            {
                damping.Reject();
            }

            if (small || predicted <= DropTolerance * s)
                return new(s, true);
        }

        return new(s, false);
    }

    /// <summary>The parameters that may move: neither held nor pinned to a bound.</summary>
    public static uint Free(Coordinates coordinates, ReadOnlySpan<double> theta, uint held, Vector256<double> downhill)
    {
        var free = 0u;
        for (var j = 0; j < coordinates.Count; j++)
        {
            if ((held & (1u << j)) == 0 && !coordinates.IsPinned(j, theta[j], downhill.GetElement(j)))
                free |= 1u << j;
        }

        return free;
    }

    /// <summary>Solves (A + μD) d = g over the free parameters by Cholesky of the scaled matrix; false when it is not positive.</summary>
    public static bool Solve(
        in Normal4 matrix, Vector256<double> gradient, ReadOnlySpan<double> scale, double mu, uint free, Span<double> step)
    {
        Span<int> index = stackalloc int[Width];
        var m = 0;
        for (var rest = free; rest != 0; rest &= rest - 1)
            index[m++] = BitOperations.TrailingZeroCount(rest);
        Span<double> factor = stackalloc double[Width * Width];
        Span<double> root = stackalloc double[Width], z = stackalloc double[Width];
        step.Clear();
        for (var i = 0; i < m; i++)
            root[i] = scale[index[i]] > 0 ? 1 / Math.Sqrt(scale[index[i]]) : 0;
        for (var i = 0; i < m; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[index[i] * Width + index[j]] * root[i] * root[j];
                if (i == j)
                    sum += mu;
                for (var k = 0; k < j; k++)
                    sum -= factor[i * Width + k] * factor[j * Width + k];
                if (i != j)
                    factor[i * Width + j] = sum / factor[j * Width + j];
                else if (sum > 0)
                    factor[i * Width + i] = Math.Sqrt(sum);
                else
                    return false;
            }

            var right = gradient.GetElement(index[i]) * root[i];
            for (var k = 0; k < i; k++)
                right -= factor[i * Width + k] * z[k];
            z[i] = right / factor[i * Width + i];
        }

        for (var i = m - 1; i >= 0; i--)
        {
            var sum = z[i];
            for (var k = i + 1; k < m; k++)
                sum -= factor[k * Width + i] * z[k];
            z[i] = sum / factor[i * Width + i];
            step[index[i]] = z[i] * root[i];
        }

        return true;
    }

    /// <summary>Diagonal of (J′WJ)⁻¹ in natural units; 0 for a parameter that cannot move.</summary>
    public static void Spread(in Normal4 matrix, Coordinates coordinates, ReadOnlySpan<double> theta, uint held, Span<double> spread)
    {
        Span<double> scale = stackalloc double[Width], column = stackalloc double[Width];
        for (var j = 0; j < Width; j++)
            scale[j] = matrix[j * Width + j];
        var free = Free(coordinates, theta, held, Vector256<double>.Zero);
        for (var j = 0; j < coordinates.Count; j++)
        {
            var slope = coordinates.Slope(j, theta[j]);
            var moves = (free & (1u << j)) != 0 && Solve(matrix, Vector256<double>.Zero.WithElement(j, 1), scale, 0, free, column);
            spread[j] = moves ? column[j] * slope * slope : 0;
        }
    }

    // Caps and clips the step; true when what is left of it is below the tolerance.
    private static bool Advance(Coordinates coordinates, ReadOnlySpan<double> theta, Span<double> step, Span<double> trial)
    {
        var shrink = 1.0;
        for (var j = 0; j < coordinates.Count; j++)
            shrink = Math.Min(shrink, coordinates.LongestStep(j) / Math.Max(Math.Abs(step[j]), double.Epsilon));
        var small = true;
        for (var j = 0; j < coordinates.Count; j++)
        {
            trial[j] = coordinates.Clip(j, theta[j] + shrink * step[j]);
            step[j] = trial[j] - theta[j];
            small &= Math.Abs(step[j]) <= StepTolerance * coordinates.Size(j, theta[j]);
        }

        return small;
    }

    // 2 d′g − d′A d: what the straightened problem promises for the step that is really taken.
    private static double PredictedDrop(in Normal4 matrix, Vector256<double> gradient, ReadOnlySpan<double> step)
    {
        var d = Vector256.Create(step);
        var sum = 2 * Vector256.Dot(d, gradient);
        for (var i = 0; i < Width; i++)
            sum -= step[i] * Vector256.Dot(d, Vector256.Create((ReadOnlySpan<double>)matrix[(i * Width)..((i + 1) * Width)]));
        return sum;
    }

    private static void Seed(Coordinates coordinates, ReadOnlySpan<double> theta, Span<Slopes> seeds)
    {
        for (var j = 0; j < seeds.Length; j++)
        {
            var slopes = Vector256.Equals(Vector256.Create(0.0, 1, 2, 3), Vector256.Create((double)j)) & Vector256.Create(coordinates.Slope(j, theta[j]));
            seeds[j] = new(coordinates.ToNatural(j, theta[j]), slopes);
        }
    }

    private static bool IsSound(double s, in Normal4 matrix, Vector256<double> gradient)
        => double.IsFinite(s + Vector256.Sum(gradient) + matrix[0] + matrix[5] + matrix[10] + matrix[15]);
}
