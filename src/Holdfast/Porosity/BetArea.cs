using System.Collections.Immutable;
using System.Globalization;

namespace Holdfast.Porosity;

/// <summary>
/// The BET area of an adsorption branch: every window of consecutive points is tried, those that meet all criteria are the accepted ones, and the longest of them gives
/// the area. Their spread says how much the choice of the window matters.
/// </summary>
/// <remarks>
/// The choice is automatic and shown because 61 laboratories gave a wide range of areas for the same isotherms (J. W. M. Osterrieth et al., Adv. Mater. 34 (2022) 2201502,
/// abstract). The criteria make it reproducible, not true: with micropores the value is an apparent area.
/// </remarks>
public sealed record BetArea
{
    /// <summary>Fewest points of a window.</summary>
    public const int FewestPoints = 5;

    /// <summary>Points from which a window is well fixed.</summary>
    public const int EnoughPoints = 10;

    /// <summary>Highest p/p0 of a window; no unit.</summary>
    public const double UpperEnd = 0.5;

    /// <summary>Below this C there is no knee and no area; no unit.</summary>
    public const double NoKnee = 2;

    /// <summary>Below this C the full layer is poorly defined; no unit.</summary>
    public const double WeakKnee = 20;

    /// <summary>Above this C micropores or special sites are likely; no unit (from memory).</summary>
    public const double StrongSites = 200;

    /// <summary>Below this area of the whole sample nothing is said, m².</summary>
    public const double SmallestTotal = 1;

    /// <summary>Below this area of the whole sample its uncertainty grows, m².</summary>
    public const double SmallTotal = 10;

    /// <summary>Ends of the window that is usual for powders without micropores; no unit (IUPAC 2015, ISO 9277; from memory).</summary>
    public const double FixedFrom = 0.05, FixedTo = 0.30;

    private BetArea(ImmutableArray<BetWindow> windows) => Windows = windows;

    /// <summary>Every window that was tried.</summary>
    public ImmutableArray<BetWindow> Windows { get; }

    /// <summary>The accepted windows.</summary>
    public ImmutableArray<BetWindow> Accepted { get; private init; } = [];

    /// <summary>The chosen window; null where none is accepted or nothing can be said.</summary>
    public BetWindow? Chosen { get; private init; }

    /// <summary>The window that comes nearest where none is accepted; it gives no area.</summary>
    public BetWindow? Closest { get; private init; }

    /// <summary>The line over the usual window, 0.05 to 0.30; null with fewer than three points there.</summary>
    public BetWindow? Fixed { get; private init; }

    /// <summary>Smallest area of the accepted windows, m²/g.</summary>
    public double Lowest => Accepted.Min(w => w.Area);

    /// <summary>Largest area of the accepted windows, m²/g.</summary>
    public double Highest => Accepted.Max(w => w.Area);

    /// <summary>Standard uncertainty by the choice of the window, m²/g: half the accepted range over √3.</summary>
    public double WindowU => (Highest - Lowest) / 2 / Math.Sqrt(3);

    /// <summary>True where the value is an apparent area: micropores fill at the pressures of the line.</summary>
    public bool IsApparent => Chosen?.C > StrongSites;

    /// <summary>What must be said beside it.</summary>
    public ImmutableArray<Finding> Findings { get; private init; } = [];

    /// <summary>Works it out.</summary>
    /// <param name="adsorption">Adsorption branch, p/p0 strictly rising between 0 and 1.</param>
    /// <param name="mass">Mass of the sample, g; null where it is not known.</param>
    public static BetArea Of(ImmutableArray<SorptionPoint> adsorption, double? mass = null)
    {
        var within = adsorption.Count(p => p.X <= UpperEnd);
        var windows = ImmutableArray.CreateBuilder<BetWindow>();
        for (var first = 0; first + FewestPoints <= within; first++)
        {
            for (var points = FewestPoints; first + points <= within; points++)
                windows.Add(BetWindow.Of(adsorption, first, points));
        }

        var all = windows.ToImmutable();
        ImmutableArray<BetWindow> accepted = [.. all.Where(w => w.IsConsistent)];
        var usual = Usual(adsorption);
        if (accepted.IsEmpty)
        {
            return new(all)
            {
                Fixed = usual,
                Closest = all.OrderByDescending(Met).ThenByDescending(w => w.Points).ThenBy(w => Math.Abs(w.Mismatch ?? double.MaxValue)).FirstOrDefault(),
                Findings = [all.IsEmpty ? PorosityFindings.TooFewForBet(within) : PorosityFindings.NoConsistentWindow(all.Length, Failing(all)), .. Usual(usual)],
            };
        }

        var chosen = accepted.OrderByDescending(w => w.Points).ThenBy(w => Math.Abs(w.Mismatch!.Value)).First();
        var total = mass * chosen.Area;
        Finding? refused = chosen.C < NoKnee ? PorosityFindings.NoKnee(chosen.C) : total < SmallestTotal ? PorosityFindings.UptakeTooSmall(total.Value) : null;
        return new(all)
        {
            Accepted = accepted,
            Chosen = refused is null ? chosen : null,
            Closest = refused is null ? null : chosen,
            Fixed = usual,
            Findings = refused is not null ? [refused] :
            [
                .. chosen.Points < EnoughPoints ? [PorosityFindings.FewPoints(chosen.Points)] : Array.Empty<Finding>(),
                .. chosen.C < WeakKnee ? [PorosityFindings.WeakKnee(chosen.C)] : Array.Empty<Finding>(),
                .. chosen.C > StrongSites ? [PorosityFindings.StrongSites(chosen.C)] : Array.Empty<Finding>(),
                .. total < SmallTotal ? [PorosityFindings.SmallTotal(total.Value)] : Array.Empty<Finding>(),
                .. Usual(usual),
            ],
        };
    }

    /// <summary>Area from one point, m²/g: a quick check, low by (1 − x)/(1 + (C − 1)x).</summary>
    /// <param name="point">A point near p/p0 0.3.</param>
    public static double SinglePoint(SorptionPoint point) => Nitrogen.AreaPerMmol * point.Amount * (1 - point.X);

    /// <summary>How many windows pass each criterion, in words of the trade.</summary>
    public ImmutableArray<(string Criterion, int Passing)> Passing =>
    [
        ("n(1 − x) rises", Windows.Count(w => w.Rises)),
        ("C above 0", Windows.Count(w => w.IsPositive)),
        ("full layer inside the window", Windows.Count(w => w.HoldsMonolayer)),
        (string.Create(CultureInfo.InvariantCulture, $"its pressure within {100 * BetWindow.LargestMismatch:0} % of 1/(√C + 1)"), Windows.Count(w => w.Matches)),
        (string.Create(CultureInfo.InvariantCulture, $"R² at least {BetWindow.SmallestR2}"), Windows.Count(w => w.IsLine)),
    ];

    private static BetWindow? Usual(ImmutableArray<SorptionPoint> branch)
    {
        var first = branch.TakeWhile(p => p.X < FixedFrom).Count();
        var points = branch.Skip(first).TakeWhile(p => p.X <= FixedTo).Count();
        return points < 3 ? null : BetWindow.Of(branch, first, points);
    }

    private static Finding[] Usual(BetWindow? usual) => usual is { IsPositive: false } ? [PorosityFindings.FixedRangeRefused(usual.C)] : [];

    private static int Met(BetWindow w) => (w.Rises ? 1 : 0) + (w.IsPositive ? 1 : 0) + (w.HoldsMonolayer ? 1 : 0) + (w.Matches ? 1 : 0) + (w.IsLine ? 1 : 0);

    private static string Failing(ImmutableArray<BetWindow> all)
        => !all.Any(w => w.Rises) ? "n(1 − x) rises over none"
            : !all.Any(w => w is { Rises: true, IsPositive: true }) ? "C is negative in each where n(1 − x) rises"
            : !all.Any(w => w is { Rises: true, IsPositive: true, HoldsMonolayer: true }) ? "the full layer lies outside each"
            : !all.Any(w => w is { Rises: true, IsPositive: true, HoldsMonolayer: true, Matches: true }) ? "the full layer is not where C puts it"
            : "the points lie on no line";
}
