namespace Holdfast;

/// <summary>How a statement stands against the numbers put to a check.</summary>
public enum Standing
{
    /// <summary>The numbers do not decide; another experiment would.</summary>
    NotShown,

    /// <summary>The numbers speak for it, not firmly.</summary>
    Weak,

    /// <summary>The numbers could have spoken against it and did not. That is less than showing it.</summary>
    NotContradicted,

    /// <summary>The numbers show it within the stated rule.</summary>
    Holds,

    /// <summary>The numbers speak against it.</summary>
    Contradicted,
}
