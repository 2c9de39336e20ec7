using Holdfast.Fitting.Solving;

namespace Holdfast.Fitting.Lines;

/// <summary>
/// Linear least squares with any terms, by orthogonal factors and one refinement with residuals in twice the precision, so that an ill-conditioned
/// design loses as little as the data allow.
/// </summary>
/// <remarks>Refinement of the augmented system: Å. Björck, BIT 7 (1967) 257 (from memory); exact products by fused multiply-add.</remarks>
public sealed class LinearModel
{
    private const int MostRefinements = 6;

    private LinearModel(double[] coefficients, double[,] unscaled, double[] residuals, double[] leverages, bool settled)
    {
        Coefficients = coefficients;
        Residuals = residuals;
        Leverages = leverages;
        SumOfSquares = residuals.Sum(r => r * r);
        DegreesOfFreedom = residuals.Length - coefficients.Length;
        Settled = settled;
        ResidualSd = DegreesOfFreedom > 0 ? Math.Sqrt(SumOfSquares / DegreesOfFreedom) : null;
        StandardErrors = ResidualSd is { } s ? [.. coefficients.Select((_, j) => s * Math.Sqrt(unscaled[j, j]))] : [];
    }

    /// <summary>Coefficients in the order of the columns.</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>Their standard errors; empty without degrees of freedom.</summary>
    public IReadOnlyList<double> StandardErrors { get; }

    /// <summary>Reading less fit, in the unit of y.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Leverage of each point, 0 to 1.</summary>
    public IReadOnlyList<double> Leverages { get; }

    /// <summary>Sum of squared residuals.</summary>
    public double SumOfSquares { get; }

    /// <summary>Points less coefficients.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Residual standard deviation; null without degrees of freedom.</summary>
    public double? ResidualSd { get; }

    /// <summary>False when the refinement did not settle: the columns are nearly dependent and the last digits are not to be trusted.</summary>
    public bool Settled { get; }

    /// <summary>Fits y to the columns of a design; no value when the columns are dependent.</summary>
    /// <param name="columns">The terms, each as long as y; a column of ones for an intercept.</param>
    /// <param name="y">Readings.</param>
    /// <exception cref="ArgumentException">Lengths differ, or there are fewer readings than terms.</exception>
    public static Outcome<LinearModel> Of(IReadOnlyList<IReadOnlyList<double>> columns, IReadOnlyList<double> y)
    {
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(y);
        var (n, p) = (y.Count, columns.Count);
        if (n < p || columns.Any(c => c.Count != n))
            throw new ArgumentException(FormattableString.Invariant($"{n} readings for {p} terms, or a term of another length."), nameof(columns));
        double[] design = [.. columns.SelectMany(c => c)], factor = [.. design], reflectors = new double[p];
        Householder.Factor(factor, n, p, reflectors);
        double[] x = new double[p], residual = new double[n], f = new double[n], g = new double[p];
        var last = double.PositiveInfinity;
        var settled = false;
        for (var round = 0; round <= MostRefinements && !settled; round++)
        {
            Defects(design, y, x, residual, f, g);
            var (dx, dr) = Solve(factor, reflectors, n, p, f, g);
            if (dx is null)
            {
                return Outcome<LinearModel>.None(Finding.Of("HF-416", Weight.Stop,
                    "The terms of the line depend on each other: their coefficients are not determined. Leave one out."));
            }

            var step = dx.Select((d, j) => Math.Abs(d) / (Math.Abs(x[j] + d) + double.Epsilon)).Max();
            if (round > 0 && step >= last)
                break;
            settled = step <= 4e-16;
            last = step;
            for (var j = 0; j < p; j++)
                x[j] += dx[j];
            for (var i = 0; i < n; i++)
                residual[i] += dr[i];
        }

        var leverages = new double[n];
        Span<double> row = stackalloc double[p], solved = stackalloc double[p];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < p; j++)
                row[j] = design[j * n + i];
            Householder.Forward(factor, n, p, row, solved);
            foreach (var z in solved)
                leverages[i] += z * z;
        }

        return new(new(x, Householder.Inverse(factor, n, p), residual, leverages, settled || last < 1e-12), []);
    }

    // f = y − r − A x and g = −A′ r, summed in twice the precision.
    private static void Defects(double[] design, IReadOnlyList<double> y, double[] x, double[] residual, double[] f, double[] g)
    {
        var n = f.Length;
        for (var i = 0; i < n; i++)
        {
            var sum = new DoubleDouble(y[i]);
            sum.Add(-residual[i]);
            for (var j = 0; j < x.Length; j++)
                sum.AddProduct(-design[j * n + i], x[j]);
            f[i] = sum.Value;
        }

        for (var j = 0; j < x.Length; j++)
        {
            var sum = new DoubleDouble(0);
            for (var i = 0; i < n; i++)
                sum.AddProduct(-design[j * n + i], residual[i]);
            g[j] = sum.Value;
        }
    }

    // The augmented system dr + A dx = f, A′ dr = g, with A = QR: dx = R⁻¹(Q₁′f − R⁻ᵀg), dr = Q (R⁻ᵀg; Q₂′f).
    private static (double[]? Dx, double[] Dr) Solve(double[] factor, double[] reflectors, int n, int p, double[] f, double[] g)
    {
        double[] turned = [.. f], h = new double[p], dx = new double[p];
        Householder.Turn(factor, reflectors, n, p, turned, back: false);
        Householder.Forward(factor, n, p, g, h);
        for (var j = 0; j < p; j++)
        {
            (h[j], turned[j]) = (turned[j] - h[j], h[j]);
        }

        if (!Householder.Back(factor, n, p, h, dx) || !dx.All(double.IsFinite))
            return (null, turned);
        Householder.Turn(factor, reflectors, n, p, turned, back: true);
        return (dx, turned);
    }
}
