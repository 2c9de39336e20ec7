using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Trails;

/// <summary>Selectivity coefficients: of one vessel with two metals ("alpha:MIX-Zn-1") and the mean over the vessels of a rival ("alpha:Zn").</summary>
internal sealed class MixtureNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
    {
        var metal = evidence.Study.Analyte ?? "analyte";
        foreach (var rival in MixtureStudy.Of(evidence).Rivals)
        {
            foreach (var vessel in rival.Vessels)
                yield return One(evidence, vessel, metal, rival.Metal);
            if (rival.Preference is { } mean)
                yield return Mean(evidence, rival, mean, metal);
        }
    }

    private static NumberTrail One(Evidence evidence, MixtureVessel vessel, string metal, string rival) => new(
        "alpha:" + vessel.Sample.Code, $"selectivity coefficient of {metal} over {rival} in {vessel.Sample.Code}", vessel.Preference, "", $"α = (c0 − c)/c of {metal} over (c0 − c)/c of {rival}, by amount",
        [
            Input(vessel, "c0", vessel.Start, CompetitionProperties.InitialOfEach),
            Input(vessel, $"c({metal})", vessel.AnalyteLeft, CompetitionProperties.AnalyteLeft),
            Input(vessel, $"c({rival})", vessel.RivalLeft, CompetitionProperties.RivalLeft),
        ],
        DerivedTrails.Readings(evidence, [vessel.Sample.Code]))
    {
        Samples = [vessel.Sample.Code],
    };

    private static NumberTrail Mean(Evidence evidence, RivalMetal rival, Statistics.Estimate mean, string metal)
    {
        var address = "alpha:" + rival.Metal;
        string[] samples = [.. rival.Vessels.Select(v => v.Sample.Code)];
        var interval = mean.Interval();
        return new(
            address, $"selectivity coefficient of {metal} over {rival.Metal}", DerivedTrails.Measured(mean, address, $"{mean.Method}, scatter of ln α"), "",
            $"α = exp(mean of ln α); 95 % by t on ln α {InWords.Plain(interval.Low)} to {InWords.Plain(interval.High)}",
            [.. rival.Vessels.Select((v, i) => new TrailInput("α" + (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), v.Preference, "", v.Sample.Code, "alpha:" + v.Sample.Code))],
            DerivedTrails.Readings(evidence, samples))
        {
            Samples = [.. samples],
        };
    }

    private static TrailInput Input(MixtureVessel vessel, string symbol, double value, Property property)
    {
        var fact = vessel.Sample.Fact(property)!;
        return new(symbol, fact.U is { } u and > 0 ? Measured.From(value, new Source(property.Name, property.Title, u)) : value, "mmol/L", fact.Origin.ToString());
    }
}
