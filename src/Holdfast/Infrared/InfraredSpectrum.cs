using System.Globalization;

namespace Holdfast.Infrared;

/// <summary>An infrared spectrum as absorbance on rising wavenumbers, with what it was before and how it was measured.</summary>
public sealed class InfraredSpectrum
{
    /// <summary>Bands above this absorbance are flattened; no unit (common practice: 1.2 to 1.5).</summary>
    public const double FlattenedAbove = 1.2;

    private const int FewestPoints = 25;

    private InfraredSpectrum(double[] wavenumbers, double[] absorbances, OrdinateScale given, double? resolution, bool reflected, int saturated)
    {
        Wavenumbers = wavenumbers;
        Absorbances = absorbances;
        Given = given;
        Resolution = resolution;
        IsReflected = reflected;
        Saturated = saturated;
        double[] steps = [.. wavenumbers.Zip(wavenumbers.Skip(1), (a, b) => b - a).Order()];
        Step = steps[steps.Length / 2];
        Noise = SpectralNoise.Of(wavenumbers, absorbances);
    }

    /// <summary>Wavenumbers, rising, cm⁻¹.</summary>
    public IReadOnlyList<double> Wavenumbers { get; }

    /// <summary>Absorbances at these wavenumbers; no unit.</summary>
    public IReadOnlyList<double> Absorbances { get; }

    /// <summary>What the ordinate was when it came.</summary>
    public OrdinateScale Given { get; }

    /// <summary>Middle distance of neighbouring points, cm⁻¹.</summary>
    public double Step { get; }

    /// <summary>Resolution of the instrument as stated, cm⁻¹; null when nobody said.</summary>
    public double? Resolution { get; }

    /// <summary>True for a spectrum by attenuated total reflection, in which bands at low wavenumbers look too strong.</summary>
    public bool IsReflected { get; }

    /// <summary>Points left out because nothing came through.</summary>
    public int Saturated { get; }

    /// <summary>Standard deviation of the noise in a quiet region; no unit.</summary>
    public double Noise { get; }

    /// <summary>Ends of the infrared, from the far to the near; cm⁻¹ (common practice).</summary>
    public const double LowestWavenumber = 10, HighestWavenumber = 15_000;

    /// <summary>No detector tells a larger absorbance, of either sign; no unit (common practice: 5 to 6 are the limit).</summary>
    public const double LargestAbsorbance = 20;

    /// <summary>Two bands closer than this cannot be told apart: the stated resolution, or two steps where none was stated; cm⁻¹.</summary>
    public double Limit => Resolution is { } stated ? Math.Max(stated, Step) : 2 * Step;

    /// <summary>Takes points in any order; what cannot be an absorbance is left out and said.</summary>
    /// <param name="points">Wavenumber, cm⁻¹, with the ordinate as it came.</param>
    /// <param name="scale">What the ordinate is.</param>
    /// <param name="resolution">Resolution of the instrument, cm⁻¹; null when not known.</param>
    /// <param name="isReflected">True for attenuated total reflection.</param>
    public static Outcome<InfraredSpectrum> Of(
        IEnumerable<(double Wavenumber, double Ordinate)> points, OrdinateScale scale, double? resolution = null, bool isReflected = false)
    {
        ArgumentNullException.ThrowIfNull(points);
        var findings = new List<Finding>();
        var all = points.ToList();
        var given = all.Where(p => p.Wavenumber is >= LowestWavenumber and <= HighestWavenumber && double.IsFinite(p.Ordinate)).OrderBy(p => p.Wavenumber).ToList();
        if (all.Count > given.Count)
            findings.Add(Say(Weight.Caution, $"{all.Count - given.Count} points lie outside {LowestWavenumber:0} to {HighestWavenumber:0} cm⁻¹, where no infrared is, or have no ordinate: they are left out. Check the axis and its unit."));
        var kept = new List<(double X, double A)>(given.Count);
        int saturated = 0, above = 0, impossible = 0;
        foreach (var (x, y) in given)
        {
            var absorbance = scale switch
            {
                OrdinateScale.Absorbance => y,
                OrdinateScale.PercentTransmittance => Transmittance.ToAbsorbance(y / 100),
                _ => Transmittance.ToAbsorbance(y),
            };
            if (absorbance is not { } a)
                saturated++;
            else if (Math.Abs(a) > LargestAbsorbance)
                impossible++;
            else if (kept.Count == 0 || x > kept[^1].X)
            {
                kept.Add((x, a));
                above += scale != OrdinateScale.Absorbance && a < 0 ? 1 : 0;
            }
        }

        if (impossible > 0)
            findings.Add(Say(Weight.Caution, $"{impossible} points have an absorbance beyond ±{LargestAbsorbance:0}, which no detector tells: they are left out. Check the column and its unit."));
        if (saturated > 0)
            findings.Add(Say(Weight.Caution, $"{saturated} points let nothing through: saturated, no absorbance. Make a thinner pellet."));
        if (above > 0)
            findings.Add(Say(Weight.Caution, $"{above} points let more than 100 % through: absorbance below 0. Look at the background."));
        if (kept.Count < FewestPoints)
            return Outcome<InfraredSpectrum>.None([.. findings, Say(Weight.Stop, $"{kept.Count} points are too few for a spectrum; {FewestPoints} are needed.")]);
        return new(new([.. kept.Select(p => p.X)], [.. kept.Select(p => p.A)], scale, resolution, isReflected, saturated), findings);
    }

    /// <summary>Absorbance at a wavenumber by straight lines between the points; null outside the range.</summary>
    /// <param name="wavenumber">cm⁻¹.</param>
    public double? At(double wavenumber)
    {
        var x = (double[])Wavenumbers;
        var at = Array.BinarySearch(x, wavenumber);
        if (at >= 0)
            return Absorbances[at];
        at = ~at;
        if (at == 0 || at == x.Length)
            return null;
        var share = (wavenumber - x[at - 1]) / (x[at] - x[at - 1]);
        return Absorbances[at - 1] + share * (Absorbances[at] - Absorbances[at - 1]);
    }

    /// <summary>True when the spectrum was measured over the whole of a range.</summary>
    /// <param name="low">Lower end, cm⁻¹.</param>
    /// <param name="high">Upper end, cm⁻¹.</param>
    public bool Covers(double low, double high) => Wavenumbers[0] <= low && Wavenumbers[^1] >= high;

    private static Finding Say(Weight weight, FormattableString words) => Finding.Of("HF-750", weight, words.ToString(CultureInfo.InvariantCulture));
}
