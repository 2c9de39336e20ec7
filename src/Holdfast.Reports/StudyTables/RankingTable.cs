using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Every curve fitted to a series, best first; refused curves stay in with their reason.</summary>
public static class RankingTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["nc"] = "not comparable, since it is no fit or has too few points for its parameters",
        ["nt"] = "not tested, since no two vessels share this abscissa or no level is to spare",
        ["nd"] = "not determined by these data",
    };

    /// <summary>One row a curve.</summary>
    /// <param name="id">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="fits">The fits.</param>
    /// <param name="unit">Unit of the residual standard deviation; null when the fits are weighted by known uncertainties.</param>
    /// <param name="forFiles">True for p values with every digit, as data files want.</param>
    public static Table Of(string id, string caption, IEnumerable<FitResult> fits, string? unit, bool forFiles = false)
    {
        var sorted = Sorted(fits);
        var least = sorted.Where(f => f.IsFit && f.ResidualSd > 0).Select(f => f.ResidualSd!.Value).DefaultIfEmpty(1).Min();
        var places = Math.Clamp(RoundedNumber.DecimalsFor(least), 0, 8);
        var best = sorted.Where(f => f.IsFit && f.Aicc is not null).Select(f => f.Aicc).FirstOrDefault();
        return new Table(
            id,
            caption,
            [
                new Column("curve", "Curve") { NamesRows = true },
                new Column("parameters", RichText.Parse("*p*")) { Spoken = "number of parameters" },
                new Column("n", RichText.Parse("*n*")) { Spoken = "number of vessels" },
                new Column("s", RichText.Parse("*s*")) { Unit = unit, Spoken = "residual standard deviation" },
                new Column("lack_of_fit_p", RichText.Parse("lack of fit *p*")),
                new Column("aicc", "AICc"),
                new Column("delta", "ΔAICc") { Spoken = "AICc less the least" },
                new Column("standing", "How it stands"),
            ],
            [.. sorted.Select(f => Row.Of(
                f.Card.Name,
                new NumberCell(f.P) { Decimals = 0 },
                new NumberCell(f.N) { Decimals = 0 },
                f.IsFit && f.ResidualSd is { } s && double.IsFinite(s) ? new NumberCell(s) { Decimals = places } : new MissingCell("nd"),
                f is { IsFit: true, LackOfFit: { } lof } ? P(lof.Test.P, forFiles) : new MissingCell("nt"),
                f is { IsFit: true, Aicc: { } aicc } && double.IsFinite(aicc) ? new NumberCell(aicc) { Decimals = 1 } : new MissingCell("nc"),
                f.IsFit && f.Aicc - best is { } delta && double.IsFinite(delta) ? new NumberCell(delta) { Decimals = 1 } : new MissingCell("nc"),
                Standing(f, best)))],
            Codes)
        {
            Notes =
            [
                "n counts vessels. AICc counts the error variance as a parameter; differences below 2 tell nothing apart.",
                "A lack of fit p below 0.05 says that the curve misses more than replicate vessels differ among themselves.",
            ],
        };
    }

    /// <summary>Fits in the order of a reader's interest: settled ones by AICc, then the others by name.</summary>
    /// <param name="fits">The fits.</param>
    public static FitResult[] Sorted(IEnumerable<FitResult> fits)
    {
        ArgumentNullException.ThrowIfNull(fits);
        return [.. fits
            .OrderBy(f => f.IsFit ? f.IsExact ? -1 : f.Aicc is null ? 1 : 0 : 2)
            .ThenBy(f => f.IsExact ? f.P : 0)
            .ThenBy(f => f.IsFit ? f.Aicc ?? 0 : 0)
            .ThenBy(f => f.Card.Name, StringComparer.Ordinal)];
    }

    private static Cell P(double p, bool forFiles) => !double.IsFinite(p) ? new MissingCell("nt") : p < 0.001 && !forFiles ? "< 0.001" : new NumberCell(p) { Decimals = 3 };

    private static string Standing(FitResult fit, double? best)
    {
        if (!fit.IsFit)
            return fit.Findings.Count > 0 ? fit.Findings[0].Sentence : Ended(fit.Stop);
        if (fit.IsExact)
            return "every point lies on it: computed, not measured";
        var parts = new List<string>();
        if (fit.Aicc - best is { } delta)
            parts.Add(delta == 0 ? "lowest AICc" : delta < CurveComparison.NotDistinguished ? "not told apart from the lowest" : delta <= 10 ? "weaker" : "left far behind");
        if (fit.LackOfFit is { Test.P: < 0.05 })
            parts.Add("misses the level means");
        if (fit.Parameters.Any(p => p.Profile is { IsClosed: false }))
            parts.Add("an interval is open");
        return string.Join("; ", parts);
    }

    private static string Ended(StopReason stop) => stop switch
    {
        StopReason.IterationLimit => "did not settle",
        StopReason.OnBound => "a parameter ended on its bound",
        StopReason.Plateau => "a parameter ran away without effect",
        StopReason.RankDeficient => "only a combination of its parameters is determined",
        _ => "refused by these data",
    };
}
