namespace Holdfast.Fluorescence;

/// <summary>A spectrum of emission, wavelengths rising, and what is read from it. Everything is read from what was measured: smoothing is for display.</summary>
public sealed class EmissionSpectrum
{
    private const int Neighbours = 2;
    private readonly double[] wavelength;
    private readonly double[] intensity;

    /// <summary>A spectrum.</summary>
    /// <param name="wavelengths">Wavelengths, nm, all different, rising or falling.</param>
    /// <param name="intensities">Intensities, as many, any unit.</param>
    /// <exception cref="ArgumentException">Fewer than five points, lengths differ, wavelengths do not run one way, or a number is not finite.</exception>
    public EmissionSpectrum(IReadOnlyList<double> wavelengths, IReadOnlyList<double> intensities)
    {
        ArgumentNullException.ThrowIfNull(wavelengths);
        ArgumentNullException.ThrowIfNull(intensities);
        if (wavelengths.Count != intensities.Count || wavelengths.Count < 2 * Neighbours + 1)
            throw new ArgumentException(FormattableString.Invariant($"{wavelengths.Count} wavelengths and {intensities.Count} intensities; five pairs or more are needed."), nameof(intensities));
        if (wavelengths.Any(v => !(v > 0 && double.IsFinite(v))) || intensities.Any(v => !double.IsFinite(v)))
            throw new ArgumentException("Wavelengths are above 0 and every number is finite.", nameof(wavelengths));
        wavelength = [.. wavelengths];
        intensity = [.. intensities];
        if (wavelength[^1] < wavelength[0])
        {
            Array.Reverse(wavelength);
            Array.Reverse(intensity);
        }

        if (wavelength.Zip(wavelength.Skip(1)).Any(p => p.Second <= p.First))
            throw new ArgumentException("Wavelengths run one way, without repeats.", nameof(wavelengths));
    }

    /// <summary>Wavelengths, nm, rising.</summary>
    public IReadOnlyList<double> Wavelengths => wavelength;

    /// <summary>Intensities in that order.</summary>
    public IReadOnlyList<double> Intensities => intensity;

    /// <summary>Index of the largest intensity within limits; on the blank it fixes the window for the whole series.</summary>
    /// <param name="from">Lowest wavelength, nm.</param>
    /// <param name="to">Highest wavelength, nm.</param>
    /// <returns>The index; none with a finding where the largest stands within two points of an end, for there the band goes on.</returns>
    public (int? Index, Finding? Finding) Maximum(double from, double to)
    {
        var inside = Enumerable.Range(0, wavelength.Length).Where(i => wavelength[i] >= from && wavelength[i] <= to).ToArray();
        if (inside.Length < 2 * Neighbours + 1)
            return (null, FluorescenceFindings.WindowTooNarrow(from, to, inside.Length));
        var at = inside.MaxBy(i => intensity[i]);
        return at - inside[0] < Neighbours || inside[^1] - at < Neighbours ? (null, FluorescenceFindings.MaximumAtTheEdge(wavelength[at])) : (at, null);
    }

    /// <summary>Peak intensity: mean of a point and the two on either side, in the unit of the intensities.</summary>
    /// <param name="at">Index of the maximum, fixed on the blank and kept for the series.</param>
    public double Peak(int at)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(at, Neighbours);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(at, intensity.Length - 1 - Neighbours);
        return intensity.Skip(at - Neighbours).Take(2 * Neighbours + 1).Average();
    }

    /// <summary>Integrated intensity between fixed limits by trapezoids, in the unit of the intensities times nm; the ends are interpolated.</summary>
    /// <param name="from">Lower limit, nm, inside the spectrum.</param>
    /// <param name="to">Upper limit, nm, inside the spectrum.</param>
    public double Integral(double from, double to)
    {
        if (!(from >= wavelength[0] && to <= wavelength[^1] && from < to))
            throw new ArgumentOutOfRangeException(nameof(from), from, FormattableString.Invariant($"The limits lie between {wavelength[0]} and {wavelength[^1]} nm, lower first."));
        double[] x = [from, .. wavelength.Where(v => v > from && v < to), to];
        double[] y = [.. x.Select(At)];
        return Enumerable.Range(0, x.Length - 1).Sum(i => (y[i] + y[i + 1]) / 2 * (x[i + 1] - x[i]));
    }

    /// <summary>This spectrum less another on the same wavelengths: the liquid without emitter.</summary>
    /// <param name="other">A spectrum read with the same slits and steps.</param>
    /// <exception cref="ArgumentException">The wavelengths differ.</exception>
    public EmissionSpectrum Less(EmissionSpectrum other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return IsOnWavelengthsOf(other)
            ? new(wavelength, [.. intensity.Zip(other.intensity, (a, b) => a - b)])
            : throw new ArgumentException("Both spectra stand on the same wavelengths.", nameof(other));
    }

    /// <summary>True when another spectrum stands on the same wavelengths.</summary>
    /// <param name="other">The other.</param>
    public bool IsOnWavelengthsOf(EmissionSpectrum other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return wavelength.SequenceEqual(other.wavelength);
    }

    /// <summary>Mean of spectra that stand on the same wavelengths, point by point.</summary>
    /// <param name="spectra">One spectrum or more.</param>
    /// <exception cref="ArgumentException">There is none, or the wavelengths differ.</exception>
    public static EmissionSpectrum Mean(IReadOnlyList<EmissionSpectrum> spectra)
    {
        ArgumentNullException.ThrowIfNull(spectra);
        if (spectra.Count == 0 || spectra.Any(s => !s.IsOnWavelengthsOf(spectra[0])))
            throw new ArgumentException("A mean needs one spectrum or more, all on the same wavelengths.", nameof(spectra));
        return new(spectra[0].wavelength, [.. Enumerable.Range(0, spectra[0].wavelength.Length).Select(i => spectra.Average(s => s.intensity[i]))]);
    }

    /// <summary>
    /// The same light per energy: photon energies, eV, falling with the wavelengths, and I(E) = I(λ)·λ²/hc, intensity per eV. Without λ² an
    /// area over energy is not the area that was measured.
    /// </summary>
    public IReadOnlyList<(double EnergyEv, double PerEv)> OverEnergy
        => [.. wavelength.Zip(intensity, (l, i) => (Constants.PlanckTimesLightSpeed / l, i * l * l / Constants.PlanckTimesLightSpeed))];

    /// <summary>Ratio of the areas of two bands: it cancels lamp and dose, not the inner filter; no unit.</summary>
    /// <param name="above">Limits of the band above the bar, nm.</param>
    /// <param name="below">Limits of the band below the bar, nm.</param>
    public double BandRatio((double From, double To) above, (double From, double To) below)
        => Integral(above.From, above.To) / Integral(below.From, below.To);

    private double At(double x)
    {
        var i = Array.BinarySearch(wavelength, x);
        if (i >= 0)
            return intensity[i];
        var next = ~i;
        var share = (x - wavelength[next - 1]) / (wavelength[next] - wavelength[next - 1]);
        return intensity[next - 1] + share * (intensity[next] - intensity[next - 1]);
    }
}
