using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;
using Holdfast.Statistics;
using Holdfast.Studies;

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

    private static ParticleStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        var found = study.Measurements.Where(m => m.Technique == ParticleFiles.TechniqueName && !study.IsStruck(m))
            .SelectMany(m => m.Columns.Where(c => c.Numbers is not null && c.Name != ParticleFiles.FileRow).Select(c => (Measurement: m, Column: c)))
            .GroupBy(c => (Powder: c.Measurement.Sample.ToUpperInvariant(), c.Column.Name));
        return new([.. found.Select(g => One([.. g])).OfType<SizeList>()]);
    }

    private static SizeList? One((Measurement Measurement, MeasuredColumn Column)[] parts)
    {
        var unit = parts[0].Column.Unit;
        var particles = parts.SelectMany(p => Particles(p.Measurement, p.Column, unit)).ToImmutableArray();
        if (particles.IsEmpty)
            return null;
        var statistics = SizeStatistics.Of([.. particles.Select(p => p.Size)]);
        var images = SizeComparison.Images(particles);
        var name = parts[0].Measurement.Sample;
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

        return new(name, parts[0].Column.Name, unit, [.. parts.Select(p => p.Measurement).Distinct()], particles, statistics, images,
            statistics.Summary.N > 1 ? SizeBootstrap.Quantile(particles, 0.5, Seed) : null, statistics.Summary.N > 1 ? SizeBootstrap.Quantile(particles, 0.9, Seed) : null, [.. findings]);
    }

    private static IEnumerable<(double Size, string? Image)> Particles(Measurement measurement, MeasuredColumn column, string unit)
    {
        var rows = measurement.Column(ParticleFiles.FileRow)?.Numbers;
        var images = measurement.Column(ParticleFiles.Image)?.Words;
        var factor = measurement.Setting("scale")?.Value ?? 1;
        var same = column.Unit.Length == 0 || column.Unit == unit;
        for (var i = 0; i < column.Numbers!.Value.Length; i++)
        {
            var size = column.Numbers.Value[i];
            if (rows?[i] is { } row && measurement.Setting(column.Name + ParticleFiles.Corrected + row.ToString(CultureInfo.InvariantCulture)) is { } corrected)
                size = corrected.Value;
            if (size is > 0 && double.IsFinite(size.Value))
            {
                var known = (column.Unit.Length > 0 ? factor : 1) * size.Value;
                yield return (same ? known : Unit.Parse(column.Unit).Convert(known, Unit.Parse(unit)), images?[i] is { Length: > 0 } image ? image : null);
            }
        }
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

/// <summary>The sizes of one powder.</summary>
/// <param name="Powder">Its name.</param>
/// <param name="Measurand">What was measured: "length", "diameter", "aspect".</param>
/// <param name="Unit">Unit of the sizes; empty for a number without one.</param>
/// <param name="Measurements">What was taken in.</param>
/// <param name="Particles">Sizes with their images.</param>
/// <param name="Statistics">Their statistics.</param>
/// <param name="Images">Different images; 0 where they are not recorded.</param>
/// <param name="D50">Interval of the median, resampled; null for one particle.</param>
/// <param name="D90">Interval of the size below which nine of ten lie, resampled; null for one particle.</param>
/// <param name="Findings">Caveats.</param>
public sealed record SizeList(
    string Powder, string Measurand, string Unit, ImmutableArray<Measurement> Measurements, ImmutableArray<(double Size, string? Image)> Particles, SizeStatistics Statistics, int Images,
    Interval? D50, Interval? D90, ImmutableArray<Finding> Findings)
{
    /// <summary>Standard uncertainty of the mean with that of an uncalibrated scale, in the unit of the sizes; null without scatter.</summary>
    public double? MeanU => Statistics.Summary.MeanEstimate().Value is { } mean ? Unit.Length > 0 ? ScaleBar.Combine(mean.Value, mean.StandardError, ScaleBar.Uncalibrated) : mean.StandardError : null;
}
