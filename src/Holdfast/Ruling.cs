namespace Holdfast;

/// <summary>How a statement stands against the data: the one judgement of the house.</summary>
public enum Ruling
{
    /// <summary>The data show it, within the stated scope.</summary>
    Holds,

    /// <summary>The data do not decide; another experiment would.</summary>
    NotShownYet,

    /// <summary>The data speak against it.</summary>
    Contradicted,
}
