using System.Collections.Immutable;
using Holdfast.Claims.Rules;
using Holdfast.Fitting;
using Holdfast.Scaleup;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Doses for the waters and limits that the claims name, in one stage and in two, from the isotherm with the most levels.</summary>
/// <param name="Plans">One for each water and limit, in the order they were named.</param>
/// <param name="Findings">Why a plan could not be made.</param>
public sealed record StagePlans(ImmutableArray<StagePlan> Plans, ImmutableArray<Finding> Findings)
{
    private static readonly Analysis<StagePlans> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static StagePlans Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The isotherm that doses are planned with: the one with the most levels that has a fit with uncertainties; null when there is none.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="series">Name of its series; null to choose.</param>
    public static (FittedSeries Series, FitResult Fit)? Isotherm(Evidence evidence, string? series = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var fitted = evidence.Isotherms
            .Where(i => series is null || string.Equals(i.Series.Name, series, StringComparison.OrdinalIgnoreCase))
            .OrderByDescending(i => i.Series.Levels.Length)
            .FirstOrDefault(i => Best(i) is not null);
        return fitted is null ? null : (fitted, Best(fitted)!);
    }

    /// <summary>Concentrations that an isotherm was measured at, mg/L.</summary>
    /// <param name="fit">Its fit.</param>
    public static (double Lowest, double Highest) Measured(FitResult fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return (fit.Points.X.Where(x => x > 0).DefaultIfEmpty(double.PositiveInfinity).Min(), fit.Points.X.DefaultIfEmpty(0).Max());
    }

    // A curve with an undetermined parameter can have the least AICc; a dose needs one whose covariance exists.
    private static FitResult? Best(FittedSeries fitted)
        => fitted.Fits.Where(f => f.IsFit && f.Aicc is not null && f.Covariance is not null && f.Parameters.All(p => !p.OnBound)).MinBy(f => f.Aicc!.Value);

    private static StagePlans Work(Evidence evidence)
    {
        if (Isotherm(evidence) is not { } chosen)
            return new([], []);
        var (lowest, highest) = Measured(chosen.Fit);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var plans = ImmutableArray.CreateBuilder<StagePlan>();
        foreach (var (water, inlet, limit) in Targets(evidence).Distinct())
        {
            var stages = Stages.Of(chosen.Fit, "isotherm:" + chosen.Series.Series.Name, inlet, limit, lowest, highest);
            findings.AddRange(stages.Findings.Where(f => !findings.Any(k => k.Code == f.Code && k.Sentence == f.Sentence)));
            if (stages.Value is { } found)
                plans.Add(new(water, chosen.Series.Series.Name, chosen.Fit.Card.Name, found));
        }

        return new(plans.ToImmutable(), findings.ToImmutable());
    }

    // What the author says a water must meet, where its concentration before treatment is recorded or said.
    private static IEnumerable<(string Water, double Inlet, double Limit)> Targets(Evidence evidence)
    {
        foreach (var stated in evidence.Study.Claims)
        {
            var claim = new Claim(stated.Id, stated.Rule, stated.Parameters, stated.Wording, Stated: true);
            if (MeetsLimit.LimitOf(claim, evidence.Study.Analyte ?? "").Limit is not { } limit)
                continue;
            var series = evidence.SeriesNamed(claim.Words("series"));
            var inlet = claim.In("c0", "mg/L") ?? series?.Vessels.Select(v => v.Start?.Value).FirstOrDefault(c => c is > 0);
            if (inlet is { } c0 && c0 > limit && (series is null || series.Varied is null || series.Varied == BatchProperties.Dose))
                yield return (claim.Words("water") ?? series?.Vessels.Select(v => v.Sample.Words(SampleProperties.Matrix)).FirstOrDefault() ?? "the water", c0, limit);
        }
    }
}

/// <summary>One water and one limit.</summary>
/// <param name="Water">The water.</param>
/// <param name="Series">Series of the isotherm.</param>
/// <param name="Curve">Name of the isotherm.</param>
/// <param name="Stages">The doses, g/L.</param>
public sealed record StagePlan(string Water, string Series, string Curve, Stages Stages);
