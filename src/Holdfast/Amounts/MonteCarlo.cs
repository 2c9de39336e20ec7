using Holdfast.Statistics;

namespace Holdfast.Amounts;

/// <summary>
/// Propagation of distributions: every source is drawn from its own shape, the same formula is evaluated, and the answer is read off the
/// draws. It is right where the first-order law is not: bent formulas, ratios with a poorly known denominator, unequal shapes.
/// </summary>
/// <remarks>
/// JCGM 101:2008, clause 6.4 (shapes), 7.7 (coverage intervals), 7.9 (adaptive stopping). Inputs with few degrees of freedom are drawn from
/// a scaled t. Bounds such as "not negative" belong to the display; a draw is never clipped.
/// </remarks>
public static class MonteCarlo
{
    private const int Block = 10_000;

    /// <summary>Draws until value, uncertainty and both ends of the interval have settled to half a unit of the last digit shown.</summary>
    /// <param name="inputs">The formula's inputs; what they share is drawn once.</param>
    /// <param name="formula">The formula, on plain numbers in the order of the inputs.</param>
    /// <param name="stream">Random numbers; the same stream gives the same answer.</param>
    /// <param name="denominators">What the formula divides by: with a relative uncertainty above 0.1 mean and standard uncertainty do not exist.</param>
    /// <param name="confidence">Coverage probability of the intervals; no unit.</param>
    /// <param name="mostDraws">Draws after which to stop unsettled.</param>
    public static Outcome<PropagatedDistribution> Propagate(
        ReadOnlySpan<Measured> inputs,
        Func<ReadOnlySpan<double>, double> formula,
        SeededStream stream,
        ReadOnlySpan<Measured> denominators = default,
        double confidence = 0.95,
        int mostDraws = 1_000_000)
    {
        ArgumentNullException.ThrowIfNull(formula);
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentOutOfRangeException.ThrowIfLessThan(mostDraws, 2 * Block);
        if (!(confidence > 0 && confidence < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A coverage probability lies between 0 and 1.");
        var draw = new SourceDraws(inputs, stream);
        var findings = new List<Finding>(draw.Findings);
        var hasMoments = !draw.HasInfiniteVariance;
        foreach (var denominator in denominators)
        {
            if (denominator.RelativeU <= PropagatedDistribution.LargestDenominatorU)
                continue;
            hasMoments = false;
            findings.Add(Finding.Of("HF-490", Weight.Note, "A denominator is known to no better than 10 %: mean and standard uncertainty do not exist, only the interval."));
            break;
        }

        var blocks = new BlockStatistics();
        var all = new List<double>(4 * Block);
        var block = new double[Block];
        var values = new double[inputs.Length];
        var lost = 0;
        while (all.Count + Block <= mostDraws)
        {
            for (var i = 0; i < Block;)
            {
                draw.Next(values);
                var y = formula(values);
                if (double.IsFinite(y))
                    block[i++] = y;
                else if (++lost > 0.01 * (all.Count + Block))
                    return Outcome<PropagatedDistribution>.None(Finding.Of("HF-491", Weight.Stop,
                        "More than 1 % of the draws give no finite value. The formula leaves its range within the uncertainty of its inputs."));
            }

            Array.Sort(block);
            all.AddRange(block);
            blocks.Add(block, confidence);
            if (blocks.HaveSettled(hasMoments))
                break;
        }

        if (lost > 0)
            findings.Add(Finding.Of("HF-491", Weight.Caution, "Some draws, under 1 %, give no finite value and were drawn again."));
        var settled = blocks.HaveSettled(hasMoments);
        if (!settled)
            findings.Add(Finding.Of("HF-492", Weight.Note, "The draws were stopped before the last digit settled; read one digit fewer."));
        var sorted = all.ToArray();
        Array.Sort(sorted);
        return new(PropagatedDistribution.Of(sorted, confidence, hasMoments, settled), findings);
    }
}
