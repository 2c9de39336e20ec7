namespace Holdfast.Studies.Import.Cif;

/// <summary>A value of a CIF: its words, how they were written, and where.</summary>
/// <param name="Text">The words, without quotes or semicolons.</param>
/// <param name="Line">Line it begins in, from 1.</param>
/// <param name="IsPlain">True when it stood without quotes: only then is "?" unknown, "." not applicable and a number a number.</param>
public readonly record struct CifValue(string Text, int Line, bool IsPlain)
{
    /// <summary>True for "?": there is a value, and nobody wrote it down.</summary>
    public bool IsUnknown => IsPlain && Text == "?";

    /// <summary>True for ".": there can be no value here, or the default holds.</summary>
    public bool IsNotApplicable => IsPlain && Text == ".";

    /// <summary>True when something is said: neither "?" nor ".".</summary>
    public bool IsSaid => !IsUnknown && !IsNotApplicable;

    /// <summary>The number with its standard uncertainty, or null when the value is no number. A number in quotes counts: many programs quote all.</summary>
    public CifNumber? Number => Text is null ? null : CifNumber.Of(Text);
}
