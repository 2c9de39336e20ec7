namespace Holdfast.Amounts;

/// <summary>A piece of a label in one position: on the line or raised. No typeface is sure to hold every superscript character, so none is used.</summary>
/// <param name="Text">The characters.</param>
/// <param name="Raised">True for a superscript.</param>
public readonly record struct TextRun(string Text, bool Raised = false);
