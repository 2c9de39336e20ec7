using Holdfast.Statistics;

namespace Holdfast.Fluorescence;

/// <summary>
/// Known amounts added to one water: found = native + k·added. k is the recovery by slope; its interval against 1 shows whether the water changes
/// the response by a share.
/// </summary>
/// <remarks>Least squares over single vessels, Student's t (any text); recovery windows by level in the AOAC manner are the claim's.</remarks>
/// <param name="Native">Found at no addition by the line, in the unit of the additions.</param>
/// <param name="Slope">k; no unit.</param>
/// <param name="Levels">Recovery at each level above zero.</param>
public sealed record SpikedWater(Estimate Native, Estimate Slope, IReadOnlyList<SpikedLevel> Levels)
{
    /// <summary>True when the 95 % interval of the slope leaves out 1: a share of the response is lost or gained.</summary>
    public bool MatrixEffectIsShown => !Slope.Interval(0.95).Contains(1);

    /// <summary>Works out the recoveries of one water.</summary>
    /// <param name="added">Amounts added, in one unit; 0 for the water as it is.</param>
    /// <param name="found">Amounts found, same unit.</param>
    /// <returns>The recoveries; none without an unspiked vessel or with fewer than two levels added.</returns>
    public static Outcome<SpikedWater> Of(IReadOnlyList<double> added, IReadOnlyList<double> found)
    {
        ArgumentNullException.ThrowIfNull(added);
        ArgumentNullException.ThrowIfNull(found);
        if (added.Count != found.Count)
            throw new ArgumentException(FormattableString.Invariant($"{added.Count} amounts added and {found.Count} found."), nameof(found));
        var levels = added.Zip(found).GroupBy(p => p.First).OrderBy(g => g.Key).Select(g => (Added: g.Key, Found: g.Select(p => p.Second).ToArray())).ToArray();
        if (levels.Length < 3 || levels[0].Added != 0 || added.Count < 4)
            return Outcome<SpikedWater>.None(FluorescenceFindings.TooFewSpikes(levels.Length));
        var line = PolynomialFit.Of(added, found);
        var spiked = new SpikedWater(
            line.Coefficient(0)! with { Method = "found at no addition" }, line.Coefficient(1)! with { Method = "slope of found on added" },
            [.. levels.Skip(1).Select(l => Recovery(l.Added, l.Found, levels[0].Found))]);
        return new(spiked, spiked.MatrixEffectIsShown ? [FluorescenceFindings.MatrixChangesSlope(spiked.Slope)] : []);
    }

    private static SpikedLevel Recovery(double added, double[] found, double[] native)
        => new(added, (found.Average() - native.Average()) / added, TwoMeans.Welch(found, native).Value is { } difference
            ? difference with { Method = "recovery, Welch on found less native", Value = difference.Value / added, StandardError = difference.StandardError / added }
            : null);
}

/// <summary>Recovery at one addition.</summary>
/// <param name="Added">Amount added, in the unit of the additions.</param>
/// <param name="Recovery">Recovered over added; no unit.</param>
/// <param name="Estimate">The same with its uncertainty; null without replicates.</param>
public sealed record SpikedLevel(double Added, double Recovery, Estimate? Estimate);
