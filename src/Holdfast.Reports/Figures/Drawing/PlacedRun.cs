namespace Holdfast.Reports.Figures.Drawing;

/// <summary>A run at its place on a line.</summary>
/// <param name="Text">The characters.</param>
/// <param name="Italic">Slanted or not.</param>
/// <param name="X">Its start, in pt from the start of the line.</param>
/// <param name="Drop">How far below the base line it stands, in pt; negative when raised.</param>
/// <param name="Size">Size of the type in pt.</param>
public readonly record struct PlacedRun(string Text, bool Italic, double X, double Drop, double Size);
