namespace Holdfast.Infrared;

/// <summary>How a carboxylate may sit on a metal, from the distance of its two stretches, Δ = ν_as − ν_s, against the sodium salt of the same acid.</summary>
/// <remarks>
/// G. B. Deacon and R. J. Phillips, Coord. Chem. Rev. 33 (1980) 227, with many exceptions: it suggests, no more. They give no width for "similar"; the
/// limits here are ours, chosen to read the open example of PMC6272241 (205 ionic, 240 unidentate, 162 bridging) as its authors do.
/// </remarks>
public enum CarboxylateBinding
{
    /// <summary>Δ is larger than the salt's: one oxygen on the metal.</summary>
    Unidentate,

    /// <summary>Δ is like the salt's: free, or a bridge of two metals.</summary>
    IonicOrBridging,

    /// <summary>Δ is much smaller than the salt's: both oxygens on one metal.</summary>
    Chelating,

    /// <summary>The uncertainty of the distance reaches over a limit.</summary>
    NotTold,
}

/// <summary>The two stretches of a carboxylate.</summary>
/// <param name="Difference">Δ = ν_as − ν_s, cm⁻¹.</param>
/// <param name="U">Standard uncertainty, cm⁻¹.</param>
public sealed record CarboxylateStretches(double Difference, double U)
{
    /// <summary>Above the salt's Δ by more than this: unidentate; cm⁻¹.</summary>
    public const double LargerBy = 20;

    /// <summary>Below the salt's Δ by more than this: chelating; cm⁻¹.</summary>
    public const double SmallerBy = 60;

    /// <summary>From two bands.</summary>
    /// <param name="antisymmetric">The band at the higher wavenumber.</param>
    /// <param name="symmetric">The band at the lower wavenumber.</param>
    public static CarboxylateStretches Of(Band antisymmetric, Band symmetric)
    {
        ArgumentNullException.ThrowIfNull(antisymmetric);
        ArgumentNullException.ThrowIfNull(symmetric);
        return new(antisymmetric.Wavenumber - symmetric.Wavenumber, Math.Sqrt(antisymmetric.U * antisymmetric.U + symmetric.U * symmetric.U));
    }

    /// <summary>What the distance suggests.</summary>
    /// <param name="salt">The same of the sodium salt of the same acid, measured alike.</param>
    public CarboxylateBinding Against(CarboxylateStretches salt)
    {
        ArgumentNullException.ThrowIfNull(salt);
        var above = Difference - salt.Difference;
        var reach = 2 * Math.Sqrt(U * U + salt.U * salt.U);
        return above - reach > LargerBy ? CarboxylateBinding.Unidentate
            : above + reach < -SmallerBy ? CarboxylateBinding.Chelating
            : above + reach <= LargerBy && above - reach >= -SmallerBy ? CarboxylateBinding.IonicOrBridging
            : CarboxylateBinding.NotTold;
    }
}
