namespace Holdfast.Fitting.Solving;

/// <summary>
/// Profile-likelihood limits: τ(b)² = (S(b) − S_min)/s², with S(b) minimised over the other parameters; the limits are where |τ| is the
/// quantile of t. They do not depend on how the parameter is written.
/// </summary>
/// <remarks>
/// D. M. Bates and D. G. Watts 1988, chapter 6; D. J. Venzon and S. H. Moolgavkar, Appl. Statist. 37 (1988) 87 (from memory). The slope
/// of τ needs no difference: with the others at their optimum dS/dθ = −2 J′Wr, so Newton's method finds each limit in a few refits.
/// </remarks>
/// <param name="problem">What is fitted.</param>
/// <param name="y">Readings.</param>
/// <param name="w">Weights.</param>
/// <param name="theta">The fit, in the solver's coordinates.</param>
/// <param name="covariance">(J′WJ)⁻¹ by θ, with zero rows for parameters on a bound.</param>
/// <param name="sMin">Sum of squares of the fit.</param>
/// <param name="variance">s², or 1 where the uncertainties are known.</param>
internal sealed class Profile(IProblem problem, double[] y, double[] w, double[] theta, double[,] covariance, double sMin, double variance)
{
    private const int MostRefits = 150;
    private const double LongestWalk = 34;

    private readonly double[] at = new double[theta.Length];
    private readonly double[] before = new double[theta.Length];
    private readonly double[] downhill = new double[theta.Length];

    /// <summary>A point with a lower sum of squares than the fit, when the walk came across one; else null.</summary>
    public double[]? Better { get; private set; }

    /// <summary>Both limits of one parameter.</summary>
    /// <param name="j">Which parameter.</param>
    /// <param name="quantile">The quantile of t.</param>
    /// <param name="confidence">The confidence it stands for.</param>
    public ProfileInterval Of(int j, double quantile, double confidence)
        => new(confidence, Limit(j, -1, quantile), Limit(j, 1, quantile));

    // Walks outwards by Newton steps on τ that may not be too long, then closes in between the last two points.
    private ProfileLimit Limit(int j, int side, double quantile)
    {
        var coordinates = problem.Coordinates;
        var bound = side < 0 ? coordinates.Lower[j] : coordinates.Upper[j];
        if (theta[j] == bound)
            return new(coordinates.ToNatural(j, bound), LimitKind.Bound, 0);

        var se = Math.Sqrt(covariance[j, j] * variance);
        if (!(se > 0) || !double.IsFinite(se))
            se = 0.1 * coordinates.Size(j, theta[j]);

        // In a logarithm the walk may go 34 (fifteen powers of ten) away; otherwise a million standard errors or sizes.
        var farthest = coordinates.IsLogarithmic(j) ? LongestWalk : 1e6 * (se * quantile + Math.Abs(theta[j]));
        double distance = 0, tau = 0, slope = 1 / se, longest = 0.5 * quantile * se;
        double inside = 0, insideTau = 0, outside = double.PositiveInfinity, previous = 0;
        theta.CopyTo(at, 0);
        theta.CopyTo(before, 0);
        for (var refit = 0; refit < MostRefits; refit++)
        {
            var next = distance + (quantile - tau) / slope;
            if (double.IsFinite(outside))
                next = next > inside && next < outside ? next : inside + (outside - inside) / 2;
            else if (!(next > distance && next < distance + longest))
                next = distance + longest;
            next = Math.Min(next, farthest);
            var atBound = side * (theta[j] + side * next - bound) >= 0;
            if (atBound)
                next = Math.Abs(bound - theta[j]);
            Follow(j, side, previous, distance, next);
            var end = problem.Refit(y, w, at, 1u << j, Damping.Warm, downhill, []);
            if (!double.IsFinite(end.S))
            {
                farthest = inside + (next - inside) / 2;
                before.CopyTo(at, 0);
                (distance, tau, slope) = (inside, insideTau, 0);
                if (farthest - inside < longest * 1e-3)
                    return new(null, LimitKind.Open, insideTau);
                continue;
            }

            if (end.S < sMin * (1 - 1e-9))
                Better ??= [.. at];
            (previous, distance) = (distance, next);
            tau = Math.Sqrt(Math.Max(end.S - sMin, 0) / variance);
            slope = tau > 0 ? -side * downhill[j] / (tau * variance) : 1 / se;
            if (Math.Abs(tau - quantile) <= 1e-10 * quantile || (double.IsFinite(outside) && outside - inside <= 1e-14 * (1 + outside)))
            {
                var last = slope > 0 ? Math.Clamp((quantile - tau) / slope, -1e-8 * next, 1e-8 * next) : 0;
                return new(coordinates.ToNatural(j, theta[j] + side * (next + last)), LimitKind.Closed, tau);
            }

            if (tau > quantile)
            {
                outside = next;
                continue;
            }

            if (atBound)
                return new(coordinates.ToNatural(j, bound), LimitKind.Bound, tau);
            var levelled = tau - insideTau <= 1e-10 * tau && next - inside >= 0.1 * farthest;
            if (next >= farthest || levelled)
                return new(null, LimitKind.Open, tau);
            longest = 1.5 * Math.Max(longest, next - inside);
            (inside, insideTau) = (next, tau);
        }

        return new(null, LimitKind.Open, insideTau);
    }

    // The other parameters follow along the line through the last two points; at first along the covariance.
    private void Follow(int j, int side, double previous, double distance, double next)
    {
        var coordinates = problem.Coordinates;
        for (var k = 0; k < at.Length; k++)
        {
            var present = at[k];
            var rate = distance == previous ? side * covariance[k, j] / covariance[j, j] : (present - before[k]) / (distance - previous);
            before[k] = present;
            if (k == j)
                at[k] = coordinates.Clip(k, theta[j] + side * next);
            else if (double.IsFinite(rate))
                at[k] = coordinates.Clip(k, present + Math.Clamp(rate * (next - distance), -LongestWalk / 8, LongestWalk / 8));
        }
    }
}
