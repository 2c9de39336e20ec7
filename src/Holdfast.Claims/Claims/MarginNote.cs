using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims;

/// <summary>Whether a margin was fixed before the data were seen. A margin chosen afterwards can be chosen to please.</summary>
internal static class MarginNote
{
    /// <summary>The caveat to print beside a verdict that used the margin, or nothing when it was fixed beforehand.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="margin">The margin used.</param>
    public static IEnumerable<string> Of(Evidence evidence, Margin margin)
    {
        var range = Phrase.Span(margin.Low, margin.High, margin.Unit);
        if (margin.Entry == 0)
            yield return $"The {margin.Name} margin ({range}) is the default: nobody fixed one before the data were seen.";
        else if (evidence.Study.Originals.Any(o => o.Entry < margin.Entry))
            yield return $"The {margin.Name} margin ({range}) was fixed after data had been taken in.";
    }
}
