namespace Holdfast.Studies;

/// <summary>An uptake that somebody else found, with the conditions it was found at and where it is written. What is not stated is null, never guessed.</summary>
/// <param name="Sorbent">The sorbent as it is named there.</param>
/// <param name="Metal">Symbol of the element.</param>
/// <param name="Left">Concentration left, Ce, mg/L.</param>
/// <param name="Uptake">Uptake there, mg/g; never a fitted capacity.</param>
/// <param name="U">Standard uncertainty of the uptake, mg/g; null when none is published.</param>
/// <param name="Start">Start concentration, mg/L.</param>
/// <param name="Dose">Dose, g/L.</param>
/// <param name="Ph">pH of the contact.</param>
/// <param name="Temperature">Temperature, K.</param>
/// <param name="Water">The water.</param>
/// <param name="Source">Where it is written; always stated.</param>
/// <param name="Read">How it was read: "table 2", "figure 5, digitised".</param>
public sealed record PublishedUptake(
    string Sorbent, string Metal, double Left, double Uptake, double? U, double? Start, double? Dose, double? Ph, double? Temperature, string? Water, string Source, string? Read);
