namespace Holdfast.Calibration;

/// <summary>How the scatter of a reading grows with the level: sd(x)² = sd₀² + (c·x)².</summary>
/// <remarks>
/// Fitted to all replicate variances together; a single variance from three readings is too noisy to weight with
/// (J. Tellinghuisen; from memory). A variance s² with ν degrees of freedom scatters with 2σ⁴/ν, so the fit is iteratively
/// reweighted least squares of s² on 1 and x², the gamma quasi-likelihood (P. McCullagh and J. A. Nelder, chapter 8; from memory).
/// </remarks>
/// <param name="Sd0">Standard deviation at level 0, in the unit of the reading.</param>
/// <param name="Slope">c, unit of the reading per unit of level.</param>
public sealed record VarianceFunction(double Sd0, double Slope)
{
    private const int MostSteps = 200;

    // Information on sd₀² and c²: Σ ν/(2σ⁴)·u·u′ with u = (1, x²); nothing where the law is taken as known.
    private (double Constant, double Mixed, double Square)? Information { get; init; }

    /// <summary>Standard deviation of one reading, in the unit of the reading.</summary>
    /// <param name="level">Concentration, in the unit of the standards.</param>
    public double Sd(double level) => Math.Sqrt(Sd0 * Sd0 + Slope * Slope * level * level);

    /// <summary>
    /// The same law as found from groups of readings: it then knows how well it is known itself, since a variance with ν degrees of freedom scatters with 2σ⁴/ν.
    /// </summary>
    /// <param name="groups">Level and degrees of freedom of each group of readings behind it.</param>
    internal VarianceFunction FoundFrom(IEnumerable<(double Level, double DegreesOfFreedom)> groups)
    {
        (double Constant, double Mixed, double Square) sum = default;
        foreach (var (level, dof) in groups)
        {
            double u = level * level, weight = dof / (2 * Math.Pow(Sd(level), 4));
            sum = (sum.Constant + weight, sum.Mixed + weight * u, sum.Square + weight * u * u);
        }

        return this with { Information = sum };
    }

    /// <summary>
    /// Degrees of freedom of a variance a·sd₀² + b·c²: twice its square over the variance of its estimate (F. E. Satterthwaite, 1946; from memory). A reading at
    /// level x has a = 1 and b = x². No fewer than 1, infinite where the law is taken as known.
    /// </summary>
    /// <param name="constant">a, how often the constant part is in it; no unit.</param>
    /// <param name="square">b, in the unit of the level squared.</param>
    public double DegreesOfFreedom(double constant, double square)
    {
        if (Information is not var (cc, cs, ss))
            return double.PositiveInfinity;
        var variance = constant * Sd0 * Sd0 + square * Slope * Slope;
        var determinant = cc * ss - cs * cs;
        var scatter = Slope == 0 || !(determinant > 1e-12 * cc * ss)
            ? constant * constant / cc
            : (constant * constant * ss - 2 * constant * square * cs + square * square * cc) / determinant;
        return Math.Max(2 * variance * variance / scatter, 1);
    }

    /// <summary>Fits the function, or null when no level has replicates that scatter.</summary>
    /// <param name="levels">Level, replicate standard deviation and its degrees of freedom.</param>
    public static VarianceFunction? Of(IReadOnlyList<(double Level, double Sd, double DegreesOfFreedom)> levels)
    {
        ArgumentNullException.ThrowIfNull(levels);
        var used = levels.Where(l => l.DegreesOfFreedom > 0).ToList();
        var total = used.Sum(l => l.DegreesOfFreedom);
        var pooled = total > 0 ? used.Sum(l => l.DegreesOfFreedom * l.Sd * l.Sd) / total : 0;
        if (pooled == 0)
            return null;

        // A floor keeps one lucky triple of equal readings from taking infinite weight.
        var floor = 1e-4 * pooled;
        double constant = pooled, square = 0;
        for (var step = 0; step < MostSteps; step++)
        {
            double w = 0, wu = 0, wuu = 0, wv = 0, wuv = 0;
            foreach (var (level, sd, dof) in used)
            {
                double u = level * level, v = sd * sd;
                var variance = Math.Max(constant + square * u, floor);
                var weight = dof / (variance * variance);
                w += weight;
                wu += weight * u;
                wuu += weight * u * u;
                wv += weight * v;
                wuv += weight * u * v;
            }

            var (before, beforeSquare) = (constant, square);
            var determinant = w * wuu - wu * wu;
            (constant, square) = determinant > 1e-12 * w * wuu ? ((wv * wuu - wu * wuv) / determinant, (w * wuv - wu * wv) / determinant) : (wv / w, 0);
            if (square < 0)
                (constant, square) = (wv / w, 0);
            else if (constant < 0)
                (constant, square) = (0, wuv / wuu);
            if (Math.Abs(constant - before) <= 1e-13 * pooled && Math.Abs(square - beforeSquare) <= 1e-13 * Math.Max(square, 1e-300))
                break;
        }

        return new VarianceFunction(Math.Sqrt(Math.Max(constant, floor)), Math.Sqrt(square)).FoundFrom(used.Select(l => (l.Level, l.DegreesOfFreedom)));
    }
}
