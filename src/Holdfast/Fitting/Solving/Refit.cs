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
    private const double RoundingDrop = 1e-12;

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
    /// <param name="normal">J′WJ and J′Wr at the end, held parameters included.</param>
    public static End Run<TPrediction>(
        in TPrediction prediction,
        Coordinates coordinates,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> w,
        Span<double> theta,
        uint held,
        double mu,
        out Normal4 normal)
        where TPrediction : struct, IPrediction
    {
        var count = coordinates.Count;
        Span<Slopes> seeds = stackalloc Slopes[Width];
        Span<double> trial = stackalloc double[Width], step = stackalloc double[Width], scale = stackalloc double[Width];
        seeds = seeds[..count];
        scale.Clear();
        var damping = new Damping(mu);
        Seed(coordinates, theta, seeds);
        var s = Normal4.Gather(prediction, seeds, y, w, out normal);
        if (!IsSound(s, normal))
            return new(double.NaN, false);

        for (var pass = 1; pass < MostPasses; pass++)
        {
            var free = Free(coordinates, theta, held, normal);
            for (var j = 0; j < count; j++)
                scale[j] = Math.Max(Damping.Remembered * scale[j], normal[j * Width + j]);
            if (free == 0)
                return new(s, true);
            if (!Solve(normal, scale[..count], damping.Mu, free, step))
            {
                if (damping.Mu >= 1)
                    return new(s, true);
                damping.Reject();
                continue;
            }

            var small = Advance(coordinates, theta, step, trial);
            var predicted = PredictedDrop(normal, step[..count]);
            Seed(coordinates, trial, seeds);
            var sTrial = Normal4.Gather(prediction, seeds, y, w, out var normalTrial);
            var gain = (s - sTrial) / predicted;

            // Where the promise is below what sums of squares can show, the step is taken on trust: it still improves the parameters.
            var trusted = (small || predicted <= RoundingDrop * s) && sTrial <= s * (1 + RoundingDrop);
            if (IsSound(sTrial, normalTrial) && (gain > Damping.LeastGain || trusted))
            {
                trial[..count].CopyTo(theta);
                (s, normal) = (sTrial, normalTrial);
                damping.Accept(trusted ? 1 : gain);
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
    private static uint Free(Coordinates coordinates, ReadOnlySpan<double> theta, uint held, in Normal4 normal)
    {
        var free = 0u;
        for (var j = 0; j < coordinates.Count; j++)
        {
            if ((held & (1u << j)) == 0 && !coordinates.IsPinned(j, theta[j], normal[Normal4.Gradient + j]))
                free |= 1u << j;
        }

        return free;
    }

    // Solves (A + μD) d = g over the free parameters by Cholesky factors without roots (L D L′), which scaling does not change; false when the
    // matrix is not positive.
    private static bool Solve(in Normal4 normal, ReadOnlySpan<double> scale, double mu, uint free, Span<double> step)
    {
        Span<double> factor = stackalloc double[Width * Width], pivot = stackalloc double[Width];
        step.Clear();
        for (var i = 0; i < scale.Length; i++)
        {
            if ((free & (1u << i)) == 0)
                continue;
            var right = normal[Normal4.Gradient + i];
            var diagonal = normal[i * Width + i] + mu * scale[i];
            var least = 1e-15 * diagonal;
            for (var j = 0; j < i; j++)
            {
                if ((free & (1u << j)) == 0)
                    continue;
                var sum = normal[i * Width + j];
                for (var k = 0; k < j; k++)
                    sum -= factor[i * Width + k] * factor[j * Width + k] * pivot[k];
                var entry = sum / pivot[j];
                factor[i * Width + j] = entry;
                diagonal -= entry * sum;
                right -= entry * step[j];
            }

            if (!(diagonal > least))
                return false;
            pivot[i] = diagonal;
            step[i] = right;
        }

        for (var i = scale.Length - 1; i >= 0; i--)
        {
            if (pivot[i] == 0)
                continue;
            var sum = step[i] / pivot[i];
            for (var k = i + 1; k < scale.Length; k++)
                sum -= factor[k * Width + i] * step[k];
            step[i] = sum;
        }

        return true;
    }

    /// <summary>Diagonal of (J′WJ)⁻¹ in natural units; 0 for a parameter that cannot move.</summary>
    public static void Spread(in Normal4 normal, Coordinates coordinates, ReadOnlySpan<double> theta, uint held, Span<double> spread)
    {
        var unit = normal;
        Span<double> gradient = ((Span<double>)unit)[Normal4.Gradient..], column = stackalloc double[Width], none = stackalloc double[Width];
        gradient.Clear();
        var free = Free(coordinates, theta, held, unit);
        for (var j = 0; j < coordinates.Count; j++)
        {
            var slope = coordinates.Slope(j, theta[j]);
            gradient[j] = 1;
            var moves = (free & (1u << j)) != 0 && Solve(unit, none[..coordinates.Count], 0, free, column);
            gradient[j] = 0;
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
    private static double PredictedDrop(in Normal4 normal, ReadOnlySpan<double> step)
    {
        var sum = 0.0;
        for (var i = 0; i < step.Length; i++)
        {
            var moved = 2 * normal[Normal4.Gradient + i];
            for (var j = 0; j < step.Length; j++)
                moved -= normal[i * Width + j] * step[j];
            sum += step[i] * moved;
        }

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

    private static bool IsSound(double s, in Normal4 normal)
    {
        var sum = s;
        for (var i = 0; i < Width; i++)
            sum += normal[i * Width + i] + normal[Normal4.Gradient + i];
        return double.IsFinite(sum);
    }
}
