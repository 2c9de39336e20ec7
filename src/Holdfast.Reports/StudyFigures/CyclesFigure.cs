using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Regeneration;
using Holdfast.Reports.Figures;
using Holdfast.Statistics;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Uptake over sorption and elution cycles with the straight trend and the share that must be kept, and what the eluent took off beside it.</summary>
internal sealed class CyclesFigure : IStudyFigure
{
    private const int Steps = 40;

    public int Place => 65;

    public IEnumerable<Figure> Of(Dossier dossier) => ReuseStudy.Of(dossier.Evidence).Series.Select(s => One(s, dossier));

    private static Figure One(ReuseSeries series, Dossier dossier)
    {
        var x = new Axis("cycle", null, "cycle") { WholeNumbers = true, Min = 0.5, Max = series.Cycles[^1].Number + 0.5 };
        var vessels = series.Cycles.SelectMany(c => c.Vessels.Select(v => (c.Number, Vessel: v))).ToArray();
        var first = series.Cycles[0].Vessels.Average(v => v.Uptake.Value);
        var margin = dossier.Evidence.Margin("retention", 100 * CycleEvidence.DefaultRetention, 100, "%");
        var share = margin.Unit is "" or "1" ? margin.Low : margin.Low / 100;
        var top = 1.1 * vessels.Max(v => Math.Max(v.Vessel.Uptake.Value, v.Vessel.Eluted ?? 0));
        var uptake = new Panel(x, new Axis("q", "mg g^-1", "uptake") { Min = 0, Max = top },
        [
            .. Trend(vessels.Select(v => (double)v.Number).ToArray(), vessels.Select(v => v.Vessel.Uptake.Value).ToArray()),
            new ReferenceLine(AxisName.Y, share * first, RichText.Literal(FormattableString.Invariant($"{100 * share:0} % of cycle 1"))),
            new Marks([.. vessels.Select(v => new Mark(v.Number, v.Vessel.Uptake.Value) { Id = v.Vessel.Vessel.Code, YBar = StudyFigure.Bar(v.Vessel.Uptake) })]),
        ]);
        var off = vessels.Where(v => v.Vessel.Eluted is not null).ToArray();
        var mass = series.Cycles.All(c => c.MassIsKnown);
        return new Figure(
            StudyFigure.Id("cycles", series.Name),
            $"Uptake over cycles, series {series.Name}",
            FormattableString.Invariant($"Uptake in {series.Cycles.Length} cycles, {first:0.00} mg/g in the first and {series.Cycles[^1].Vessels.Average(v => v.Uptake.Value):0.00} mg/g in the last; the dashed line is the share of the first that must be kept."),
            off.Length == 0 ? [uptake]
                : [uptake, new Panel(x, new Axis("q_des", "mg g^-1", "eluted amount") { Min = 0, Max = top }, [new Marks([.. off.Select(v => new Mark(v.Number, v.Vessel.Eluted!.Value) { Id = v.Vessel.Vessel.Code })]) { Slot = 1 }])])
        {
            Notes =
            [
                "Marks: single vessels; bars: 95 % interval of each vessel from the propagated uncertainty. Line and band: straight trend with 95 % confidence, over the cycles measured only.",
                mass ? "Uptake on the mass present, weighed in every cycle." : "Uptake on the mass of the first cycle: the powder was not weighed again, so lost powder looks like lost capacity.",
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }

    private static Layer[] Trend(double[] cycles, double[] uptakes)
    {
        if (cycles.Distinct().Count() < 3 || cycles.Length < 3)
            return [];
        var line = PolynomialFit.Of(cycles, uptakes);
        if (line.DegreesOfFreedom < 1)
            return [];
        var t = StudentDistribution.TwoSided(0.95, line.DegreesOfFreedom);
        var (low, high) = (cycles.Min(), cycles.Max());
        var places = Enumerable.Range(0, Steps + 1).Select(i => low + (high - low) * i / Steps).ToArray();
        return
        [
            new Band([.. places.Select(c => (c, line.At(c) - t * line.UncertaintyAt(c), line.At(c) + t * line.UncertaintyAt(c)))]) { Slot = 2 },
            new ModelCurve([.. places.Select(c => (c, line.At(c)))], low, high) { Slot = 2 },
        ];
    }
}
