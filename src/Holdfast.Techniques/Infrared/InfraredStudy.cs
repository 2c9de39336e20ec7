using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Infrared;
using Holdfast.Studies;

namespace Holdfast.Techniques.Infrared;

/// <summary>The infrared spectra of a study with their bands and what each may be. Struck ones are left out.</summary>
/// <param name="Spectra">One for each measurement, in the order they came.</param>
public sealed record InfraredStudy(ImmutableArray<MeasuredSpectrum> Spectra)
{
    private static readonly Analysis<InfraredStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static InfraredStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>Spectra of a powder that can be read, in the order they came.</summary>
    /// <param name="powder">Its name; case does not count.</param>
    public ImmutableArray<MeasuredSpectrum> For(string? powder)
        => [.. Spectra.Where(s => s.Spectrum is not null && string.Equals(s.Powder, powder, StringComparison.OrdinalIgnoreCase))];

    private static InfraredStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        Measurement[] all = [.. study.Measurements.Where(m => m.Technique == InfraredFiles.TechniqueName && !study.IsStruck(m))];
        return new([.. all.Select(m => One(m, all.Count(o => o.Sample == m.Sample) > 1))]);
    }

    private static MeasuredSpectrum One(Measurement measurement, bool several)
    {
        var name = several ? $"{measurement.Sample} ({measurement.Id})" : measurement.Sample;
        var path = measurement.Setting(InfraredFiles.Path)?.Written;
        if (measurement.Column(InfraredFiles.Wavenumber) is not { Numbers: { } x } axis || measurement.Column(InfraredFiles.Ordinate)?.Numbers is not { } y || measurement.Setting(InfraredFiles.Scale) is not { } scale)
            return new(measurement, name, path, null, [], []);
        var outcome = InfraredSpectrum.Of(
            x.Zip(y).Where(p => p.First is > 0 && p.Second is not null).Select(p => (InfraredFiles.ToWavenumber(p.First!.Value, axis.Unit), p.Second!.Value)),
            InfraredFiles.ScaleOf(scale.Written), measurement.Setting(InfraredFiles.Resolution)?.Value, path == InfraredFiles.Reflected);
        if (outcome.Value is not { } spectrum)
            return new(measurement, name, path, null, [], [.. outcome.Findings]);
        var bands = GroupPossibility.Of(spectrum, BandSearch.Of(spectrum));
        return new(measurement, name, path, spectrum, [.. bands.Select(b => new NamedBand(b.Band, [.. AirBands.For(b.Band)], [.. b.Possibilities]))], [.. outcome.Findings]);
    }
}

/// <summary>One spectrum of a powder.</summary>
/// <param name="Measurement">What was taken in.</param>
/// <param name="Name">The powder, with the measurement where there are several of it.</param>
/// <param name="Path">"total reflection" or "transmission"; null where nobody said.</param>
/// <param name="Spectrum">As absorbance; null where it cannot be one.</param>
/// <param name="Bands">Its bands, from low to high wavenumbers.</param>
/// <param name="Findings">Caveats.</param>
public sealed record MeasuredSpectrum(
    Measurement Measurement, string Name, string? Path, InfraredSpectrum? Spectrum, ImmutableArray<NamedBand> Bands, ImmutableArray<Finding> Findings)
{
    /// <summary>The powder.</summary>
    public string Powder => Measurement.Sample;

    /// <summary>The band nearest to a wavenumber, no farther from it than 25 cm⁻¹; null for none.</summary>
    /// <param name="wavenumber">cm⁻¹.</param>
    public NamedBand? Near(double wavenumber)
        => Bands.Where(b => Math.Abs(b.Band.Wavenumber - wavenumber) <= BandShift.SameBandWithin).MinBy(b => Math.Abs(b.Band.Wavenumber - wavenumber));
}

/// <summary>A band with all that it may be.</summary>
/// <param name="Band">The band.</param>
/// <param name="Air">What else than the powder it may be.</param>
/// <param name="Possibilities">Groups it is consistent with, the likeliest first.</param>
public sealed record NamedBand(Band Band, ImmutableArray<AirBands> Air, ImmutableArray<GroupPossibility> Possibilities);
