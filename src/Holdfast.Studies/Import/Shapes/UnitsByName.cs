using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Units that lines beside a table state by the words of its headings: "Beads in g. Start and readings: mg/L".</summary>
internal static partial class UnitsByName
{
    private static readonly string[] And = [" and ", " und ", " et ", " y ", " e ", " en ", " & ", ", ", "/"];

    /// <summary>The unit that a line states for a heading, or null.</summary>
    /// <param name="heading">A heading without unit.</param>
    /// <param name="lines">What stands above and below the table.</param>
    public static UnitText? Of(HeadingReading heading, IEnumerable<string> lines)
    {
        if (heading.Tokens.IsEmpty || heading.Has(HeadingWord.Dilution))
            return null;
        foreach (var clause in lines.SelectMany(l => l.Split([". ", "; "], StringSplitOptions.TrimEntries)))
        {
            if (Stated().Match(clause) is { Success: true } m && HeadingReading.UnitOf(m.Groups["unit"].Value.TrimEnd('.', ',')) is (UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous) and var unit
                && m.Groups["names"].Value.Split(And, StringSplitOptions.RemoveEmptyEntries).Any(n => Lexicon.Tokens(n) is [var name] && heading.Tokens.Any(t => Singular(t) == Singular(name))))
                return unit;
        }

        return null;
    }

    private static string Singular(string token) => token.Length > 3 ? token.TrimEnd('s') : token;

    [GeneratedRegex(@"^(?<names>[^:=\d]{1,40}?)\s*( in | en | em |: ?| = )\s*(?<unit>[^\s(]+)( .*)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Stated();
}
