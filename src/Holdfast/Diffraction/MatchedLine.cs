namespace Holdfast.Diffraction;

/// <summary>A measured line and the reference line it is taken for.</summary>
/// <param name="Line">The measured line.</param>
/// <param name="Reference">The reference line.</param>
/// <param name="IsAlone">True when no other family of the reference lies at the same place, so that its planes are known.</param>
/// <param name="Offset">Measured less expected 2θ after the shift, degrees.</param>
public sealed record MatchedLine(FittedLine Line, ReferenceLine Reference, bool IsAlone, double Offset);
