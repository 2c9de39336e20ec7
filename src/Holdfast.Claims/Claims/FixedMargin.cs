using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims;

/// <summary>
/// A margin in the unit a rule works in, and whether it was fixed before the data were seen: a margin chosen afterwards can be chosen to
/// please. A stored margin that cannot serve (another kind of unit, ends the wrong way round) gives way to the default, and that is said.
/// </summary>
/// <param name="Low">Lower end, in the rule's unit.</param>
/// <param name="High">Upper end, in the rule's unit.</param>
/// <param name="Notes">Caveats to print beside a verdict that used it; none for a margin fixed beforehand.</param>
internal sealed record FixedMargin(double Low, double High, IReadOnlyList<string> Notes)
{
    /// <summary>The margin of a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="kind">Which margin.</param>
    public static FixedMargin Of(Evidence evidence, MarginKind kind)
    {
        var (name, low, high, unit) = (kind.Name, kind.Low, kind.High, kind.Unit);
        var stored = evidence.Margin(name, low, high, unit);
        if (stored.Entry == 0)
            return new(low, high, [$"The {name} margin ({Phrase.Span(low, high, unit)}) {MarginKind.LeftToDefault}"]);
        if (In(stored, unit) is not { } ends || !(ends.Low < ends.High))
            return new(low, high, [$"The {name} margin that was fixed ({Phrase.Span(stored.Low, stored.High, stored.Unit)}) cannot serve here; the default ({Phrase.Span(low, high, unit)}) is used."]);
        return new(ends.Low, ends.High, evidence.Study.Originals.Any(o => o.Entry < stored.Entry)
            ? [$"The {name} margin ({Phrase.Span(ends.Low, ends.High, unit)}) was fixed after data had been taken in."]
            : []);
    }

    // No general conversion: an uptake in mg/g and a share in % have one dimension and are not one thing.
    private static (double Low, double High)? In(Margin margin, string unit)
        => string.Equals(margin.Unit, unit, StringComparison.Ordinal) || (unit, margin.Unit) is ("percentage points", "%" or "points") ? (margin.Low, margin.High)
            : (unit, margin.Unit) is ("%", "" or "1") ? (100 * margin.Low, 100 * margin.High)
            : null;
}
