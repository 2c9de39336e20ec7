using System.Collections.Immutable;

namespace Holdfast.DemoData;

/// <summary>A portion of one solution as the spectrometer read it.</summary>
/// <param name="Dilution">How many times it was diluted.</param>
/// <param name="Readings">Three absorbances.</param>
/// <param name="Concentration">Concentration of the undiluted solution by the calibration line, mg/L.</param>
public sealed record Portion(int Dilution, ImmutableArray<double> Readings, double Concentration);
