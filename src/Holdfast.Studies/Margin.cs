namespace Holdfast.Studies;

/// <summary>A margin fixed beforehand: how large a difference still counts as none.</summary>
/// <param name="Name">Which margin: "plateau", "removal", "mass-balance", "capacity".</param>
/// <param name="Low">Lower end, in the margin's unit.</param>
/// <param name="High">Upper end, in the margin's unit.</param>
/// <param name="Unit">Unit: "%", "percentage points", "mg/g".</param>
/// <param name="Entry">History entry that fixed it; 0 for a default that nobody fixed.</param>
public sealed record Margin(string Name, double Low, double High, string Unit, long Entry);
