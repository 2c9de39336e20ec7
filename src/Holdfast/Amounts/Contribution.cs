namespace Holdfast.Amounts;

/// <summary>What one source adds to a result's uncertainty.</summary>
/// <param name="Source">The physical act.</param>
/// <param name="D">Signed contribution ∂f/∂s · u(s), in the unit of the result.</param>
public readonly record struct Contribution(Source Source, double D);
