using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;
using Holdfast.Reports.Trails;

namespace Holdfast.Techniques.Particles;

/// <summary>Mean and median of particle sizes: "mean:parent@length", "d50:parent@length".</summary>
internal sealed class SizeNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
        => ParticleStudy.Of(evidence).Lists.Where(l => l.MeanU is not null).SelectMany(l => new[] { Mean(l), Median(l) });

    /// <summary>Address of a number of a list.</summary>
    /// <param name="what">"mean" or "d50".</param>
    /// <param name="list">The list.</param>
    public static string Address(string what, SizeList list) => $"{what}:{list.Powder}@{list.Measurand}";

    private static NumberTrail Mean(SizeList list)
    {
        var address = Address("mean", list);
        var mean = list.Statistics.Summary.MeanEstimate().Value!;
        Measured value = Measured.From(mean.Value, new Source(address, "scatter of the particles", mean.StandardError, mean.DegreesOfFreedom, Evaluation.Repetition, Unit: list.Unit));
        if (list.Unit.Length > 0)
            value *= Measured.From(1, new Source("scale:" + list.Powder, "scale bar, not calibrated (assumed)", ScaleBar.Uncalibrated));
        return new(address, $"mean {list.Measurand} of {list.Powder}", value, list.Unit, "mean by number × scale", Inputs(list), []);
    }

    private static NumberTrail Median(SizeList list)
    {
        var address = Address("d50", list);
        var u = list.D50 is { } interval ? interval.Half / Statistics.NormalDistribution.Quantile(0.975) : 0;
        return new(
            address, $"median {list.Measurand} of {list.Powder}", Measured.From(list.Statistics.Summary.Median, new Source(address, "resampled particles or images", u, Unit: list.Unit)), list.Unit,
            "size below which half of the particles lie, by number", Inputs(list), []);
    }

    private static System.Collections.Immutable.ImmutableArray<TrailInput> Inputs(SizeList list)
        =>
        [
            .. list.Measurements.Select(m => new TrailInput(list.Measurand, list.Statistics.Summary.Mean, list.Unit, $"{m.Id}, {m.Origin}, {m.Rows().ToString(CultureInfo.InvariantCulture)} particles")),
            .. list.Measurements.SelectMany(m => m.Settings.Where(s => s.Name.Contains(ParticleFiles.Corrected, StringComparison.Ordinal))).Select(s => new TrailInput(s.Name, s.Value ?? 0, s.Unit, $"{s.Written}, as answered")),
        ];
}
