using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>One vessel of a sensing experiment: what the detector showed, and the signal after the inner filter is taken out.</summary>
/// <param name="Sample">The sample.</param>
/// <param name="Raw">Mean of its readings, in the unit of the signal.</param>
/// <param name="Signal">The same without the inner filter, with the uncertainty of that correction, in the unit of the signal.</param>
/// <param name="Factor">Inner-filter factor applied; null where no absorbance was recorded; no unit.</param>
/// <param name="Order">Place of its first reading in the run.</param>
/// <param name="Run">Run it was read in.</param>
public sealed record SensorSample(Sample Sample, double Raw, Measured Signal, double? Factor, int Order, string Run)
{
    /// <summary>The spectra its signal was read from; null for a signal that was typed.</summary>
    public SampleSpectra? Spectra { get; init; }

    /// <summary>Code of the sample.</summary>
    public string Code => Sample.Code;

    /// <summary>Quencher added, µmol/L; 0 when none is recorded.</summary>
    public double Quencher => Sample.Number(FluorescenceProperties.Quencher) ?? 0;
}
