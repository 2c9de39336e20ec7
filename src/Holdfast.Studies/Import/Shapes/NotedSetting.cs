namespace Holdfast.Studies.Import.Shapes;

/// <summary>A setting that a line above or below a table states for all its rows: "V = 10 mL".</summary>
/// <param name="Property">What it is.</param>
/// <param name="Value">In the property's unit.</param>
/// <param name="Written">As written: "10 mL".</param>
/// <param name="Row">Row of the line, as a person counts.</param>
/// <param name="IsStated">True where the line names the quantity ("V = 10 mL"); false where only its unit tells ("25 °C").</param>
internal sealed record NotedSetting(Property Property, double Value, string Written, int Row, bool IsStated);
