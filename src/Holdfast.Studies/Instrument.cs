namespace Holdfast.Studies;

/// <summary>A balance, flask, pipette or meter and how well it is known.</summary>
/// <param name="Id">Short id: "balance B-1".</param>
/// <param name="Serves">Name of the property it measures: "mass", "volume", "initial-concentration", "dilution".</param>
/// <param name="U">Standard uncertainty of one use, in the property's unit, or null when <paramref name="RelativeU"/> is given.</param>
/// <param name="RelativeU">Relative standard uncertainty of one use (0.01 for 1 %), or null.</param>
/// <param name="Shared">True when one error is shared by everything it served (a flask's tolerance); false for a fresh one each time.</param>
/// <param name="Basis">Where the uncertainty comes from: certificate, tolerance class, "common practice".</param>
/// <param name="Origin">Where it was recorded, or null for a default.</param>
public sealed record Instrument(string Id, string Serves, double? U, double? RelativeU, bool Shared, string Basis, Origin? Origin);
