using Holdfast.Statistics;

namespace Holdfast.Fitting.Diagnostics;

/// <summary>What the resamples of a fit say.</summary>
public sealed class BootstrapResult
{
    private readonly Draws draws;

    internal BootstrapResult(
        Resampling scheme, ulong seed, int count, int failed, int skipped, IReadOnlyList<ResampledParameter> parameters, Draws draws)
    {
        (Scheme, Seed, Count, Failed, Skipped, Parameters, this.draws) = (scheme, seed, count, failed, skipped, parameters, draws);
    }

    /// <summary>The scheme.</summary>
    public Resampling Scheme { get; }

    /// <summary>The seed.</summary>
    public ulong Seed { get; }

    /// <summary>Resamples drawn.</summary>
    public int Count { get; }

    /// <summary>Resamples that could not be fitted.</summary>
    public int Failed { get; }

    /// <summary>Resamples with too few different x.</summary>
    public int Skipped { get; }

    /// <summary>The parameters, in the card's order.</summary>
    public IReadOnlyList<ResampledParameter> Parameters { get; }

    /// <summary>One parameter over all resamples that were fitted, in the order drawn.</summary>
    /// <param name="parameter">Its place on the card, from 0.</param>
    public IReadOnlyList<double> Draws(int parameter) => [.. draws.Column(parameter)];
}

/// <summary>One parameter over the resamples.</summary>
/// <param name="Symbol">Symbol on the card.</param>
/// <param name="Mean">Mean over the resamples.</param>
/// <param name="StandardDeviation">Standard deviation over the resamples.</param>
/// <param name="Percentile">Percentile interval; null below <see cref="Bootstrap.FewestForPercentiles"/> points, where it is too narrow.</param>
/// <param name="Studentised">Interval from (b* − b)/se*; null for a parameter on a bound.</param>
public sealed record ResampledParameter(string Symbol, double Mean, double StandardDeviation, Interval? Percentile, Interval? Studentised);

/// <summary>How one resample ended.</summary>
internal enum DrawEnd : byte
{
    /// <summary>Not enough different x.</summary>
    Skipped,

    /// <summary>Fitted.</summary>
    Settled,

    /// <summary>Did not settle.</summary>
    Failed,
}

/// <summary>The parameters of every resample, side by side in memory.</summary>
internal sealed class Draws(int count, int parameters)
{
    /// <summary>Parameter j of resample k at k·p + j.</summary>
    public double[] Values { get; } = new double[count * parameters];

    /// <summary>Its standard error in that resample.</summary>
    public double[] Errors { get; } = new double[count * parameters];

    /// <summary>How each resample ended.</summary>
    public DrawEnd[] Ends { get; } = new DrawEnd[count];

    /// <summary>One parameter over the resamples that were fitted.</summary>
    public IEnumerable<double> Column(int j)
        => Enumerable.Range(0, Ends.Length).Where(k => Ends[k] == DrawEnd.Settled).Select(k => Values[k * parameters + j]);
}
