using System.Collections.Immutable;

namespace Holdfast.Porosity;

/// <summary>The two branches of an isotherm, cleaned: adsorption rising, desorption falling in p/p0, what was left out counted.</summary>
/// <param name="Adsorption">Points of the adsorption branch, p/p0 strictly rising.</param>
/// <param name="Desorption">Points of the desorption branch, p/p0 strictly falling.</param>
/// <param name="Findings">What was left out and why.</param>
public sealed record SorptionBranches(ImmutableArray<SorptionPoint> Adsorption, ImmutableArray<SorptionPoint> Desorption, ImmutableArray<Finding> Findings)
{
    /// <summary>A fall of the amount by more than this share of the largest is no noise; no unit.</summary>
    public const double LargestFall = 0.001;

    /// <summary>p/p0 above which no volume is taken because the amount falls there; null where it does not.</summary>
    public double? FallsAbove { get; private init; }

    /// <summary>The same isotherm with two branches that are told apart by where p/p0 turns: the highest point is adsorption.</summary>
    /// <param name="points">Points in the order they were measured.</param>
    public static SorptionBranches ByTurn(IReadOnlyList<SorptionPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        SorptionPoint[] inside = [.. points.Where(IsInside)];
        var top = 0;
        for (var i = 1; i < inside.Length; i++)
        {
            if (inside[i].X > inside[top].X)
                top = i;
        }

        // A list that only falls is a desorption branch.
        var turn = top == 0 && inside.Length != 1 ? 0 : top + 1;
        return Of(inside[..turn], inside[turn..], points);
    }

    /// <summary>The isotherm from branches that the file tells apart, in either order of p/p0.</summary>
    /// <param name="adsorption">Points said to be adsorption, in the order of the file.</param>
    /// <param name="desorption">Points said to be desorption, in the order of the file.</param>
    public static SorptionBranches Of(IReadOnlyList<SorptionPoint> adsorption, IReadOnlyList<SorptionPoint> desorption)
    {
        ArgumentNullException.ThrowIfNull(adsorption);
        ArgumentNullException.ThrowIfNull(desorption);
        SorptionPoint[] up = [.. adsorption.Where(IsInside)], down = [.. desorption.Where(IsInside)];
        // A desorption branch may be listed upwards, and the other downwards.
        if (up.Length > 1 && up[0].X > up[^1].X)
            Array.Reverse(up);
        if (down.Length > 1 && down[0].X < down[^1].X)
            Array.Reverse(down);
        return Of(up, down, [.. adsorption, .. desorption]);
    }

    private static SorptionBranches Of(SorptionPoint[] up, SorptionPoint[] down, IReadOnlyList<SorptionPoint> all)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        if (all.Count(p => !IsAmount(p)) is > 0 and var impossible)
            findings.Add(PorosityFindings.Impossible(impossible));
        if (all.Count(p => IsAmount(p) && !IsInside(p)) is > 0 and var outside)
            findings.Add(PorosityFindings.Dropped(outside, "p/p0 is not between 0 and 1"));
        var rising = Strictly(up, 1);
        var falling = Strictly(down, -1);
        if (up.Length > rising.Length)
            findings.Add(PorosityFindings.Dropped(up.Length - rising.Length, "p/p0 does not rise there on adsorption"));
        if (down.Length > falling.Length)
            findings.Add(PorosityFindings.Dropped(down.Length - falling.Length, "p/p0 does not fall there on desorption"));
        var falls = Fall(rising);
        if (falls is { } at)
            findings.Add(PorosityFindings.AmountFalls(at));
        return new(rising, falling, findings.ToImmutable()) { FallsAbove = falls };
    }

    private static bool IsInside(SorptionPoint p) => p.X is > 0 and < 1 && IsAmount(p);

    // Below zero as well: an offset is small, what is larger than any uptake is none.
    private static bool IsAmount(SorptionPoint p) => Math.Abs(p.Amount) <= Nitrogen.LargestUptakeStp / Nitrogen.StpPerMmol;

    private static ImmutableArray<SorptionPoint> Strictly(SorptionPoint[] points, int way)
    {
        var kept = ImmutableArray.CreateBuilder<SorptionPoint>();
        foreach (var p in points)
        {
            if (kept.Count == 0 || way * (p.X - kept[^1].X) > 0)
                kept.Add(p);
        }

        return kept.ToImmutable();
    }

    private static double? Fall(ImmutableArray<SorptionPoint> rising)
    {
        if (rising.IsEmpty)
            return null;
        var largest = rising.Max(p => p.Amount);
        for (var i = 1; i < rising.Length; i++)
        {
            if (rising[i].Amount < rising[i - 1].Amount - LargestFall * largest)
                return rising[i - 1].X;
        }

        return null;
    }

    /// <summary>Amount at a relative pressure, straight between neighbours, mmol/g; null outside the branch.</summary>
    /// <param name="branch">A branch, rising or falling.</param>
    /// <param name="x">Relative pressure; no unit.</param>
    public static double? At(ImmutableArray<SorptionPoint> branch, double x)
    {
        for (var i = 1; i < branch.Length; i++)
        {
            var (a, b) = branch[i - 1].X < branch[i].X ? (branch[i - 1], branch[i]) : (branch[i], branch[i - 1]);
            if (a.X <= x && x <= b.X)
                return a.Amount + (x - a.X) / (b.X - a.X) * (b.Amount - a.Amount);
        }

        return null;
    }
}
