namespace Holdfast.Planning;

/// <summary>
/// What a set of planned or finished readings knows about p parameters: M = Σ w·s·sᵀ, s being the row of slopes ∂y/∂θ divided by the standard
/// uncertainty of that reading. M⁻¹ is the parameters' covariance to first order.
/// </summary>
public sealed class Information
{
    private readonly double[,] m;

    /// <summary>No knowledge yet.</summary>
    /// <param name="parameters">Number of parameters, 1 to 4.</param>
    public Information(int parameters)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(parameters, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(parameters, 4);
        Parameters = parameters;
        m = new double[parameters, parameters];
    }

    /// <summary>Number of parameters.</summary>
    public int Parameters { get; }

    /// <summary>det M; 0 when the readings leave a combination of parameters unknown.</summary>
    public double Determinant
    {
        get
        {
            var l = Cholesky();
            if (l is null)
                return 0;
            var root = 1.0;
            for (var i = 0; i < Parameters; i++)
                root *= l[i, i];
            return root * root;
        }
    }

    /// <summary>True when some combination of parameters is unknown.</summary>
    public bool IsSingular => Cholesky() is null;

    /// <summary>The information of a set of readings of equal weight.</summary>
    /// <param name="rows">One row of slopes over uncertainty for each reading, all of one length.</param>
    public static Information Of(IEnumerable<double[]> rows)
    {
        Information? all = null;
        foreach (var row in rows)
            (all ??= new(row.Length)).Add(row);
        return all ?? throw new ArgumentException("There is no reading.", nameof(rows));
    }

    /// <summary>Adds a reading.</summary>
    /// <param name="row">Slopes by the parameters over the reading's standard uncertainty.</param>
    /// <param name="weight">How many such readings, or its share of a design; 0 or above.</param>
    public void Add(ReadOnlySpan<double> row, double weight = 1)
    {
        if (row.Length != Parameters)
            throw new ArgumentException(FormattableString.Invariant($"A row has {Parameters} slopes; got {row.Length}."), nameof(row));
        ArgumentOutOfRangeException.ThrowIfNegative(weight);
        for (var i = 0; i < Parameters; i++)
        {
            for (var j = 0; j < Parameters; j++)
                m[i, j] += weight * row[i] * row[j];
        }
    }

    /// <summary>d = s·M⁻¹·sᵀ: variance of a prediction there in units of the reading's own. Adding that reading raises ln det M by ln(1 + d).</summary>
    /// <param name="row">Slopes by the parameters over the reading's standard uncertainty.</param>
    /// <returns>d, or null while M is singular.</returns>
    public double? Variance(ReadOnlySpan<double> row)
    {
        if (Cholesky() is not { } l)
            return null;
        Span<double> z = stackalloc double[Parameters];
        Forward(l, row, z);
        var sum = 0.0;
        foreach (var v in z)
            sum += v * v;
        return sum;
    }

    /// <summary>Covariance of the parameters, M⁻¹; null while M is singular.</summary>
    public double[,]? Covariance()
    {
        if (Cholesky() is not { } l)
            return null;
        var inverse = new double[Parameters, Parameters];
        var columns = new double[Parameters][];
        for (var j = 0; j < Parameters; j++)
        {
            columns[j] = new double[Parameters];
            var unit = new double[Parameters];
            unit[j] = 1;
            Forward(l, unit, columns[j]);
        }

        for (var i = 0; i < Parameters; i++)
        {
            for (var j = 0; j < Parameters; j++)
                inverse[i, j] = columns[i].Zip(columns[j], (a, b) => a * b).Sum();
        }

        return inverse;
    }

    /// <summary>How good these readings are against another set of the same number: (det M / det M′)^(1/p).</summary>
    /// <param name="other">The set to compare with, usually the best one.</param>
    public double EfficiencyAgainst(Information other) => Math.Pow(Determinant / other.Determinant, 1.0 / Parameters);

    private static void Forward(double[,] l, ReadOnlySpan<double> right, Span<double> z)
    {
        for (var i = 0; i < z.Length; i++)
        {
            var sum = right[i];
            for (var k = 0; k < i; k++)
                sum -= l[i, k] * z[k];
            z[i] = sum / l[i, i];
        }
    }

    // M = L·Lᵀ; null when a pivot vanishes against its own diagonal.
    private double[,]? Cholesky()
    {
        var l = new double[Parameters, Parameters];
        for (var i = 0; i < Parameters; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = m[i, j];
                for (var k = 0; k < j; k++)
                    sum -= l[i, k] * l[j, k];
                if (i != j)
                    l[i, j] = sum / l[j, j];
                else if (sum > 1e-13 * m[i, i])
                    l[i, i] = Math.Sqrt(sum);
                else
                    return null;
            }
        }

        return l;
    }
}
