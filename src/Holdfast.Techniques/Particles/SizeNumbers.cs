using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Trails;

namespace Holdfast.Techniques.Particles;

/// <summary>Mean, D10, median and D90 of particle sizes: "mean:parent@length", "d50:parent@length".</summary>
internal sealed class SizeNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
        => ParticleStudy.Of(evidence).Lists.Where(l => l.MeanU is not null).SelectMany(l => new[]
        {
            Mean(l), Quantile(l, "d10", "D10 of the", l.D10!), Quantile(l, "d50", "median", l.D50!), Quantile(l, "d90", "D90 of the", l.D90!),
        });

    /// <summary>Address of a number of a list.</summary>
    /// <param name="what">"mean", "d10", "d50" or "d90".</param>
    /// <param name="list">The list.</param>
    public static string Address(string what, SizeList list) => $"{what}:{list.Powder}@{list.Measurand}";

    private static NumberTrail Mean(SizeList list)
    {
        var mean = list.Mean!;
        var address = Address("mean", list);
        return new(
            address, $"mean {list.Measurand} of {list.Powder}",
            Whole(list, Measured.From(mean.Value, new Source(address, mean.N < list.Particles.Length ? "scatter of the images" : "scatter of the particles", mean.StandardError, mean.DegreesOfFreedom, Evaluation.Repetition, Unit: list.Unit))), list.Unit, "mean by number × scale", Inputs(list), []);
    }

    private static NumberTrail Quantile(SizeList list, string what, string title, SizeQuantile found)
    {
        var address = Address(what, list);
        return new(
            address, $"{title} {list.Measurand} of {list.Powder}", Whole(list, Measured.From(found.Value, new Source(address, "resampled particles or images", found.SamplingU, found.DegreesOfFreedom, Evaluation.Repetition, Unit: list.Unit))), list.Unit,
            "size below which that share of the particles lies, by number", Inputs(list), []);
    }

    // What is common to all particles and does not shrink with their number.
    private static Measured Whole(SizeList list, Measured value)
    {
        if (list.ObserverU > 0)
            value += Measured.From(0, new Source("observers:" + list.Powder, "differences between observers", list.ObserverU, Unit: list.Unit));
        if (list.ScaleU > 0)
            value *= Measured.From(1, new Source("scale:" + list.Powder, list.Measurements.All(m => m.Technique == ParticleFiles.TechniqueName) ? "scale bar, not calibrated (assumed)" : "scale: the bar, reading it, and what contradicts it", list.ScaleU));
        return value;
    }

    private static System.Collections.Immutable.ImmutableArray<TrailInput> Inputs(SizeList list)
        =>
        [
            .. list.Measurements.Select(m => new TrailInput(list.Measurand, list.Statistics.Summary.Mean, list.Unit, $"{m.Id}, {m.Origin}, {ParticleStudy.Count(m).ToString(CultureInfo.InvariantCulture)} particles")),
            .. list.Measurements.SelectMany(m => m.Settings.Where(s => s.Name.Contains(ParticleFiles.Corrected, StringComparison.Ordinal))).Select(s => new TrailInput(s.Name, s.Value ?? 0, s.Unit, $"{s.Written}, as answered")),
        ];
}
