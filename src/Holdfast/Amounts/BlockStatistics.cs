namespace Holdfast.Amounts;

/// <summary>Value, uncertainty and ends of the interval for each block of draws: their scatter tells when to stop (JCGM 101, 7.9.4).</summary>
internal sealed class BlockStatistics
{
    /// <summary>The scatter of two or three blocks is known too badly to stop on it.</summary>
    private const int FewestBlocks = 5;

    private readonly List<double[]> blocks = [];

    /// <summary>Takes in a block.</summary>
    /// <param name="sorted">Draws in rising order, in the unit of the result.</param>
    /// <param name="confidence">Coverage probability; no unit.</param>
    public void Add(ReadOnlySpan<double> sorted, double confidence)
    {
        var (mean, u) = PropagatedDistribution.Moments(sorted);
        var (low, high) = PropagatedDistribution.Tails(sorted, confidence);
        blocks.Add([low, high, sorted[sorted.Length / 2], mean, u]);
    }

    /// <summary>True when twice the standard error of each figure is below half a unit of the last of two digits of the uncertainty.</summary>
    /// <param name="hasMoments">False when mean and standard deviation do not exist and are left out.</param>
    public bool HaveSettled(bool hasMoments)
    {
        if (blocks.Count < FewestBlocks)
            return false;
        var u = hasMoments ? Average(4) : (Average(1) - Average(0)) / 4;
        if (!(u > 0))
            return true;
        var bar = 0.5 * Math.Pow(10, -RoundedNumber.DecimalsFor(u));
        for (var k = 0; k < (hasMoments ? 5 : 3); k++)
        {
            if (2 * StandardError(k) > bar)
                return false;
        }

        return true;
    }

    private double Average(int k) => blocks.Average(b => b[k]);

    private double StandardError(int k)
    {
        var mean = Average(k);
        return Math.Sqrt(blocks.Sum(b => (b[k] - mean) * (b[k] - mean)) / (blocks.Count * (blocks.Count - 1.0)));
    }
}
