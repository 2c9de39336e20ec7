using Holdfast.Fitting.Solving;
namespace Holdfast.Fitting;

/// <summary>
/// What a fit found: parameters with intervals, how it ended, and everything needed to judge it. A result that is no fit says why and
/// holds no parameters, or holds them marked (on a bound, not settled).
/// </summary>
public sealed partial class FitResult
{
    internal FitResult(ModelCard card, Points points, StopReason stop)
    {
        (Card, Points, Stop) = (card, points, stop);
        N = points.Count;
        P = card.Parameters.Count;
    }

    /// <summary>The curve's card.</summary>
    public ModelCard Card { get; }

    /// <summary>What was fitted.</summary>
    public Points Points { get; }

    /// <summary>How the fit ended.</summary>
    public StopReason Stop { get; }

    /// <summary>True when this is a fit: it converged, or stalled by rounding at the minimum.</summary>
    public bool IsFit => Stop is StopReason.Converged or StopReason.StalledByRounding;

    /// <summary>The parameters in the card's order; empty when the data were refused, ran to a plateau or determine a combination only.</summary>
    public IReadOnlyList<FittedParameter> Parameters { get; internal init; } = [];

    /// <summary>A parameter by its symbol.</summary>
    /// <param name="symbol">As on the card.</param>
    /// <exception cref="ArgumentException">The curve has no such parameter, or the result has none at all.</exception>
    public FittedParameter this[string symbol]
        => Parameters.FirstOrDefault(p => string.Equals(p.Symbol, symbol, StringComparison.Ordinal))
            ?? throw new ArgumentException($"{Card.Name} has no fitted '{symbol}' here ({Stop}).", nameof(symbol));

    /// <summary>Values of the parameters in the card's order.</summary>
    public IReadOnlyList<double> Values => [.. Parameters.Select(p => p.Value)];

    /// <summary>Caveats and refusals, in the order in which a reader should meet them.</summary>
    public IReadOnlyList<Finding> Findings { get; internal init; } = [];

    /// <summary>Number of points.</summary>
    public int N { get; internal init; }

    /// <summary>Number of parameters of the curve.</summary>
    public int P { get; }

    /// <summary>Degrees of freedom, n − p.</summary>
    public int Nu => N - P;

    /// <summary>True when every point lies on the curve to its last digit: computed points, which have no uncertainty and need no criterion.</summary>
    public bool IsExact { get; internal init; }

    /// <summary>Weighted sum of squared residuals; χ² when the uncertainties are known.</summary>
    public double SumOfSquares { get; internal init; } = double.PositiveInfinity;

    /// <summary>
    /// Residual standard deviation √(S/ν): in the unit of y without weights, and for a series with its error model, where S counts the plain residuals;
    /// null when ν = 0 or there are no parameters.
    /// </summary>
    public double? ResidualSd
        => Parameters.Count == 0 || Nu <= 0 ? null : Math.Sqrt((Series is null ? SumOfSquares : Residuals.Where(double.IsFinite).Sum(r => r * r)) / Nu);

    /// <summary>The error model of the series that was fitted; null for points with weights of their own.</summary>
    public SeriesErrors? Errors => Series?.Errors;

    /// <summary>Where the scale of the uncertainties comes from.</summary>
    public ScatterModel Scatter { get; internal init; }

    /// <summary>Quantile by which standard errors are multiplied: of t with ν, or normal when the uncertainties are known; null when ν = 0.</summary>
    public double? Quantile { get; internal init; }

    /// <summary>Confidence of the intervals.</summary>
    public double Confidence { get; internal init; }

    /// <summary>Covariance of the parameters in their natural units, zero for a parameter on a bound; null when ν = 0.</summary>
    public double[,]? Covariance { get; internal init; }

    /// <summary>AIC, AICc and BIC; null when nothing is left over to judge by.</summary>
    public Criteria? Criteria { get; internal init; }

    /// <summary>AICc; null when it is not defined at this n: not comparable.</summary>
    public double? Aicc => Criteria?.Aicc;

    /// <summary>Weights used, as they stood at the end; 0 for a point left out.</summary>
    public IReadOnlyList<double> Weights { get; internal init; } = [];

    /// <summary>Fitted readings, in the unit of y.</summary>
    public IReadOnlyList<double> Fitted { get; internal init; } = [];

    /// <summary>Reading less fitted, in the unit of y.</summary>
    public IReadOnlyList<double> Residuals { get; internal init; } = [];

    /// <summary>Leverage of each point, 0 to 1; their sum is p.</summary>
    public IReadOnlyList<double> Leverages { get; internal init; } = [];

    /// <summary>Residuals over their own standard deviation, r √w / (s √(1 − h)); empty when ν = 0.</summary>
    public IReadOnlyList<double> StandardisedResiduals { get; internal init; } = [];

    /// <summary>Lack of fit against replicates, or null without them.</summary>
    public LackOfFit? LackOfFit { get; internal init; }

    /// <summary>Whether the parameters can be told apart.</summary>
    public Identifiability? Identifiability { get; internal init; }

    /// <summary>Other local minima, lowest first.</summary>
    public IReadOnlyList<Minimum> OtherMinima { get; internal init; } = [];

    /// <summary>1 − S/Σw(y − ȳ)². Descriptive only: it tests no curve and never penalises a parameter. Null without parameters or spread.</summary>
    public double? DescriptiveRSquared
    {
        get
        {
            if (Parameters.Count == 0)
                return null;
            var mean = Points.Y.Select((y, i) => Weights[i] * y).Sum() / Weights.Sum();
            var total = Points.Y.Select((y, i) => Weights[i] * (y - mean) * (y - mean)).Sum();
            return total > 0 ? 1 - SumOfSquares / total : null;
        }
    }

    /// <summary>The curve; null for a prediction of one's own.</summary>
    public Model? Model { get; internal init; }

    internal SeriesStatistics? Series { get; init; }

    /// <summary>Residuals turned and scaled until they are independent and of one variance.</summary>
    internal IReadOnlyList<double> IndependentResiduals { get; init; } = [];

    /// <summary>What was fitted: y of the points, or the concentrations left of an isotherm's vessels.</summary>
    internal double[] Response { get; init; } = [];

    /// <summary>What the fit predicts of it.</summary>
    internal double[] Predicted { get; init; } = [];

    internal IProblem? Problem { get; init; }

    internal double[] Theta { get; init; } = [];

    /// <summary>Correlation of two parameters; null when ν = 0 or one is on a bound.</summary>
    /// <param name="i">First parameter, from 0.</param>
    /// <param name="j">Second parameter, from 0.</param>
    public double? Correlation(int i, int j)
    {
        if (Covariance is null)
            return null;
        var scale = Math.Sqrt(Covariance[i, i] * Covariance[j, j]);
        return scale > 0 ? Covariance[i, j] / scale : null;
    }

    /// <summary>√w ∂f/∂b in natural parameters, one row for each point, at the fit or at other parameters.</summary>
    internal double[,] WeightedSlopes(IReadOnlyList<double>? natural = null)
    {
        var memory = new Workspace(Points.Count, P);
        for (var i = 0; i < memory.Rows; i++)
            memory.RootWeight[i] = Math.Sqrt(Weights[i]);
        var theta = natural is null ? Theta : [.. natural.Select((b, j) => Problem!.Coordinates.ToTheta(j, b))];
        Problem!.Evaluate(Response, theta, memory);
        var slopes = new double[memory.Rows, P];
        for (var j = 0; j < P; j++)
        {
            for (var i = 0; i < memory.Rows; i++)
                slopes[i, j] = memory.Jacobian[j * memory.Rows + i] / Problem.Coordinates.Slope(j, theta[j]);
        }

        return slopes;
    }

    internal static FitResult None(ModelCard card, Points points, IReadOnlyList<Finding> findings, StopReason stop = StopReason.Refused)
        => new(card, points, stop) { Findings = findings };
}

/// <summary>Where the scale of the uncertainties comes from.</summary>
public enum ScatterModel
{
    /// <summary>From the residuals: s² = S/ν.</summary>
    Estimated,

    /// <summary>From the stated uncertainties, which the scatter does not contradict.</summary>
    Known,

    /// <summary>From what is stated of every vessel, shared parts shared, and the scatter between vessels on top of it.</summary>
    ByVessel,

    /// <summary>The scatter is larger than the stated uncertainties allow: they are scaled up to it, and a finding says so.</summary>
    KnownButExceeded,
}
