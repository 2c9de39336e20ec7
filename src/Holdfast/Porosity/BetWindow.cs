using System.Collections.Immutable;

namespace Holdfast.Porosity;

/// <summary>The BET line over one window of consecutive adsorption points, and how it stands against the criteria of consistency.</summary>
/// <remarks>
/// y = x/[n(1 − x)] = i + s·x by ordinary least squares; monolayer n_m = 1/(s + i), C = 1 + s/i (S. Brunauer, P. H. Emmett, E. Teller, J. Am. Chem. Soc. 60
/// (1938) 309; from memory). Criteria: J. Rouquerol, P. Llewellyn, F. Rouquerol, Stud. Surf. Sci. Catal. 160 (2007) 49, taken over by IUPAC 2015 and ISO 9277
/// (from memory).
/// </remarks>
public sealed record BetWindow
{
    /// <summary>Smallest R² of a line; no unit.</summary>
    public const double SmallestR2 = 0.995;

    /// <summary>Largest relative distance of 1/(√C + 1) from the pressure of the full layer; no unit.</summary>
    public const double LargestMismatch = 0.2;

    private BetWindow()
    {
    }

    /// <summary>Place of its first point in the branch, from 0.</summary>
    public int First { get; private init; }

    /// <summary>Number of points.</summary>
    public int Points { get; private init; }

    /// <summary>p/p0 of its first point; no unit.</summary>
    public double From { get; private init; }

    /// <summary>p/p0 of its last point; no unit.</summary>
    public double To { get; private init; }

    /// <summary>Slope of the line, g/mmol.</summary>
    public double Slope { get; private init; }

    /// <summary>Intercept of the line, g/mmol.</summary>
    public double Intercept { get; private init; }

    /// <summary>Amount of a full layer, mmol/g.</summary>
    public double Monolayer { get; private init; }

    /// <summary>Standard uncertainty of the monolayer by the scatter about the line, mmol/g.</summary>
    public double MonolayerU { get; private init; }

    /// <summary>The constant C; no unit.</summary>
    public double C { get; private init; }

    /// <summary>Standard uncertainty of C by the scatter about the line; no unit.</summary>
    public double CU { get; private init; }

    /// <summary>Coefficient of determination; no unit.</summary>
    public double R2 { get; private init; }

    /// <summary>p/p0 at which the measured isotherm first reaches the monolayer; null where it does not.</summary>
    public double? AtMonolayer { get; private init; }

    /// <summary>c1: n(1 − x) rises from point to point.</summary>
    public bool Rises { get; private init; }

    /// <summary>c2: C and the monolayer are above 0.</summary>
    public bool IsPositive => C > 0 && Monolayer > 0;

    /// <summary>c3: the pressure of the full layer lies inside the window.</summary>
    public bool HoldsMonolayer => AtMonolayer is { } at && at >= From && at <= To;

    /// <summary>Relative distance of 1/(√C + 1) from the pressure of the full layer; null where there is none.</summary>
    public double? Mismatch => AtMonolayer is { } at && C > 0 ? (1 / (Math.Sqrt(C) + 1) - at) / at : null;

    /// <summary>c4: that distance is small.</summary>
    public bool Matches => Mismatch is { } m && Math.Abs(m) <= LargestMismatch;

    /// <summary>True when the points lie on a line.</summary>
    public bool IsLine => R2 >= SmallestR2;

    /// <summary>True when all criteria are met.</summary>
    public bool IsConsistent => Rises && IsPositive && HoldsMonolayer && Matches && IsLine;

    /// <summary>Specific area, m²/g.</summary>
    public double Area => Monolayer * Nitrogen.AreaPerMmol;

    /// <summary>Standard uncertainty of the area by the scatter about the line, m²/g.</summary>
    public double AreaU => MonolayerU * Nitrogen.AreaPerMmol;

    /// <summary>Fits one window.</summary>
    /// <param name="branch">Adsorption branch, p/p0 strictly rising between 0 and 1.</param>
    /// <param name="first">Place of its first point, from 0.</param>
    /// <param name="points">Number of points, 3 or more.</param>
    public static BetWindow Of(ImmutableArray<SorptionPoint> branch, int first, int points)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 3);
        double meanX = 0, meanY = 0;
        var y = new double[points];
        var rises = true;
        for (var k = 0; k < points; k++)
        {
            var p = branch[first + k];
            y[k] = p.X / (p.Amount * (1 - p.X));
            meanX += p.X / points;
            meanY += y[k] / points;
            if (k > 0 && !(p.Amount * (1 - p.X) > branch[first + k - 1].Amount * (1 - branch[first + k - 1].X)))
                rises = false;
        }

        double sxx = 0, sxy = 0, syy = 0;
        for (var k = 0; k < points; k++)
        {
            var (dx, dy) = (branch[first + k].X - meanX, y[k] - meanY);
            sxx += dx * dx;
            sxy += dx * dy;
            syy += dy * dy;
        }

        var slope = sxy / sxx;
        var intercept = meanY - slope * meanX;
        var rest = Math.Max(0, syy - slope * sxy);
        var variance = rest / (points - 2);
        double vs = variance / sxx, vi = variance * (1.0 / points + meanX * meanX / sxx), cov = -meanX * variance / sxx;
        var monolayer = 1 / (slope + intercept);
        return new()
        {
            First = first,
            Points = points,
            From = branch[first].X,
            To = branch[first + points - 1].X,
            Slope = slope,
            Intercept = intercept,
            Monolayer = monolayer,
            MonolayerU = monolayer * monolayer * Math.Sqrt(Math.Max(0, vs + vi + 2 * cov)),
            C = 1 + slope / intercept,
            CU = Math.Sqrt(Math.Max(0, vs + slope * slope / (intercept * intercept) * vi - 2 * slope / intercept * cov)) / Math.Abs(intercept),
            R2 = syy > 0 ? 1 - rest / syy : 0,
            AtMonolayer = Reaches(branch, monolayer),
            Rises = rises,
        };
    }

    private static double? Reaches(ImmutableArray<SorptionPoint> branch, double amount)
    {
        for (var i = 1; i < branch.Length; i++)
        {
            var (a, b) = (branch[i - 1], branch[i]);
            if (a.Amount < amount && amount <= b.Amount)
                return a.X + (amount - a.Amount) / (b.Amount - a.Amount) * (b.X - a.X);
        }

        return null;
    }
}
