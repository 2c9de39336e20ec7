using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Techniques.Micrographs;

namespace Holdfast.Techniques.Particles;

/// <summary>The particle sizes of a study by powder and by what was measured. Struck measurements are left out.</summary>
/// <param name="Lists">One for each powder and measurand, in the order they came.</param>
public sealed record ParticleStudy(ImmutableArray<SizeList> Lists)
{
    private const ulong Seed = 1589;

    private static readonly Analysis<ParticleStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ParticleStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The sizes of a powder, or null.</summary>
    /// <param name="powder">Its name; case does not count.</param>
    /// <param name="measurand">"length"; null for the first.</param>
    public SizeList? For(string? powder, string? measurand = null)
        => Lists.FirstOrDefault(l => string.Equals(l.Powder, powder, StringComparison.OrdinalIgnoreCase) && (measurand is null ? l.Unit.Length > 0 : string.Equals(l.Measurand, measurand, StringComparison.OrdinalIgnoreCase)));

    /// <summary>Particles that a measurement lists, those of a tally by their numbers.</summary>
    /// <param name="measurement">The measurement.</param>
    public static int Count(Measurement measurement)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        return measurement.Column(ParticleFiles.Count)?.Numbers is { } counts ? (int)counts.Sum(c => c ?? 0) : measurement.Rows();
    }

    private static ParticleStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        var listed = study.Measurements.Where(m => m.Technique == ParticleFiles.TechniqueName && !study.IsStruck(m))
            .SelectMany(m => m.Columns.Where(c => c.Numbers is not null && c.Name is not (ParticleFiles.FileRow or ParticleFiles.Count)).Select(c => Listed(m, c)).Concat(Aspects(m)));
        var found = listed.Concat(MicrographStudy.Of(evidence).Pictures.SelectMany(Marked)).GroupBy(p => (Powder: p.Measurement.Sample.ToUpperInvariant(), p.Measurand));
        return new([.. found.Select(g => One([.. g])).OfType<SizeList>()]);
    }

    private static SizeList? One(SizePart[] parts)
    {
        var unit = parts[0].Unit;
        var particles = parts.SelectMany(p => p.In(unit)).ToImmutableArray();
        if (particles.IsEmpty)
            return null;
        var statistics = SizeStatistics.Of([.. particles.Select(p => p.Size)]);
        var images = SizeComparison.Images(particles);
        var name = parts[0].Measurement.Sample;
        var observer = parts.Max(p => p.Factor(unit) * p.ObserverU);
        var findings = new List<Finding>();
        if (statistics.Summary.N < SizeStatistics.Few)
        {
            findings.Add(Finding.Of(ParticleCodes.Few, Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"{name}: {statistics.Summary.N} particles; {SizeStatistics.Few} are usual before a distribution is shown. Count more, chosen at random."), name));
        }

        if (images <= 1 && unit.Length > 0)
        {
            findings.Add(Finding.Of(ParticleCodes.OneImage, Weight.Caution, images == 0
                ? $"{name}: the image of each particle is not recorded. Particles beside each other are alike; give the images."
                : $"{name}: all particles are of one image. Particles beside each other are alike; count in several.", name));
        }

        return new(name, parts[0].Measurand, unit, [.. parts.Select(p => p.Measurement).Distinct()], particles, statistics, images, parts.Max(p => p.ScaleU), observer, [.. findings])
        {
            D10 = Quantile(statistics, particles, 0.1),
            D50 = Quantile(statistics, particles, 0.5),
            D90 = Quantile(statistics, particles, 0.9),
        };
    }

    private static SizeQuantile? Quantile(SizeStatistics statistics, ImmutableArray<(double Size, string? Image)> particles, double share)
        => particles.Length > 1 ? new(statistics.Quantile(share), SizeBootstrap.Quantile(particles, share, Seed), SizeBootstrap.Blocks(particles).Length) : null;

    private static SizePart Listed(Measurement measurement, MeasuredColumn column)
        => new(measurement, column.Name, column.Unit, [.. Particles(measurement, column)], column.Unit.Length > 0 ? ScaleBar.Uncalibrated : 0, 0);

    // What was drawn on a micrograph, once its scale is known: one part for each thing measured.
    private static IEnumerable<SizePart> Marked(Micrograph picture)
    {
        if (picture.Scale is not { } scale)
            return [];
        return picture.Particles.Where(p => p.LeftOut is null).SelectMany(p => p.Sizes()).GroupBy(s => (s.Measurand, s.IsLength)).Select(g => new SizePart(
            picture.Measurement, g.Key.Measurand, g.Key.IsLength ? scale.Unit : "", [.. g.Select(s => (g.Key.IsLength ? s.Value * scale.PerPixel : s.Value, (string?)picture.Measurement.Id))],
            g.Key.IsLength ? scale.RelativeU : 0, g.Key.IsLength ? picture.Readers.OfMean * scale.PerPixel : 0));
    }

    // Length over width of each particle, where the list has both and does not say it itself.
    private static IEnumerable<SizePart> Aspects(Measurement measurement)
    {
        if (measurement.Column("length") is not { Numbers: { } lengths } length || measurement.Column("width") is not { Numbers: not null } width || measurement.Column("aspect") is not null || length.Unit != width.Unit || measurement.Column(ParticleFiles.Count) is not null)
            yield break;
        var images = measurement.Column(ParticleFiles.Image)?.Words;
        yield return new(measurement, "aspect", "",
            [.. Enumerable.Range(0, lengths.Length).Select(i => (Size: SizeOf(measurement, length, i) / SizeOf(measurement, width, i), i)).Where(a => a.Size is { } aspect && SizeStatistics.IsPossible(aspect, null)).Select(a => (a.Size!.Value, images?[a.i] is { Length: > 0 } image ? image : null))], 0, 0);
    }

    private static IEnumerable<(double Size, string? Image)> Particles(Measurement measurement, MeasuredColumn column)
    {
        var images = measurement.Column(ParticleFiles.Image)?.Words;
        var counts = measurement.Column(ParticleFiles.Count)?.Numbers;
        for (var i = 0; i < column.Numbers!.Value.Length; i++)
        {
            if (SizeOf(measurement, column, i) is not { } known)
                continue;

            // A size of a tally stands for as many particles as were counted.
            for (var n = counts is null ? 1 : counts.Value[i] ?? 0; n > 0; n--)
                yield return (known, images?[i] is { Length: > 0 } image ? image : null);
        }
    }

    // The size of a row, corrected and scaled as answered; null for what no particle can be.
    private static double? SizeOf(Measurement measurement, MeasuredColumn column, int row)
    {
        var size = column.Numbers!.Value[row];
        if (measurement.Column(ParticleFiles.FileRow)?.Numbers?[row] is { } line && measurement.Setting(column.Name + ParticleFiles.Corrected + line.ToString(CultureInfo.InvariantCulture)) is { } corrected)
            size = corrected.Value;
        size *= column.Unit.Length > 0 ? measurement.Setting("scale")?.Value ?? 1 : 1;
        return size is { } known && SizeStatistics.IsPossible(known, ParticleFiles.Nanometres(column.Unit)) ? known : null;
    }
}

/// <summary>Codes of what lists of particles say of themselves.</summary>
internal static class ParticleCodes
{
    /// <summary>Too few particles for a distribution.</summary>
    public const string Few = "HF-771";

    /// <summary>All of one image, or images not recorded.</summary>
    public const string OneImage = "HF-772";
}

/// <summary>Sizes of one powder from one measurement.</summary>
/// <param name="Measurement">The list or micrograph.</param>
/// <param name="Measurand">What was measured.</param>
/// <param name="Unit">Unit of the sizes; empty for a number without one.</param>
/// <param name="Sizes">Sizes with their images.</param>
/// <param name="ScaleU">Relative standard uncertainty of the scale; no unit.</param>
/// <param name="ObserverU">Standard uncertainty that observers bring to an average, in <paramref name="Unit"/>.</param>
internal sealed record SizePart(Measurement Measurement, string Measurand, string Unit, ImmutableArray<(double Size, string? Image)> Sizes, double ScaleU, double ObserverU)
{
    /// <summary>What a size is multiplied by to be in another unit of length.</summary>
    /// <param name="unit">The unit.</param>
    public double Factor(string unit) => Unit.Length == 0 || Unit == unit ? 1 : Amounts.Unit.Parse(Unit).Convert(1, Amounts.Unit.Parse(unit));

    /// <summary>The sizes in another unit of length.</summary>
    /// <param name="unit">The unit.</param>
    public IEnumerable<(double Size, string? Image)> In(string unit) => Sizes.Select(s => (s.Size * Factor(unit), s.Image));
}

/// <summary>Size below which a share of the particles lies, by number.</summary>
/// <param name="Value">The size.</param>
/// <param name="Resampled">Its 95 % interval from resampled particles or images, without scale and observer.</param>
/// <param name="Blocks">Particles or images that were drawn.</param>
public sealed record SizeQuantile(double Value, Interval Resampled, int Blocks)
{
    /// <summary>Degrees of freedom of <see cref="SamplingU"/>.</summary>
    public int DegreesOfFreedom => Blocks - 1;

    /// <summary>Standard uncertainty from the particles alone, in the unit of the sizes: by the longer side, since sizes reach farther up than down.</summary>
    public double SamplingU => Math.Max(Resampled.High - Value, Value - Resampled.Low) / StudentDistribution.TwoSided(Resampled.Confidence, DegreesOfFreedom);
}

/// <summary>The sizes of one powder.</summary>
/// <param name="Powder">Its name.</param>
/// <param name="Measurand">What was measured: "length", "diameter", "aspect".</param>
/// <param name="Unit">Unit of the sizes; empty for a number without one.</param>
/// <param name="Measurements">What was taken in.</param>
/// <param name="Particles">Sizes with their images.</param>
/// <param name="Statistics">Their statistics.</param>
/// <param name="Images">Different images; 0 where they are not recorded.</param>
/// <param name="ScaleU">Relative standard uncertainty of the scale, that of the worst image; no unit.</param>
/// <param name="ObserverU">Standard uncertainty that different observers bring to every average, in the unit of the sizes; 0 where one alone measured.</param>
/// <param name="Findings">Caveats.</param>
public sealed record SizeList(
    string Powder, string Measurand, string Unit, ImmutableArray<Measurement> Measurements, ImmutableArray<(double Size, string? Image)> Particles, SizeStatistics Statistics, int Images,
    double ScaleU, double ObserverU, ImmutableArray<Finding> Findings)
{
    /// <summary>Size below which one of ten lies; null for one particle.</summary>
    public SizeQuantile? D10 { get; init; }

    /// <summary>The median; null for one particle.</summary>
    public SizeQuantile? D50 { get; init; }

    /// <summary>Size below which nine of ten lie; null for one particle.</summary>
    public SizeQuantile? D90 { get; init; }

    /// <summary>The mean by number with its standard error by particles or images; null without scatter.</summary>
    public Estimate? Mean { get; } = SizeBootstrap.Mean(Particles);

    /// <summary>Standard uncertainty of the mean with scale and observer, in the unit of the sizes; null without scatter.</summary>
    public double? MeanU => Mean is { } mean ? Whole(mean.Value, mean.StandardError) : null;

    /// <summary>Standard uncertainty of an average or quantile with what is common to all particles: observer and scale.</summary>
    /// <param name="value">The average, in the unit of the sizes.</param>
    /// <param name="sampling">Its standard uncertainty from the particles, same unit.</param>
    public double Whole(double value, double sampling) => ScaleBar.Combine(value, Math.Sqrt(sampling * sampling + ObserverU * ObserverU), ScaleU);
}
