using System.Text.RegularExpressions;

namespace Holdfast.Techniques.Elements;

/// <summary>What lines around a table say of its percentages: by mass or by atoms. "Measured at 20 kV", "12 mg massa" and "doped with 5 mol%" say nothing of it.</summary>
internal static partial class PercentKind
{
    private const string Percent = @"(%|percent\w*|per cent|prozent|procent\w*|pour ?cent\w*|por ?cent\w*|per ?cento)";
    private const string ByMass = @"(wt|weight|mass\w*|masa|masow\w*|gew\w*|poids|ponderal\w*|peso|berat|wag\w*|m/m|w/w)";
    private const string ByAtoms = @"(atom\w*|mol|molar\w*|mole?s?)";
    private const string Between = @"[\s.\-/()]*";
    private const string Little = @"(\s(in|by|of|the|weighed|dry|dried|total|von|vom|van|het|en|em|de|di|da|du|des|der|do|la|w))*";

    /// <summary><see cref="ElementFiles.Mass"/> or <see cref="ElementFiles.Atomic"/>; null where no line says it, or both are said.</summary>
    /// <param name="lines">Lines above and below a table.</param>
    public static string? In(IEnumerable<string> lines)
    {
        var (mass, atoms) = (false, false);
        foreach (var line in lines.Select(FileWords.Plain))
        {
            mass |= Says(OfMass(), line);
            atoms |= Says(OfAtoms(), line);
        }

        return mass == atoms ? null : mass ? ElementFiles.Mass : ElementFiles.Atomic;
    }

    // A number in front makes it an amount of something, and no word on the table.
    private static bool Says(Regex kind, string line) => kind.Matches(line).Any(m => !m.Groups["amount"].Success);

    [GeneratedRegex(@"(?<amount>\d\s*)?\b" + ByMass + Between + Percent + @"|(?<amount>\d\s*)?" + Percent + Little + Between + ByMass + @"\b", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex OfMass();

    // "% at" at the end or with a point is a kind; "% at 20 kV" is not.
    [GeneratedRegex(@"(?<amount>\d\s*)?\b(at|" + ByAtoms + ")" + Between + Percent + @"|(?<amount>\d\s*)?" + Percent + Little + Between + "(" + ByAtoms + @"\b|at([.,;)]|$))", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex OfAtoms();
}
