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
    private const double LongestStride = 4;
    private const double Suspicious = 1.5;
    private const double LargestLogarithm = 300;

    private readonly double[] at = new double[theta.Length];
    private readonly double[] second = new double[theta.Length];
    private readonly double[] inside = new double[theta.Length];
    private readonly double[] outside = new double[theta.Length];
    private readonly double[] rate = new double[theta.Length];
    private readonly double[] downhill = new double[theta.Length];

    /// <summary>A point with a lower sum of squares than the fit, when the walk came across one; else null.</summary>
    public double[]? Better { get; private set; }

    /// <summary>Both limits of one parameter.</summary>
    /// <param name="j">Which parameter.</param>
    /// <param name="quantile">The quantile of t.</param>
    /// <param name="confidence">The confidence it stands for.</param>
    public ProfileInterval Of(int j, double quantile, double confidence)
        => new(confidence, Limit(j, -1, quantile), Limit(j, 1, quantile));

    // Walks outwards by Newton steps on τ that may not be too long, then closes in between the last point inside and the first outside.
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
        var stride = coordinates.IsLogarithmic(j) ? LongestStride : double.PositiveInfinity;
        var farthest = coordinates.IsLogarithmic(j) ? LongestWalk : 1e6 * (se * quantile + Math.Abs(theta[j]));
        double distance = 0, tau = 0, slope = 1 / se, longest = Math.Min(0.5 * quantile * se, stride);
        double near = 0, nearTau = 0, far = double.PositiveInfinity;
        theta.CopyTo(inside, 0);
        for (var k = 0; k < rate.Length; k++)
            rate[k] = covariance[j, j] > 0 ? side * covariance[k, j] / covariance[j, j] : 0;
        for (var refit = 0; refit < MostRefits; refit++)
        {
            var next = distance + (quantile - tau) / slope;
            if (double.IsFinite(far))
                next = next > near && next < far ? next : near + (far - near) / 2;
            else if (!(next > near && next < near + longest))
                next = near + longest;
            next = Math.Min(next, farthest);
            var atBound = side * (theta[j] + side * next - bound) >= 0;
            if (atBound)
                next = Math.Abs(bound - theta[j]);
            var s = Minimise(j, theta[j] + side * next, next - near, (next - near) / (far - near), quantile);
            if (!double.IsFinite(s))
            {
                farthest = near + (next - near) / 2;
                (distance, tau, slope) = (near, nearTau, 0);
                if (farthest - near < longest * 1e-3)
                    return new(null, LimitKind.Open, nearTau);
                continue;
            }

            if (s < sMin * (1 - 1e-9))
                Better ??= [.. at];
            (distance, tau) = (next, Tau(s));
            slope = tau > 0 ? -side * downhill[j] / (tau * variance) : 1 / se;
            if (Math.Abs(tau - quantile) <= 1e-10 * quantile || (double.IsFinite(far) && far - near <= 1e-14 * (1 + far)))
            {
                var last = slope > 0 ? Math.Clamp((quantile - tau) / slope, -1e-8 * next, 1e-8 * next) : 0;
                return new(coordinates.ToNatural(j, theta[j] + side * (next + last)), LimitKind.Closed, tau);
            }

            if (tau > quantile)
            {
                far = next;
                at.CopyTo(outside, 0);
                continue;
            }

            if (atBound)
                return new(coordinates.ToNatural(j, bound), LimitKind.Bound, tau);
            var levelled = tau - nearTau <= 1e-10 * tau && next - near >= 0.1 * farthest;
            if (next >= farthest || levelled || IsBeyondNumbers())
                return new(null, LimitKind.Open, tau);
            longest = Math.Min(1.5 * Math.Max(longest, next - near), stride);
            for (var k = 0; k < rate.Length; k++)
                rate[k] = (at[k] - inside[k]) / (next - near);
            at.CopyTo(inside, 0);
            (near, nearTau) = (next, tau);
        }

        return new(null, LimitKind.Open, nearTau);
    }

    // Another parameter has followed to where doubles end: what rises from there on is overflow and not the sum of squares.
    private bool IsBeyondNumbers()
    {
        for (var k = 0; k < at.Length; k++)
        {
            if (problem.Coordinates.IsLogarithmic(k) && Math.Abs(at[k]) > LargestLogarithm)
                return true;
        }

        return false;
    }

    // The least sum of squares with parameter j at a place. The others start along the path so far, or between its two ends; where that ends
    // suspiciously high they start once more from the last good point itself.
    private double Minimise(int j, double place, double step, double share, double quantile)
    {
        for (var k = 0; k < at.Length; k++)
        {
            var move = share > 0 ? share * (outside[k] - inside[k]) : Math.Clamp(rate[k] * step, -LongestStride, LongestStride);
            at[k] = problem.Coordinates.Clip(k, k == j ? place : inside[k] + move);
        }

        var s = problem.Refit(y, w, at, 1u << j, Damping.Warm, downhill, []).S;
        if (Tau(s) <= Suspicious * quantile)
            return s;
        inside.CopyTo(second, 0);
        second[j] = problem.Coordinates.Clip(j, place);
        Span<double> slopes = stackalloc double[at.Length];
        var again = problem.Refit(y, w, second, 1u << j, Damping.Cold, slopes, []).S;
        if (!(again < s) && double.IsFinite(s))
            return s;
        second.CopyTo(at, 0);
        slopes.CopyTo(downhill);
        return again;
    }

    private double Tau(double s) => Math.Sqrt(Math.Max(s - sMin, 0) / variance);
}
