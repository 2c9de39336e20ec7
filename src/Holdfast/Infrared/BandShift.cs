namespace Holdfast.Infrared;

/// <summary>One band before and after a change, for example loading with metal.</summary>
/// <param name="Before">The band before.</param>
/// <param name="After">The band after.</param>
/// <param name="Limit">Resolution below which no shift can be said, cm⁻¹.</param>
public sealed record BandShift(Band Before, Band After, double Limit)
{
    /// <summary>Bands no farther apart than this are taken for one band that moved; cm⁻¹.</summary>
    public const double SameBandWithin = 25;

    private const double CoverageFactor = 2;

    /// <summary>After less before, cm⁻¹.</summary>
    public double Shift => After.Wavenumber - Before.Wavenumber;

    /// <summary>Standard uncertainty of the shift, cm⁻¹.</summary>
    public double U => Math.Sqrt(Before.U * Before.U + After.U * After.U);

    /// <summary>True when the shift is above the resolution and above twice its uncertainty. Two spectra say nothing of how preparations scatter.</summary>
    public bool IsSeen => Math.Abs(Shift) > Limit && Math.Abs(Shift) > CoverageFactor * U;

    /// <summary>Bands that are each other's nearest, no farther apart than 25 cm⁻¹.</summary>
    /// <param name="before">Spectrum before.</param>
    /// <param name="after">Spectrum after, measured alike.</param>
    public static IReadOnlyList<BandShift> Between(InfraredSpectrum before, InfraredSpectrum after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        IReadOnlyList<Band> first = BandSearch.Of(before), second = BandSearch.Of(after);
        var limit = Math.Max(before.Limit, after.Limit);
        return
        [
            .. from b in first
               let near = Nearest(b, second)
               where near is not null && ReferenceEquals(Nearest(near, first), b)
               select new BandShift(b, near, limit),
        ];
    }

    private static Band? Nearest(Band to, IReadOnlyList<Band> bands)
        => bands.Where(b => Math.Abs(b.Wavenumber - to.Wavenumber) <= SameBandWithin).MinBy(b => Math.Abs(b.Wavenumber - to.Wavenumber));
}
