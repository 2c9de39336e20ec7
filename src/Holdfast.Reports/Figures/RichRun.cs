namespace Holdfast.Reports.Figures;

/// <summary>Characters of a label in one style and one position.</summary>
/// <param name="Text">The characters.</param>
/// <param name="Italic">Slanted, as symbols of quantities are (IUPAC Green Book, 3rd ed., 1.3).</param>
/// <param name="Shift">On the line, lowered or raised.</param>
public readonly record struct RichRun(string Text, bool Italic = false, Shift Shift = Shift.None);
