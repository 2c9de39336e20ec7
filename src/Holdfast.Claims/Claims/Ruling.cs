namespace Holdfast.Claims;

/// <summary>How a claim stands against the data.</summary>
public enum Ruling
{
    /// <summary>The data show it, within the stated scope.</summary>
    Holds,

    /// <summary>The data do not decide.</summary>
    NotShownYet,

    /// <summary>The data speak against it.</summary>
    Contradicted,
}
