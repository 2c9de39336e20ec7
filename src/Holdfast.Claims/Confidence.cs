namespace Holdfast.Claims;

/// <summary>The house's confidence: that of every interval which is printed and of every test which decides, unless a rule's own limits say otherwise (common practice).</summary>
public static class Confidence
{
    /// <summary>Chance that is taken of calling noise an effect; shared among looks where there are several.</summary>
    public const double Chance = 0.05;

    /// <summary>Confidence of an interval.</summary>
    public const double Level = 1 - Chance;
}
