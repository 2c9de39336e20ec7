using Holdfast.Amounts;

namespace Holdfast.Calibration;

/// <summary>What comes back of a known amount added to the sample. Inside a window is not "no matrix effect": give the interval against 1.</summary>
/// <param name="Recovery">Recovered over added, 1 for all of it; no unit.</param>
/// <param name="Low">Lower end of the window; no unit.</param>
/// <param name="High">Upper end of the window; no unit.</param>
public sealed record SpikeRecovery(Measured Recovery, double Low, double High)
{
    /// <summary>True inside the window.</summary>
    public bool Passes => Recovery.Value >= Low && Recovery.Value <= High;

    /// <summary>Judges a spike made without change of volume.</summary>
    /// <param name="id">The sample.</param>
    /// <param name="native">Concentration before the spike.</param>
    /// <param name="spiked">Concentration after it, same unit.</param>
    /// <param name="added">Concentration added, same unit.</param>
    /// <param name="low">Lower end of the window, 0.80 in common practice; no unit.</param>
    /// <param name="high">Upper end of the window, 1.20 in common practice; no unit.</param>
    public static Outcome<SpikeRecovery> Of(string id, Measured native, Measured spiked, Measured added, double low = 0.80, double high = 1.20)
        => OfAmounts(id, native, spiked, added, low, high);

    /// <summary>Judges a spike that changed the volume.</summary>
    /// <param name="id">The sample.</param>
    /// <param name="native">Concentration before the spike.</param>
    /// <param name="nativeVolume">Volume of sample taken.</param>
    /// <param name="spiked">Concentration after the spike, same unit as before.</param>
    /// <param name="spike">Concentration of the spiking solution, same unit.</param>
    /// <param name="spikeVolume">Its volume, same unit as the sample's.</param>
    /// <param name="low">Lower end of the window; no unit.</param>
    /// <param name="high">Upper end of the window; no unit.</param>
    public static Outcome<SpikeRecovery> WithVolumes(
        string id, Measured native, Measured nativeVolume, Measured spiked, Measured spike, Measured spikeVolume, double low = 0.80, double high = 1.20)
        => OfAmounts(id, native * nativeVolume, spiked * (nativeVolume + spikeVolume), spike * spikeVolume, low, high);

    private static Outcome<SpikeRecovery> OfAmounts(string id, Measured native, Measured spiked, Measured added, double low, double high)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(added.Value, nameof(added));
        var difference = spiked - native;
        if (added.Value < native.Value / 5 || added.Value < 3 * difference.U)
            return Outcome<SpikeRecovery>.None(CalibrationFindings.SpikeTooSmall(id, added.Value, native.Value, difference.U));
        var recovery = new SpikeRecovery(difference / added, low, high);
        return new(recovery, recovery.Passes ? [] : [CalibrationFindings.RecoveryOutside(id, recovery)]);
    }
}
