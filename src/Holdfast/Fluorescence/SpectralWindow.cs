namespace Holdfast.Fluorescence;

/// <summary>
/// Where the intensity is read in every spectrum of a study: five points around the maximum of the blank, or the area between two limits. It is
/// fixed once, on the blank: a maximum looked for in each spectrum anew would follow the noise of the weak ones.
/// </summary>
/// <param name="From">Lowest wavelength read, nm.</param>
/// <param name="To">Highest wavelength read, nm.</param>
/// <param name="Maximum">Wavelength of the blank's maximum, nm; null for an area.</param>
public sealed record SpectralWindow(double From, double To, double? Maximum)
{
    private const int Neighbours = 2;
    private const double SameWavelength = 1e-6;

    /// <summary>True for the area between two limits, false for the mean of five points.</summary>
    public bool IsArea => Maximum is null;

    /// <summary>The window around the maximum of the blank.</summary>
    /// <param name="blank">Spectrum of the sensor without quencher, less the liquid without emitter where that was read.</param>
    /// <param name="from">Lowest wavelength that is searched, nm.</param>
    /// <param name="to">Highest, nm.</param>
    /// <param name="excitation">Wavelength of the exciting light, nm, kept clear of; null when not recorded.</param>
    /// <returns>The window; none where the search holds fewer than five points or the maximum stands at its end.</returns>
    public static Outcome<SpectralWindow> OnBlank(EmissionSpectrum blank, double from, double to, double? excitation = null)
    {
        ArgumentNullException.ThrowIfNull(blank);
        var (low, high) = Clear(blank, from, to, excitation);
        var (index, finding) = blank.Maximum(low, high);
        return index is { } at
            ? new(new(blank.Wavelengths[at - Neighbours], blank.Wavelengths[at + Neighbours], blank.Wavelengths[at]), [])
            : Outcome<SpectralWindow>.None(finding!);
    }

    /// <summary>The area between two limits.</summary>
    /// <param name="from">Lower limit, nm.</param>
    /// <param name="to">Upper limit, nm.</param>
    public static SpectralWindow Area(double from, double to)
        => from < to ? new(from, to, null) : throw new ArgumentException(FormattableString.Invariant($"The limits {from} and {to} nm come lower first."), nameof(to));

    /// <summary>Intensity of a spectrum in this window: in its own unit for five points, in that unit times nm for an area; null where it does not reach or stands on other wavelengths.</summary>
    /// <param name="spectrum">A spectrum of the study.</param>
    public double? Of(EmissionSpectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        if (IsArea)
            return From >= spectrum.Wavelengths[0] && To <= spectrum.Wavelengths[^1] ? spectrum.Integral(From, To) : null;
        return Inside(spectrum) is { Length: 2 * Neighbours + 1 } five && Math.Abs(spectrum.Wavelengths[five[Neighbours]] - Maximum!.Value) < SameWavelength
            && Math.Abs(spectrum.Wavelengths[five[0]] - From) < SameWavelength && Math.Abs(spectrum.Wavelengths[five[^1]] - To) < SameWavelength
            ? spectrum.Peak(five[Neighbours]) : null;
    }

    /// <summary>Largest intensity in the window, in the unit of the spectrum; null where no point lies in it.</summary>
    /// <param name="spectrum">A spectrum of the study.</param>
    public double? Largest(EmissionSpectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        return Inside(spectrum) is { Length: > 0 } inside ? inside.Max(i => spectrum.Intensities[i]) : null;
    }

    /// <summary>True when two spectra were read at the same wavelengths in this window.</summary>
    /// <param name="one">One.</param>
    /// <param name="other">The other.</param>
    public bool IsAlike(EmissionSpectrum one, EmissionSpectrum other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return Inside(one).Select(i => one.Wavelengths[i]).SequenceEqual(Inside(other).Select(i => other.Wavelengths[i]));
    }

    private int[] Inside(EmissionSpectrum spectrum)
        => [.. Enumerable.Range(0, spectrum.Wavelengths.Count).Where(i => spectrum.Wavelengths[i] > From - SameWavelength && spectrum.Wavelengths[i] < To + SameWavelength)];

    // The longest stretch of the search that the exciting light and its second order leave free.
    private static (double From, double To) Clear(EmissionSpectrum blank, double from, double to, double? excitation)
    {
        if (excitation is not { } light)
            return (from, to);
        (double From, double To) longest = (from, from);
        double? start = null;
        var last = from;
        foreach (var wavelength in blank.Wavelengths.Where(w => w >= from && w <= to))
        {
            if (ScatteredLight.Reaches(wavelength, light))
            {
                start = null;
                continue;
            }

            (start, last) = (start ?? wavelength, wavelength);
            if (last - start > longest.To - longest.From)
                longest = (start.Value, last);
        }

        return longest;
    }
}
