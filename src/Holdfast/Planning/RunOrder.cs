using System.Globalization;
using Holdfast.Statistics;

namespace Holdfast.Planning;

/// <summary>
/// Random order of the vessels of a series in complete blocks: each block holds every level equally often, and one stored seed gives the same order on every
/// computer. Starting and reading are drawn apart, so that a drift of the one is not a drift of the other.
/// </summary>
/// <remarks>
/// Within a block the order is drawn anew while it rises or falls with the level: |ρ| (Spearman) is below <see cref="LargestCorrelation"/> or, where so few
/// vessels allow none below it, the least that was drawn. This is restricted randomisation, and a report says so.
/// </remarks>
/// <param name="Block">Block of each vessel, from 1, in the order the vessels were given.</param>
/// <param name="Start">Place of each vessel in the order of starting, from 1.</param>
/// <param name="Read">Place of each vessel in the order of reading, from 1.</param>
/// <param name="StartCorrelation">Largest |ρ| between level and order of starting within a block; no unit, null where the level does not vary.</param>
/// <param name="ReadCorrelation">The same for the order of reading.</param>
public sealed record RunOrder(
    IReadOnlyList<int> Block, IReadOnlyList<int> Start, IReadOnlyList<int> Read, double? StartCorrelation, double? ReadCorrelation)
{
    /// <summary>An order that rises or falls with the level as much as this, |ρ|, is drawn again; common practice.</summary>
    public const double LargestCorrelation = 0.3;

    private const int MostDraws = 200;

    /// <summary>True when both orders keep clear of the levels.</summary>
    public bool IsClear => !(StartCorrelation >= LargestCorrelation) && !(ReadCorrelation >= LargestCorrelation);

    /// <summary>Draws the order.</summary>
    /// <param name="levels">Level of each vessel; vessels of one level are replicates.</param>
    /// <param name="blocks">Number of blocks, at least 1 and at most the replicates of the rarest level.</param>
    /// <param name="seed">Seed of the plan.</param>
    /// <param name="purpose">What is ordered, for example the series' name: each has its own stream.</param>
    /// <exception cref="ArgumentException">There is no vessel, or a block would lack a level.</exception>
    public static RunOrder Draw(IReadOnlyList<double> levels, int blocks, ulong seed, string purpose)
    {
        ArgumentNullException.ThrowIfNull(levels);
        ArgumentOutOfRangeException.ThrowIfLessThan(blocks, 1);
        if (levels.Count == 0)
            throw new ArgumentException("There is no vessel to order.", nameof(levels));
        if (levels.GroupBy(l => l).Min(g => g.Count()) is var fewest && fewest < blocks)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"A level with {fewest} vessels cannot stand in each of {blocks} blocks. Take fewer blocks or more replicates."), nameof(blocks));
        }

        var seen = new Dictionary<double, int>();
        var block = new int[levels.Count];
        for (var i = 0; i < block.Length; i++)
        {
            var before = seen.GetValueOrDefault(levels[i]);
            seen[levels[i]] = before + 1;
            block[i] = before % blocks + 1;
        }

        var (start, startCorrelation) = Order(levels, block, blocks, seed, $"{purpose}: order of starting");
        var (read, readCorrelation) = Order(levels, block, blocks, seed, $"{purpose}: order of reading");
        return new(block, start, read, startCorrelation, readCorrelation);
    }

    private static (int[] Place, double? Correlation) Order(IReadOnlyList<double> levels, int[] block, int blocks, ulong seed, string purpose)
    {
        var stream = new SeededStream(seed, purpose);
        var place = new int[levels.Count];
        double? largest = null;
        var next = 1;
        for (var b = 1; b <= blocks; b++)
        {
            int[] vessels = [.. Enumerable.Range(0, block.Length).Where(i => block[i] == b)];
            double[] order = [.. Enumerable.Range(1, vessels.Length).Select(i => (double)i)];
            int[] best = vessels;
            double? least = null;
            for (var draw = 0; draw < MostDraws; draw++)
            {
                stream.Shuffle(vessels.AsSpan());
                var correlation = Spearman.Of([.. vessels.Select(v => levels[v])], order) is { } rho ? Math.Abs(rho) : (double?)null;
                if (draw == 0 || correlation < least)
                    (best, least) = ([.. vessels], correlation);
                if (!(least >= LargestCorrelation))
                    break;
            }

            foreach (var vessel in best)
                place[vessel] = next++;
            largest = least is null || largest >= least ? largest : least;
        }

        return (place, largest);
    }
}
