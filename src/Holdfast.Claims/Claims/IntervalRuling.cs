using Holdfast.Statistics;

namespace Holdfast.Claims;

/// <summary>
/// From an estimate with its interval to a ruling. "Not different" never becomes "equal" here: only an interval that lies inside a
/// margin shows sameness, only a bound that clears a limit shows a limit is met.
/// </summary>
internal static class IntervalRuling
{
    /// <summary>
    /// "Stays within a margin": holds when the 90 % interval lies inside it (two one-sided tests at 5 %); contradicted when a one-sided 95 % bound lies wholly outside.
    /// An estimate outside that could lie inside contradicts nothing: at the margin itself it would be wrong every second time.
    /// </summary>
    /// <param name="estimate">A difference or a ratio.</param>
    /// <param name="low">Lower end of the margin, in the unit of the estimate.</param>
    /// <param name="high">Upper end of the margin, in the unit of the estimate.</param>
    /// <param name="looks">How many such estimates were looked at for one claim: the contradicting bound is moved out (Bonferroni).</param>
    public static Ruling Within(Estimate estimate, double low, double high, int looks = 1)
        => Equivalence.Of(estimate, low, high).IsShown ? Ruling.Holds
            : estimate.UpperBound(1 - Confidence.Chance / looks) < low || estimate.LowerBound(1 - Confidence.Chance / looks) > high ? Ruling.Contradicted
            : Ruling.NotShownYet;

    /// <summary>"Lies below a limit": holds when the one-sided 95 % upper bound does; contradicted when the lower bound lies above it.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="limit">The limit, in the unit of the estimate.</param>
    public static Ruling Below(Estimate estimate, double limit)
        => estimate.UpperBound() < limit ? Ruling.Holds : estimate.LowerBound() > limit ? Ruling.Contradicted : Ruling.NotShownYet;

    /// <summary>"Lies above a limit": holds when the one-sided 95 % lower bound does; contradicted when the upper bound lies below it.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="limit">The limit, in the unit of the estimate.</param>
    public static Ruling Above(Estimate estimate, double limit)
        => estimate.LowerBound() > limit ? Ruling.Holds : estimate.UpperBound() < limit ? Ruling.Contradicted : Ruling.NotShownYet;

    /// <summary>The ruling on several parts that must all hold: one contradicted part contradicts the whole.</summary>
    /// <param name="parts">Rulings of the parts; none gives "not shown yet".</param>
    public static Ruling All(IEnumerable<Ruling> parts)
    {
        var all = parts.ToArray();
        return all.Contains(Ruling.Contradicted) ? Ruling.Contradicted
            : all.Length > 0 && all.All(r => r == Ruling.Holds) ? Ruling.Holds
            : Ruling.NotShownYet;
    }
}
