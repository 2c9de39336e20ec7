namespace Holdfast.Studies;

/// <summary>One thing an instrument showed for one portion of one sample, before any arithmetic.</summary>
/// <param name="Id">Stable address: "R-0142".</param>
/// <param name="Sample">Code of the sample.</param>
/// <param name="Run">Id of the <see cref="Studies.Run"/> it was read in.</param>
/// <param name="Order">Place in the run, from 1: drift and check standards go by it.</param>
/// <param name="Signal">Name of the signal property: "absorbance".</param>
/// <param name="Value">What was shown, in the property's unit; null when censored or not a number.</param>
/// <param name="Below">Limit when the instrument wrote "&lt; x", or null.</param>
/// <param name="Dilution">How many times this portion was diluted; 1 for none.</param>
/// <param name="Portion">Portions of one sample that were diluted or poured separately count up from 1; repeated readings of one portion share it.</param>
/// <param name="Written">The cell as it was written.</param>
/// <param name="Origin">Where it was read.</param>
public sealed record Reading(
    string Id, string Sample, string Run, int Order, string Signal, double? Value, double? Below, double Dilution, int Portion, string Written, Origin Origin)
{
    /// <summary>Scatter that came with it ("14.99 ± 0.11"), taken as its standard uncertainty, in the property's unit; null for none.</summary>
    public double? U { get; init; }

    /// <summary>The points of a spectrum; null for a reading of one number.</summary>
    public Spectrum? Spectrum { get; init; }
}
