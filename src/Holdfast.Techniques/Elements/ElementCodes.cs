namespace Holdfast.Techniques.Elements;

/// <summary>Codes of what tables of elements say of themselves.</summary>
internal static class ElementCodes
{
    /// <summary>Totals were made 100 %.</summary>
    public const string Normalised = "HF-761";

    /// <summary>Too few places, or places that scatter more than counting explains.</summary>
    public const string Places = "HF-762";

    /// <summary>Dissolved portions without a blank.</summary>
    public const string Blank = "HF-763";
}
