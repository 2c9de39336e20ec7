using Holdfast.Fitting.Solving;

namespace Holdfast.Fitting.Diagnostics;

/// <summary>
/// The same curve fitted so that one wild flask counts little. With eight points the scale itself is shaky: this is an alarm, not a result.
/// Where it differs from the plain fit by more than a standard error, show both.
/// </summary>
/// <remarks>P. J. Huber, Ann. Math. Stat. 35 (1964) 73; P. J. Rousseeuw and A. M. Leroy 1987 (from memory). Reweighted least squares with
/// weight ψ(u)/u, u = r/scale, scale = median |r|/0.6745, refreshed each round.</remarks>
/// <param name="Values">Robust parameters, in the card's order.</param>
/// <param name="PointWeights">Weight left to each point, 0 to 1.</param>
/// <param name="Scale">Robust scale of the weighted residuals.</param>
/// <param name="Settled">False when the rounds did not settle.</param>
/// <param name="Findings">The alarm, when it differs.</param>
public sealed record RobustFit(
    IReadOnlyList<double> Values, IReadOnlyList<double> PointWeights, double Scale, bool Settled, IReadOnlyList<Finding> Findings)
{
    /// <summary>Huber's threshold for 95 % efficiency at the normal distribution, in scales.</summary>
    public const double HuberThreshold = 1.345;

    /// <summary>The bisquare's threshold for 95 % efficiency, in scales.</summary>
    public const double BisquareThreshold = 4.685;

    private const int MostRounds = 1000;

    /// <summary>The robust fit beside a plain one; null when there is no fit to start from.</summary>
    /// <param name="fit">The plain fit.</param>
    /// <param name="loss">How a wild point is treated.</param>
    /// <param name="threshold">Threshold in scales; null for the usual one.</param>
    /// <param name="fixedScale">Scale of the weighted residuals when it is known; null to take it from their median.</param>
    public static RobustFit? Of(FitResult fit, RobustLoss loss = RobustLoss.Huber, double? threshold = null, double? fixedScale = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (!fit.IsFit || fit.Nu < 1)
            return null;
        var cut = threshold ?? (loss == RobustLoss.Huber ? HuberThreshold : BisquareThreshold);
        var (problem, y, n) = (fit.Problem!, fit.Points.YValues, fit.Points.Count);
        double[] theta = [.. fit.Theta], before = new double[fit.P], downhill = new double[fit.P];
        double[] predicted = [.. fit.Fitted], weights = new double[n], share = new double[n];
        double[] root = [.. fit.Weights.Select(Math.Sqrt)];
        double scale = 0;
        var settled = false;
        for (var round = 0; round < MostRounds && !settled; round++)
        {
            scale = fixedScale ?? Median(y.Select((v, i) => Math.Abs(v - predicted[i]) * root[i])) / 0.6745;
            for (var i = 0; i < n; i++)
            {
                share[i] = scale > 0 ? Share((y[i] - predicted[i]) * root[i] / scale, cut, loss) : 1;
                weights[i] = fit.Weights[i] * share[i];
            }

            theta.CopyTo(before, 0);
            problem.Refit(y, weights, theta, 0, Damping.Warm, downhill, []);
            problem.Predict(theta, predicted);
            settled = Enumerable.Range(0, fit.P).All(j => Math.Abs(theta[j] - before[j]) <= 1e-12 * problem.Coordinates.Size(j, theta[j]));
        }

        double[] values = [.. theta.Select((t, j) => problem.Coordinates.ToNatural(j, t))];
        return new(values, share, scale, settled, [.. Alarm(fit, values, share, scale)]);
    }

    // A wild point inflates the plain standard error by as much as it moves the fit, so the robust scale is the yardstick where it is smaller.
    private static IEnumerable<Finding> Alarm(FitResult fit, double[] values, double[] share, double scale)
    {
        var yardstick = Math.Min(1, scale / (fit.ResidualSd ?? scale));
        var moved = fit.Parameters.Where((p, j) => p.StandardError is { } se && Math.Abs(values[j] - p.Value) > yardstick * se).ToArray();
        if (moved.Length == 0)
            yield break;
        var least = Array.IndexOf(share, share.Min());
        yield return Finding.Of("HF-426", Weight.Caution, FormattableString.Invariant(
            $"A fit that trusts {fit.Points.Ids[least]} less moves {string.Join(", ", moved.Select(p => p.Symbol))} by more than a standard error. Check that vessel; show both."),
            fit.Points.Ids[least]);
    }

    private static double Share(double u, double cut, RobustLoss loss)
    {
        var size = Math.Abs(u);
        if (loss == RobustLoss.Huber)
            return size <= cut ? 1 : cut / size;
        var inside = 1 - size / cut * (size / cut);
        return size >= cut ? 0 : inside * inside;
    }

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}

/// <summary>How a robust fit treats a wild point.</summary>
public enum RobustLoss
{
    /// <summary>Huber: a residual beyond 1.345 scales counts linearly.</summary>
    Huber,

    /// <summary>Tukey's bisquare: a residual beyond 4.685 scales does not count. It may have several solutions.</summary>
    Bisquare,
}
