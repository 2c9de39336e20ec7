using System.Globalization;

namespace Holdfast.Statistics;

/// <summary>
/// Least squares with a straight line or a parabola, weighted or not, through the origin or not. The fit is held as independent
/// components: for a line, its height at the mean of x and its slope. That keeps all digits and tells what is shared by
/// everything read on the line.
/// </summary>
/// <remarks>
/// Orthogonal polynomials by three-term recurrence (G. E. Forsythe, J. Soc. Ind. Appl. Math. 5 (1957) 74–88; from memory).
/// Weights are scaled to mean 1, so <see cref="ResidualSd"/> is the sd of a reading of unit weight.
/// </remarks>
public sealed class PolynomialFit
{
    private readonly double[] shift;
    private readonly double[] carry;
    private readonly bool throughOrigin;

    private PolynomialFit(IReadOnlyList<double> x, IReadOnlyList<double> y, double[] weights, int degree, bool throughOrigin)
    {
        this.throughOrigin = throughOrigin;
        X = x;
        Y = y;
        Weights = weights;
        Degree = degree;
        var terms = throughOrigin ? degree : degree + 1;
        shift = new double[terms];
        carry = new double[terms];
        Components = new Component[terms];
        DegreesOfFreedom = x.Count - terms;
        Residuals = [.. y];
        Decompose();
        SumOfSquares = Enumerable.Range(0, x.Count).Sum(i => weights[i] * Residuals[i] * Residuals[i]);
        ResidualSd = DegreesOfFreedom > 0 ? Math.Sqrt(SumOfSquares / DegreesOfFreedom) : 0;
    }

    /// <summary>The x values, in their unit.</summary>
    public IReadOnlyList<double> X { get; }

    /// <summary>The readings, in their unit.</summary>
    public IReadOnlyList<double> Y { get; }

    /// <summary>Weights scaled to mean 1; no unit.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <summary>1 for a line, 2 for a parabola.</summary>
    public int Degree { get; }

    /// <summary>Readings less parameters.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Standard deviation of a reading of unit weight about the fit, in the unit of y; 0 without degrees of freedom.</summary>
    public double ResidualSd { get; }

    /// <summary>Weighted sum of squared residuals, in the unit of y squared.</summary>
    public double SumOfSquares { get; }

    /// <summary>Reading less fit, in the order given, in the unit of y.</summary>
    public double[] Residuals { get; }

    /// <summary>Independent components: coefficient and squared length of each orthogonal polynomial.</summary>
    public Component[] Components { get; }

    /// <summary>Standard uncertainty of an independent component, in unit of y per unit of x to its power.</summary>
    /// <param name="component">Index of the component.</param>
    public double UncertaintyOf(int component) => ResidualSd / Math.Sqrt(Components[component].SquaredLength);

    /// <summary>Weighted mean of the levels, about which a line's height and slope are independent; 0 for a fit through the origin.</summary>
    public double Centre => throughOrigin ? 0 : shift[1];

    /// <summary>True when the fit was forced through the origin.</summary>
    public bool ThroughOrigin => throughOrigin;

    /// <summary>Fits a polynomial.</summary>
    /// <param name="x">Levels, in their unit.</param>
    /// <param name="y">Readings, as many, in their unit.</param>
    /// <param name="degree">1 for a line, 2 for a parabola.</param>
    /// <param name="weights">1/variance of each reading up to a common factor, or null for equal weights; any unit.</param>
    /// <param name="throughOrigin">Forces y = 0 at x = 0.</param>
    /// <exception cref="ArgumentException">Too few different levels, unequal lengths, a weight that is not above 0.</exception>
    public static PolynomialFit Of(
        IReadOnlyList<double> x, IReadOnlyList<double> y, int degree = 1, IReadOnlyList<double>? weights = null, bool throughOrigin = false)
    {
        Values.Require(x);
        Values.Require(y);
        ArgumentOutOfRangeException.ThrowIfLessThan(degree, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(degree, 2);
        if (y.Count != x.Count || (weights is not null && weights.Count != x.Count))
            throw new ArgumentException("x, y and weights must be equally long.", nameof(y));
        if (weights is not null && weights.Any(w => !(w > 0 && double.IsFinite(w))))
            throw new ArgumentException("Every weight must be above 0 and finite.", nameof(weights));
        var terms = throughOrigin ? degree : degree + 1;
        var levels = throughOrigin ? x.Where(v => v != 0).Distinct().Count() : x.Distinct().Count();
        if (levels < terms)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"There are {levels} different levels for {terms} parameters."), nameof(x));
        var mean = weights?.Average() ?? 1;
        return new(x, y, weights is null ? [.. x.Select(_ => 1.0)] : [.. weights.Select(w => w / mean)], degree, throughOrigin);
    }

    /// <summary>The fitted reading at a level, in the unit of y.</summary>
    /// <param name="x">Level, in its unit.</param>
    public double At(double x)
    {
        var basis = Basis(x);
        return Components.Select((c, k) => c.Coefficient * basis[k]).Sum();
    }

    /// <summary>The slope at a level, in unit of y per unit of x.</summary>
    /// <param name="x">Level, in its unit.</param>
    public double SlopeAt(double x)
    {
        var c = Coefficients;
        return c[1] + (Degree > 1 ? 2 * c[2] * x : 0);
    }

    /// <summary>Standard uncertainty of the fitted line at a level, in the unit of y.</summary>
    /// <param name="x">Level, in its unit.</param>
    public double UncertaintyAt(double x)
    {
        var basis = Basis(x);
        return ResidualSd * Math.Sqrt(Components.Select((c, k) => basis[k] * basis[k] / c.SquaredLength).Sum());
    }

    /// <summary>Value of every orthogonal polynomial at a level.</summary>
    /// <param name="x">Level, in its unit.</param>
    public double[] Basis(double x)
    {
        var basis = new double[shift.Length];
        basis[0] = throughOrigin ? x : 1;
        for (var k = 1; k < basis.Length; k++)
            basis[k] = (x - shift[k]) * basis[k - 1] - (k > 1 ? carry[k] * basis[k - 2] : 0);
        return basis;
    }

    /// <summary>c₀, c₁, c₂ of y = c₀ + c₁x + c₂x², as many as the degree needs.</summary>
    public double[] Coefficients => Combine(k => Components[k].Coefficient);

    /// <summary>A coefficient with its standard error, or null when as many parameters as readings leave no degree of freedom.</summary>
    /// <param name="power">0 for the intercept, 1 for the slope of a line, 2 for the curvature.</param>
    public Estimate? Coefficient(int power)
    {
        var name = power == 0 ? "least squares, intercept" : power == 1 ? "least squares, slope" : "least squares, curvature";
        return DegreesOfFreedom < 1 ? null : new(name, Coefficients[power], Math.Sqrt(Covariance(power, power)), DegreesOfFreedom, X.Count);
    }

    /// <summary>Covariance of two coefficients, in the product of their units.</summary>
    /// <param name="first">Power of the first.</param>
    /// <param name="second">Power of the second.</param>
    public double Covariance(int first, int second)
    {
        var sum = 0.0;
        for (var k = 0; k < Components.Length; k++)
        {
            var column = Combine(j => j == k ? 1 : 0);
            sum += column[first] * column[second] / Components[k].SquaredLength;
        }

        return ResidualSd * ResidualSd * sum;
    }

    private void Decompose()
    {
        var n = X.Count;
        double[] previous = new double[n], current = new double[n];
        for (var i = 0; i < n; i++)
            current[i] = throughOrigin ? X[i] : 1;
        var length = Weighted(i => current[i] * current[i]);
        for (var k = 0; k < Components.Length; k++)
        {
            if (k > 0)
            {
                shift[k] = Weighted(i => X[i] * current[i] * current[i]) / length;
                carry[k] = k > 1 ? length / Components[k - 2].SquaredLength : 0;
                var next = new double[n];
                for (var i = 0; i < n; i++)
                    next[i] = (X[i] - shift[k]) * current[i] - carry[k] * previous[i];
                (previous, current) = (current, next);
                length = Weighted(i => current[i] * current[i]);
            }

            // The second pass takes up what rounding left behind.
            var coefficient = 0.0;
            for (var pass = 0; pass < 2; pass++)
            {
                var step = Weighted(i => current[i] * Residuals[i]) / length;
                coefficient += step;
                for (var i = 0; i < n; i++)
                    Residuals[i] -= step * current[i];
            }

            Components[k] = new(coefficient, length);
        }
    }

    private double Weighted(Func<int, double> term)
    {
        var sum = 0.0;
        for (var i = 0; i < X.Count; i++)
            sum += Weights[i] * term(i);
        return sum;
    }

    /// <summary>Powers of x from a combination of the orthogonal polynomials.</summary>
    private double[] Combine(Func<int, double> coefficient)
    {
        var powers = new double[Degree + 1];
        double[] before = new double[Degree + 1], polynomial = new double[Degree + 1];
        polynomial[throughOrigin ? 1 : 0] = 1;
        for (var k = 0; k < shift.Length; k++)
        {
            if (k > 0)
            {
                var next = new double[Degree + 1];
                for (var j = 0; j <= Degree; j++)
                    next[j] = (j > 0 ? polynomial[j - 1] : 0) - shift[k] * polynomial[j] - carry[k] * before[j];
                (before, polynomial) = (polynomial, next);
            }

            for (var j = 0; j <= Degree; j++)
                powers[j] += coefficient(k) * polynomial[j];
        }

        return powers;
    }

    /// <summary>One independent part of a fit.</summary>
    /// <param name="Coefficient">Its coefficient, in unit of y per unit of x to the power of the part.</param>
    /// <param name="SquaredLength">Weighted sum of squares of its polynomial over the levels.</param>
    public readonly record struct Component(double Coefficient, double SquaredLength);
}
