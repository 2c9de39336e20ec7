using System.Runtime.Intrinsics;
using Holdfast.Amounts;

namespace Holdfast.Fitting.Solving;

/// <summary>
/// The thorough solver, for any number of parameters: damped Gauss–Newton by orthogonal factors of the weighted slopes, so that the
/// error grows with the condition number and not with its square, then Gauss–Newton steps down to the rounding floor.
/// Allocates nothing: all memory comes from the <see cref="Workspace"/>.
/// </summary>
/// <remarks>
/// K. Levenberg 1944, D. W. Marquardt 1963, J. J. Moré 1978; the end test is the relative offset of D. M. Bates and D. G. Watts,
/// Technometrics 23 (1981) 179 (from memory).
/// </remarks>
internal static class LevenbergMarquardt
{
    private const double OffsetTolerance = 1e-6;
    private const double StepTolerance = 1e-10;
    private const double NearlyThere = 1e-12;
    private const double VanishedColumn = 1e-8;
    private const double MostDamping = 1e18;
    private const int MostPolishingSteps = 60;

    /// <summary>Where a fit ended.</summary>
    /// <param name="Stop">Why.</param>
    /// <param name="S">Weighted sum of squares.</param>
    /// <param name="Offset">Relative offset: the part of the residuals that the curve could still take up, over the part it cannot.</param>
    /// <param name="Iterations">Steps tried.</param>
    /// <param name="Runaway">The parameter that ran away, or −1.</param>
    public readonly record struct End(StopReason Stop, double S, double Offset, int Iterations, int Runaway);

    /// <summary>Fits the parameters that are not held, starting at and returning to <paramref name="theta"/>.</summary>
    /// <param name="residuals">The model, and how its residuals are weighed.</param>
    /// <param name="coordinates">The coordinates of its parameters.</param>
    /// <param name="y">Readings.</param>
    /// <param name="w">Weights.</param>
    /// <param name="theta">Start, and end.</param>
    /// <param name="held">Bit j set: parameter j stays where it is.</param>
    /// <param name="mostIterations">The most steps tried.</param>
    /// <param name="memory">Memory of the right size; holds residuals and slopes of the end point afterwards.</param>
    public static End Run<TResiduals>(
        in TResiduals residuals,
        Coordinates coordinates,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> w,
        Span<double> theta,
        uint held,
        int mostIterations,
        Workspace memory)
        where TResiduals : struct, IResiduals
    {
        for (var i = 0; i < y.Length; i++)
            memory.RootWeight[i] = Math.Sqrt(w[i]);
        var readings = residuals.Size(y, memory.RootWeight);
        memory.Scale.AsSpan().Clear();
        var s = residuals.Evaluate(theta, y, memory.RootWeight, memory.Residual, memory.Jacobian);
        if (!double.IsFinite(s))
            return new(StopReason.Refused, s, double.NaN, 0, -1);
        var damping = new Damping(Damping.Cold);
        var iteration = 0;
        var stuck = false;
        var left = 0.0;
        for (; iteration < mostIterations && !stuck; iteration++)
        {
            var free = Factorise(coordinates, theta, held, memory);
            left = SumOfSquares(memory.Rotated.AsSpan(0, free));
            if (free == 0 || left <= NearlyThere * s + Floor(readings))
                break;
            while (true)
            {
                SolveDamped(memory, free, damping.Mu);
                var predicted = Advance(coordinates, theta, memory, free);
                var sTrial = residuals.Evaluate(memory.Trial, y, memory.RootWeight, memory.TrialResidual, memory.TrialJacobian);
                var gain = (s - sTrial) / predicted;
                if (double.IsFinite(sTrial) && gain > Damping.LeastGain)
                {
                    damping.Accept(gain);
                    memory.Trial.CopyTo(theta);
                    memory.TakeTrial();
                    s = sTrial;
                    break;
                }

                damping.Reject();
                iteration++;
                stuck = damping.Mu > MostDamping || predicted <= 1e-17 * s;
                if (stuck || iteration >= mostIterations)
                    break;
            }
        }

        return Polish(residuals, coordinates, y, theta, held, memory, s, readings, iteration, iteration >= mostIterations);
    }

    /// <summary>Weighted residuals and slopes at a point; the slopes of more than four parameters are taken in blocks of four.</summary>
    /// <returns>The weighted sum of squares; not a number when a value or slope is not finite.</returns>
    public static double Evaluate<TPrediction>(
        in TPrediction prediction,
        Coordinates coordinates,
        ReadOnlySpan<double> theta,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> rootWeight,
        Span<double> residual,
        Span<double> jacobian)
        where TPrediction : struct, IPrediction
    {
        const int width = Normal4.Width;
        Span<Slopes> seeds = stackalloc Slopes[coordinates.Count];
        double sum = 0, check = 0;
        for (var block = 0; block < seeds.Length; block += width)
        {
            for (var j = 0; j < seeds.Length; j++)
            {
                var natural = coordinates.ToNatural(j, theta[j]);
                seeds[j] = j / width == block / width
                    ? new Slopes(natural, Vector256<double>.Zero.WithElement(j - block, coordinates.Slope(j, theta[j])))
                    : natural;
            }

            for (var i = 0; i < y.Length; i++)
            {
                var root = rootWeight[i];
                var f = root == 0 ? 0 : prediction.At(i, seeds);
                for (var j = block; j < Math.Min(block + width, seeds.Length); j++)
                    check += jacobian[j * y.Length + i] = root * f[j - block];
                if (block > 0)
                    continue;
                residual[i] = root == 0 ? 0 : root * (y[i] - f.Value);
                sum += residual[i] * residual[i];
            }
        }

        return double.IsFinite(check) ? sum : double.NaN;
    }

    /// <summary>Orthogonal factors of the free columns at the present point; returns how many are free.</summary>
    public static int Factorise(Coordinates coordinates, ReadOnlySpan<double> theta, uint held, Workspace memory)
    {
        var n = memory.Rows;
        var free = 0;
        for (var j = 0; j < memory.Columns; j++)
        {
            var column = memory.Jacobian.AsSpan(j * n, n);
            memory.Scale[j] = Math.Max(Damping.Remembered * memory.Scale[j], SumOfSquares(column));
            var downhill = 0.0;
            for (var i = 0; i < n; i++)
                downhill += column[i] * memory.Residual[i];
            if ((held & (1u << j)) != 0 || coordinates.IsPinned(j, theta[j], downhill))
                continue;
            column.CopyTo(memory.Factor.AsSpan(free * n));
            memory.Free[free++] = j;
        }

        memory.Residual.CopyTo(memory.Rotated, 0);
        Householder.Factor(memory.Factor, n, free, memory.Heads);
        Householder.Turn(memory.Factor, memory.Heads, n, free, memory.Rotated);
        return free;
    }

    // Gauss–Newton without damping, as long as each step leaves a smaller gradient: the sum of squares itself is too flat to judge by.
    private static End Polish<TResiduals>(
        in TResiduals residuals,
        Coordinates coordinates,
        ReadOnlySpan<double> y,
        Span<double> theta,
        uint held,
        Workspace memory,
        double s,
        double readings,
        int iterations,
        bool limit)
        where TResiduals : struct, IResiduals
    {
        var largestStep = double.PositiveInfinity;
        var free = Factorise(coordinates, theta, held, memory);
        var left = SumOfSquares(memory.Rotated.AsSpan(0, free));
        for (var polish = 0; polish < MostPolishingSteps && !limit && left > 0; polish++)
        {
            if (!Householder.Back(memory.Factor, memory.Rows, free, memory.Rotated, memory.FreeStep))
                break;
            Advance(coordinates, theta, memory, free);
            var sTrial = residuals.Evaluate(memory.Trial, y, memory.RootWeight, memory.TrialResidual, memory.TrialJacobian);
            if (!double.IsFinite(sTrial) || sTrial > s * (1 + 1e-9) + Floor(readings))
                break;
            var before = left;
            memory.TakeTrial();
            free = Factorise(coordinates, memory.Trial, held, memory);
            left = SumOfSquares(memory.Rotated.AsSpan(0, free));
            if (!(left < 0.8 * before))
            {
                memory.TakeTrial();
                free = Factorise(coordinates, theta, held, memory);
                left = before;
                largestStep = Math.Min(largestStep, LargestStep(coordinates, theta, memory));
                break;
            }

            largestStep = LargestStep(coordinates, theta, memory);
            memory.Trial.CopyTo(theta);
            s = sTrial;
        }

        var dof = Math.Max(memory.Rows - free, 1);
        var scatter = Math.Sqrt(Math.Max(s - left, 0) / dof) + 1e-8 * Math.Sqrt(readings / memory.Rows);
        var offset = Math.Sqrt(left / Math.Max(free, 1)) / (scatter + double.Epsilon);
        var runaway = -1;
        for (var j = 0; j < memory.Columns; j++)
        {
            if ((held & (1u << j)) == 0 && coordinates.IsLogarithmic(j)
                && SumOfSquares(memory.Jacobian.AsSpan(j * memory.Rows, memory.Rows)) <= VanishedColumn * VanishedColumn * readings)
                runaway = j;
        }

        var reason = runaway >= 0 ? StopReason.Plateau
            : limit ? StopReason.IterationLimit
            : offset > 1e-3 ? StopReason.IterationLimit
            : free < memory.Columns - System.Numerics.BitOperations.PopCount(held) ? StopReason.OnBound
            : offset < OffsetTolerance && largestStep <= StepTolerance ? StopReason.Converged
            : offset < OffsetTolerance ? StopReason.StalledByRounding
            : StopReason.IterationLimit;
        return new(reason, s, offset, iterations, runaway);
    }

    // Least squares of [R; √μ D] d = [Q′r; 0].
    private static void SolveDamped(Workspace memory, int free, double mu)
    {
        var rows = 2 * free;
        var damped = memory.Damped.AsSpan(0, rows * free);
        var right = memory.DampedRight.AsSpan(0, rows);
        damped.Clear();
        right.Clear();
        memory.Rotated.AsSpan(0, free).CopyTo(right);
        for (var k = 0; k < free; k++)
        {
            memory.Factor.AsSpan(k * memory.Rows, k + 1).CopyTo(damped[(k * rows)..]);
            damped[k * rows + free + k] = Math.Sqrt(mu * memory.Scale[memory.Free[k]]);
        }

        Householder.Factor(damped, rows, free, memory.Heads);
        Householder.Turn(damped, memory.Heads, rows, free, right);
        if (!Householder.Back(damped, rows, free, right, memory.FreeStep))
            memory.FreeStep.AsSpan().Clear();
    }

    // Caps and clips the step into the trial point; returns the drop that the straightened problem promises for it.
    private static double Advance(Coordinates coordinates, ReadOnlySpan<double> theta, Workspace memory, int free)
    {
        var shrink = 1.0;
        for (var k = 0; k < free; k++)
            shrink = Math.Min(shrink, coordinates.LongestStep(memory.Free[k]) / Math.Max(Math.Abs(memory.FreeStep[k]), double.Epsilon));
        theta.CopyTo(memory.Trial);
        memory.Step.AsSpan().Clear();
        for (var k = 0; k < free; k++)
        {
            var j = memory.Free[k];
            memory.Trial[j] = coordinates.Clip(j, theta[j] + shrink * memory.FreeStep[k]);
            memory.FreeStep[k] = memory.Step[j] = memory.Trial[j] - theta[j];
        }

        var predicted = 0.0;
        for (var i = 0; i < free; i++)
        {
            var moved = 0.0;
            for (var k = i; k < free; k++)
                moved += memory.Factor[k * memory.Rows + i] * memory.FreeStep[k];
            predicted += moved * (2 * memory.Rotated[i] - moved);
        }

        return predicted;
    }

    private static double LargestStep(Coordinates coordinates, ReadOnlySpan<double> theta, Workspace memory)
    {
        var largest = 0.0;
        for (var j = 0; j < memory.Columns; j++)
            largest = Math.Max(largest, Math.Abs(memory.Step[j]) / coordinates.Size(j, theta[j]));
        return largest;
    }

    // A sum of squares below this is rounding of the readings themselves: the data are exact.
    private static double Floor(double readings) => 1e-28 * readings;

    private static double SumOfSquares(ReadOnlySpan<double> v)
    {
        var sum = 0.0;
        foreach (var x in v)
            sum += x * x;
        return sum;
    }
}
