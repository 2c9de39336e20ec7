using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Scaleup;

namespace Holdfast.Reports.Trails;

/// <summary>Cost per gram removed, one for each claim that names its prices, under the claim's id: "cost:low-cost-1".</summary>
internal sealed class CostNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
    {
        var rule = new LowCost().Id;
        return evidence.Study.Claims.Where(c => c.Rule == rule)
            .Select(c => One(evidence, new Claim(c.Id, c.Rule, c.Parameters, c.Wording, Stated: true)))
            .OfType<NumberTrail>();
    }

    private static NumberTrail? One(Evidence evidence, Claim claim)
    {
        if (claim.In("c0", "mg/L") is not { } c0 || claim.In("limit", "mg/L") is not { } limit || !(limit > 0 && limit < c0) || StagePlans.Isotherm(evidence, claim.Words("isotherm")) is not { } isotherm)
            return null;
        var series = isotherm.Series.Series.Name;
        var (lowest, highest) = StagePlans.Measured(isotherm.Fit);
        if (Stages.Of(isotherm.Fit, "isotherm:" + series, c0, limit, lowest, highest).Value is not { Single: var dose } || LowCost.CostOf(claim, dose) is not { } cost)
            return null;
        var plan = StagePlans.Of(evidence).Plans.FirstOrDefault(p => p.Series == series && p.Stages.Inlet.Value.Equals(c0) && p.Stages.Target.Equals(limit));
        TrailInput?[] inputs =
        [
            new("C0", c0, "mg/L", "as the claim states it"), new("C", limit, "mg/L", "as the claim states it"),
            new("m/V", dose, "g/L", $"one stage by the isotherm of {series}", plan is null ? null : "m1:" + TreatmentNumbers.Name(plan)),
            Stated("price", cost.Price, "1/kg"), Stated("uses", cost.Uses, ""), Stated("disposal", cost.Disposal, "1/kg"),
            Stated("eluent", cost.Eluent, "L/m^3"), Stated("eluent-price", cost.EluentPrice, "1/L"), Stated("eluent-uses", cost.EluentUses, ""),
            Stated("energy", cost.Energy, "1/m^3"), Stated("labour", cost.Labour, "1/m^3"),
        ];
        return new(
            "cost:" + claim.Id, "cost per gram removed, to first order; the claim is judged by draws over the ranges", cost.PerGram(c0 - limit),
            (claim.Words("currency") is { Length: > 0 } currency ? currency : "currency units") + " per g",
            "(m/V·(price/uses + disposal) + eluent·eluent price/eluent uses + energy + labour)/(C0 − C)", [.. inputs.OfType<TrailInput>()], DerivedTrails.Readings(evidence, isotherm.Fit.Points.Ids))
        {
            Samples = [.. isotherm.Fit.Points.Ids],
            Fit = DerivedTrails.Fit(isotherm.Fit, "Ce", "q", id => "q:" + id),
        };

        TrailInput? Stated(string name, Measured value, string unit)
            => claim.Words(name) is { } words ? new(name, value, unit, $"range in the claim: {words}") : null;
    }
}
