using System.Diagnostics.CodeAnalysis;

namespace Holdfast.Amounts;

/// <summary>
/// A value with its uncertainty and where the uncertainty comes from: for each independent <see cref="Source"/> the signed
/// contribution d = ∂f/∂s · u(s). Variance, covariance, budget and trail all come from this one list, to first order (JCGM 100, 5.1 and 5.2).
/// So x − x is 0 ± 0, and two results read on one calibration line are correlated exactly as much as they share it.
/// </summary>
public readonly struct Measured : IReal<Measured>, IEquatable<Measured>
{
    private readonly Contribution[]? contributions;

    private Measured(double value, Contribution[]? contributions)
    {
        Value = value;
        this.contributions = contributions;
    }

    /// <summary>The value, in the unit its owner names.</summary>
    public double Value { get; }

    /// <summary>Signed contributions, sorted by source id; empty for an exact number.</summary>
    public ReadOnlySpan<Contribution> Contributions => contributions;

    /// <summary>Combined standard uncertainty, in the unit of <see cref="Value"/>.</summary>
    public double U => Math.Sqrt(Variance);

    /// <summary>Square of the combined standard uncertainty.</summary>
    public double Variance
    {
        get
        {
            var sum = 0.0;
            foreach (var c in Contributions)
                sum += c.D * c.D;
            return sum;
        }
    }

    /// <summary>u/|value|; infinite for a value of zero with an uncertainty.</summary>
    public double RelativeU => U == 0 ? 0 : U / Math.Abs(Value);

    /// <summary>
    /// Effective degrees of freedom by Welch–Satterthwaite over groups (JCGM 100, G.4): ν = u⁴ / Σ u_g⁴/ν_g. Infinite when every group is.
    /// </summary>
    public double DegreesOfFreedom
    {
        get
        {
            var groups = new SortedDictionary<string, (double Variance, double Dof)>(StringComparer.Ordinal);
            foreach (var c in Contributions)
            {
                var had = groups.TryGetValue(c.Source.GroupOrSelf, out var g);
                groups[c.Source.GroupOrSelf] = (g.Variance + c.D * c.D, had ? Math.Min(g.Dof, c.Source.DegreesOfFreedom) : c.Source.DegreesOfFreedom);
            }

            double total = 0, weighed = 0;
            foreach (var (variance, dof) in groups.Values)
            {
                total += variance;
                if (!double.IsPositiveInfinity(dof))
                    weighed += variance * variance / dof;
            }

            return weighed == 0 ? double.PositiveInfinity : total * total / weighed;
        }
    }

    /// <summary>A value with one source.</summary>
    /// <param name="value">The value, in the source's unit.</param>
    /// <param name="source">The act that makes it uncertain.</param>
    public static Measured From(double value, Source source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return source.U == 0 ? new(value, null) : new(value, [new(source, source.U)]);
    }

    /// <summary>A value with several signed contributions, for example a parameter of a fitted line.</summary>
    /// <param name="value">The value.</param>
    /// <param name="contributions">d = ∂f/∂s · u(s) for each source; a source may occur once only.</param>
    /// <exception cref="ArgumentException">A source occurs twice.</exception>
    public static Measured From(double value, IEnumerable<Contribution> contributions)
    {
        ArgumentNullException.ThrowIfNull(contributions);
        var sorted = contributions.Where(c => c.D != 0).ToArray();
        Array.Sort(sorted, (a, b) => string.CompareOrdinal(a.Source.Id, b.Source.Id));
        for (var i = 1; i < sorted.Length; i++)
        {
            if (string.Equals(sorted[i].Source.Id, sorted[i - 1].Source.Id, StringComparison.Ordinal))
                throw new ArgumentException($"Source '{sorted[i].Source.Id}' occurs twice.", nameof(contributions));
        }

        return new(value, sorted.Length == 0 ? null : sorted);
    }

    /// <summary>Covariance of two results: the sum of products of contributions over the sources they share.</summary>
    public static double Covariance(Measured a, Measured b)
    {
        var x = a.Contributions;
        var y = b.Contributions;
        double sum = 0;
        for (int i = 0, j = 0; i < x.Length && j < y.Length;)
        {
            var order = Compare(x[i].Source, y[j].Source);
            if (order == 0)
                sum += x[i++].D * y[j++].D;
            else if (order < 0)
                i++;
            else
                j++;
        }

        return sum;
    }

    /// <summary>Correlation of two results, −1 to 1; 0 when either is exact.</summary>
    public static double Correlation(Measured a, Measured b)
    {
        var scale = a.U * b.U;
        return scale == 0 ? 0 : Covariance(a, b) / scale;
    }

    public static Measured operator +(Measured a, Measured b) => Combine(a.Value + b.Value, a, 1, b, 1);

    public static Measured operator -(Measured a, Measured b) => Combine(a.Value - b.Value, a, 1, b, -1);

    public static Measured operator *(Measured a, Measured b) => Combine(a.Value * b.Value, a, b.Value, b, a.Value);

    public static Measured operator /(Measured a, Measured b)
        => Combine(a.Value / b.Value, a, 1 / b.Value, b, -a.Value / (b.Value * b.Value));

    public static Measured operator -(Measured a) => Scale(-a.Value, a, -1);

    public static implicit operator Measured(double value) => new(value, null);

    public static Measured Exp(Measured a)
    {
        var e = Math.Exp(a.Value);
        return Scale(e, a, e);
    }

    public static Measured ExpM1(Measured a) => Scale(Elementary.ExpM1(a.Value), a, Math.Exp(a.Value));

    public static Measured Log(Measured a) => Scale(Math.Log(a.Value), a, 1 / a.Value);

    public static Measured LogP1(Measured a) => Scale(Elementary.LogP1(a.Value), a, 1 / (1 + a.Value));

    public static Measured Pow(Measured a, Measured b)
    {
        var power = Math.Pow(a.Value, b.Value);
        if (a.Value == 0)
            return b.Value == 1 ? a : new(power, null);
        return Combine(power, a, b.Value * power / a.Value, b, power * Math.Log(a.Value));
    }

    public static Measured Sqrt(Measured a)
    {
        var root = Math.Sqrt(a.Value);
        return Scale(root, a, 0.5 / root);
    }

    /// <summary>A function of one measured number whose slope is known.</summary>
    /// <param name="value">The function's value.</param>
    /// <param name="a">Its argument.</param>
    /// <param name="slope">df/da at the argument.</param>
    public static Measured Scale(double value, Measured a, double slope)
    {
        var from = a.Contributions;
        if (from.Length == 0 || slope == 0)
            return new(value, null);
        var to = new Contribution[from.Length];
        for (var i = 0; i < to.Length; i++)
            to[i] = new(from[i].Source, from[i].D * slope);
        return new(value, to);
    }

    /// <summary>A function of two measured numbers whose slopes are known.</summary>
    /// <param name="value">The function's value.</param>
    /// <param name="a">First argument.</param>
    /// <param name="slopeA">∂f/∂a.</param>
    /// <param name="b">Second argument.</param>
    /// <param name="slopeB">∂f/∂b.</param>
    public static Measured Combine(double value, Measured a, double slopeA, Measured b, double slopeB)
    {
        var x = a.Contributions;
        var y = b.Contributions;
        if (x.Length == 0)
            return Scale(value, b, slopeB);
        if (y.Length == 0)
            return Scale(value, a, slopeA);
        var merged = new Contribution[x.Length + y.Length];
        var count = 0;
        int i = 0, j = 0;
        while (i < x.Length && j < y.Length)
        {
            var order = Compare(x[i].Source, y[j].Source);
            if (order == 0)
                merged[count++] = new(x[i].Source, slopeA * x[i++].D + slopeB * y[j++].D);
            else if (order < 0)
                merged[count++] = new(x[i].Source, slopeA * x[i++].D);
            else
                merged[count++] = new(y[j].Source, slopeB * y[j++].D);
        }

        while (i < x.Length)
            merged[count++] = new(x[i].Source, slopeA * x[i++].D);
        while (j < y.Length)
            merged[count++] = new(y[j].Source, slopeB * y[j++].D);
        return new(value, count == merged.Length ? merged : merged[..count]);
    }

    /// <inheritdoc/>
    public bool Equals(Measured other) => Value.Equals(other.Value) && Contributions.SequenceEqual(other.Contributions);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is Measured other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Value, Contributions.Length);

    public static bool operator ==(Measured left, Measured right) => left.Equals(right);

    public static bool operator !=(Measured left, Measured right) => !left.Equals(right);

    private static int Compare(Source a, Source b) => ReferenceEquals(a, b) ? 0 : string.CompareOrdinal(a.Id, b.Id);
}
