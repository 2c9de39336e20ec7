namespace Holdfast.Studies.Import.Cif;

/// <summary>One word of a CIF.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">Block name, tag in lower case, or value.</param>
/// <param name="Line">Line it begins in, from 1.</param>
/// <param name="IsPlain">True for a value without quotes.</param>
internal readonly record struct CifToken(CifTokenKind Kind, string Text, int Line, bool IsPlain);
