using System.Globalization;
using Holdfast.Statistics;

namespace Holdfast.SurfaceCharge;

/// <summary>
/// Point of zero charge by drift: powder shaken in an inert salt from several start pH; where the pH neither rises nor falls the surface is taken as
/// uncharged. A result is one crossing, falling, the same at two salt levels, with the load of solid stated.
/// </summary>
/// <remarks>
/// Crossing by straight interpolation. Its uncertainty is u(pH)·√2·√((1 − w)² + w²)/|slope|, w being its place between the two points. The crossing moves
/// with the load of solid (Panumati and co-workers, Songklanakarin J. Sci. Technol. 2008): use the load at which it no longer does.
/// </remarks>
public static class PhDrift
{
    /// <summary>Every crossing of final less start pH, in rising start pH.</summary>
    /// <param name="start">Start pH, three or more different values.</param>
    /// <param name="end">pH after shaking, in the same order.</param>
    /// <param name="u">Standard uncertainty of one pH reading.</param>
    /// <exception cref="ArgumentException">The lists differ in length, or a start pH occurs twice.</exception>
    public static IReadOnlyList<ZeroCrossing> Crossings(IReadOnlyList<double> start, IReadOnlyList<double> end, double u)
    {
        Values.Require(start);
        Values.Require(end);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(u);
        if (start.Count != end.Count)
            throw new ArgumentException($"There are {start.Count} start and {end.Count} final values.", nameof(end));
        if (start.Distinct().Count() != start.Count)
            throw new ArgumentException("A start pH occurs twice: take the mean of its replicates first.", nameof(start));
        var points = start.Zip(end, (s, e) => (Start: s, Drift: e - s)).OrderBy(p => p.Start).ToArray();
        var found = new List<ZeroCrossing>();
        for (var j = 0; j < points.Length; j++)
        {
            // A drift of exactly 0 is a crossing at that point when the signs on its two sides differ.
            if (points[j].Drift == 0 && j > 0 && j + 1 < points.Length && points[j - 1].Drift * points[j + 1].Drift < 0)
            {
                var across = (points[j + 1].Drift - points[j - 1].Drift) / (points[j + 1].Start - points[j - 1].Start);
                found.Add(new(points[j].Start, u * Math.Sqrt(2) / Math.Abs(across), across < 0));
            }

            if (j + 1 == points.Length || points[j].Drift * points[j + 1].Drift >= 0)
                continue;
            var (a, b) = (points[j], points[j + 1]);
            var w = a.Drift / (a.Drift - b.Drift);
            var slope = (b.Drift - a.Drift) / (b.Start - a.Start);
            found.Add(new(a.Start + w * (b.Start - a.Start), u * Math.Sqrt(2) * Math.Sqrt((1 - w) * (1 - w) + w * w) / Math.Abs(slope), slope < 0));
        }

        return found;
    }

    /// <summary>The point of zero charge, where the crossings allow one to be named (rule P1).</summary>
    /// <param name="crossings">Crossings at one salt level.</param>
    /// <param name="saltLevels">How many levels of salt were measured.</param>
    /// <param name="loadIsStated">True when the mass of solid per volume is recorded.</param>
    public static Outcome<ZeroCrossing> Judge(IReadOnlyList<ZeroCrossing> crossings, int saltLevels, bool loadIsStated)
    {
        ArgumentNullException.ThrowIfNull(crossings);
        if (crossings.Count != 1 || !crossings[0].IsFalling)
        {
            return Outcome<ZeroCrossing>.None(Finding.Of("HF-630", Weight.Stop, crossings.Count switch
            {
                0 => "Final less start pH never crosses 0: no point of zero charge is in the range. Extend the start pH.",
                1 => "The only crossing rises: that is no point of zero charge. Look for carbon dioxide or residual acid.",
                _ => string.Create(CultureInfo.InvariantCulture, $"Final less start pH crosses 0 {crossings.Count} times: none of them is the point of zero charge. Repeat with carbon dioxide kept out."),
            }));
        }

        var findings = new List<Finding>();
        if (saltLevels < 2)
            findings.Add(Finding.Of("HF-631", Weight.Caution, "One level of salt: the crossing may belong to an ion that sorbs. Repeat at a tenfold salt level."));
        if (!loadIsStated)
            findings.Add(Finding.Of("HF-632", Weight.Caution, "The load of solid is not stated, and the crossing moves with it. Record grams per litre."));
        return new(crossings[0], findings);
    }

    /// <summary>Whether the crossings of two salt levels agree: their difference within twice its uncertainty.</summary>
    /// <param name="first">Crossing at the first level.</param>
    /// <param name="second">Crossing at the second level.</param>
    public static Ruling Agree(ZeroCrossing first, ZeroCrossing second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Math.Abs(first.Ph - second.Ph) <= 2 * Math.Sqrt(first.U * first.U + second.U * second.U) ? Ruling.NotShownYet : Ruling.Contradicted;
    }
}

/// <summary>A start pH at which the drift changes sign.</summary>
/// <param name="Ph">Start pH of the crossing.</param>
/// <param name="U">Its standard uncertainty.</param>
/// <param name="IsFalling">True when the drift goes from above to below 0 with rising pH, as at a point of zero charge.</param>
public sealed record ZeroCrossing(double Ph, double U, bool IsFalling);
