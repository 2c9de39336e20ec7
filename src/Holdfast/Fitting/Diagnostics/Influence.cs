using Holdfast.Fitting.Solving;

namespace Holdfast.Fitting.Diagnostics;

/// <summary>What each point does to the fit, found by leaving it out and fitting again. The shortcuts by leverage understate a point that sets the curve.</summary>
/// <remarks>R. D. Cook, Technometrics 19 (1977) 15; D. M. Allen, Technometrics 16 (1974) 125 (from memory).</remarks>
/// <param name="Points">One entry for each point, in the order of the data.</param>
/// <param name="Press">Sum of squared weighted deletion residuals: honest error of prediction, on the scale of the sum of squares.</param>
/// <param name="TangentPress">The same by leverage alone.</param>
/// <param name="Findings">Points that decide the fit by themselves.</param>
public sealed record Influence(IReadOnlyList<PointInfluence> Points, double Press, double TangentPress, IReadOnlyList<Finding> Findings)
{
    private const double Decides = 1;
    private const int MostIterations = 500;

    /// <summary>The influence of each point; null when there is no fit, or no point to spare.</summary>
    /// <param name="fit">The fit.</param>
    public static Influence? Of(FitResult fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (!fit.IsFit || fit.Nu < 1 || fit.Covariance is null)
            return null;
        var (problem, y) = (fit.Problem!, fit.Response);
        var slopes = fit.WeightedSlopes();
        var variance = fit.SumOfSquares / fit.Nu;
        var points = new List<PointInfluence>();
        double press = 0, tangent = 0;
        double[] weights = [.. fit.Weights], theta = new double[fit.P], predicted = new double[y.Length];
        var memory = new Workspace(y.Length, fit.P);
        for (var i = 0; i < y.Length; i++)
        {
            weights[i] = 0;
            fit.Theta.CopyTo(theta, 0);
            var end = problem.Fit(y, weights, theta, 0, MostIterations, memory);
            weights[i] = fit.Weights[i];
            problem.Predict(theta, predicted);
            var without = Enumerable.Range(0, fit.P).Select(j => problem.Coordinates.ToNatural(j, theta[j])).ToArray();
            var (h, deletion) = (fit.Leverages[i], y[i] - predicted[i]);
            var shortcut = (y[i] - fit.Predicted[i]) / (1 - h);
            press += weights[i] * deletion * deletion;
            tangent += weights[i] * shortcut * shortcut;
            points.Add(new(
                fit.Points.Ids[i], h, deletion, Cook(slopes, without, fit.Values, variance),
                weights[i] * shortcut * shortcut * h / (fit.P * variance), without, end.Stop is StopReason.Converged or StopReason.StalledByRounding));
        }

        return new(points, press, tangent, [.. points.SelectMany(p => Speak(p, fit))]);
    }

    // (b − b₍ᵢ₎)′ J′WJ (b − b₍ᵢ₎) / (p s²)
    private static double Cook(double[,] slopes, double[] without, IReadOnlyList<double> with, double variance)
    {
        var sum = 0.0;
        for (var i = 0; i < slopes.GetLength(0); i++)
        {
            var moved = 0.0;
            for (var j = 0; j < without.Length; j++)
                moved += slopes[i, j] * (without[j] - with[j]);
            sum += moved * moved;
        }

        return sum / (without.Length * variance);
    }

    private static IEnumerable<Finding> Speak(PointInfluence point, FitResult fit)
    {
        if (!point.Settled)
        {
            yield return Finding.Of("HF-419", Weight.Caution,
                $"Without {point.Id} the fit of {fit.Card.Name} does not settle: it rests on that point. Measure its neighbours.", point.Id);
        }
        else if (point.Cook > Decides)
        {
            var moved = string.Join(", ", fit.Parameters.Select((p, j) => FormattableString.Invariant($"{p.Symbol} {p.Value:G4} to {point.Without[j]:G4}")));
            yield return Finding.Of("HF-419", Weight.Caution,
                FormattableString.Invariant($"{point.Id} decides the fit of {fit.Card.Name} (Cook {point.Cook:0.0}). Without it: {moved}."), point.Id);
        }
    }
}

/// <summary>What one point does to the fit.</summary>
/// <param name="Id">Id of the point.</param>
/// <param name="Leverage">0 to 1; 1 means the curve passes through it whatever it reads.</param>
/// <param name="DeletionResidual">Reading less the curve fitted without it, in the unit of what was fitted.</param>
/// <param name="Cook">Cook's distance by a real refit; above 1 the point decides.</param>
/// <param name="TangentCook">Cook's distance by the leverage shortcut.</param>
/// <param name="Without">Parameters without the point, in the card's order.</param>
/// <param name="Settled">False when the fit without the point did not settle.</param>
public sealed record PointInfluence(
    string Id, double Leverage, double DeletionResidual, double Cook, double TangentCook, IReadOnlyList<double> Without, bool Settled);
