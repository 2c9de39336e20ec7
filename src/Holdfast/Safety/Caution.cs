using System.Text.RegularExpressions;
using Holdfast.Composition;
using Holdfast.Solutions;

namespace Holdfast.Safety;

/// <summary>The usual cautions for one class of substance or step.</summary>
/// <param name="Class">The class.</param>
/// <param name="Example">Substance or tool that the hazard codes are for.</param>
/// <param name="Hazards">Codes of the Globally Harmonized System, or words where none apply.</param>
/// <param name="Signal">Signal word, or empty.</param>
/// <param name="Advice">What to mind.</param>
/// <param name="Status">How the codes are known.</param>
public sealed record Caution(string Class, string Example, string Hazards, string Signal, string Advice, string Status)
{
    /// <summary>Stands beside every list of cautions.</summary>
    public const string Reservation =
        "This list is a reminder and may be wrong, old or incomplete. The supplier's current safety data sheet, the local codes and the responsible person decide; first aid comes from the sheet.";

    // Words are looked for in the beginning only: it bounds the work, where a limit of time would depend on how busy the computer is.
    private const int LongestName = 1_000;

    private static readonly (Caution Caution, string[] Elements, Regex? Names)[] Rows = Read();

    /// <summary>Every caution.</summary>
    public static IReadOnlyList<Caution> All { get; } = [.. Rows.Select(r => r.Caution)];

    /// <summary>Cautions for substances and steps, each once, in the order of the table; none where nothing is recognised, which does not mean harmless.</summary>
    /// <param name="things">Formulas ("Ni(NO3)2.6H2O"), names ("nitric acid") and steps ("autoclave").</param>
    public static IReadOnlyList<Caution> For(params IEnumerable<string> things)
    {
        string[] all = [.. things.Where(t => !string.IsNullOrWhiteSpace(t)).Select(t => t.Trim()).Select(t => t.Length > LongestName ? t[..LongestName] : t)];
        return [.. Rows.Where(r => all.Any(t => Fits(r.Elements, r.Names, t))).Select(r => r.Caution)];
    }

    /// <summary>Cautions for everything that a recipe weighs out.</summary>
    /// <param name="recipe">The recipe.</param>
    public static IReadOnlyList<Caution> For(Recipe recipe)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        return For(recipe.Reagents.SelectMany(r => new[] { r.Name, r.Formula.Text }));
    }

    private static bool Fits(string[] elements, Regex? names, string thing)
        => (names?.IsMatch(thing) ?? false)
        || (elements.Length > 0 && Formula.Read(thing).Value is { Parts.Count: > 1 } formula && elements.All(e => formula.Count(e) > 0));

    private static (Caution Caution, string[] Elements, Regex? Names)[] Read()
        =>
        [
            .. TradeTable.Read(CautionTable.Table).Select(r => (
                new Caution(r["class"], r["example"], r["hazards"], r["signal"], r["advice"], r["status"]),
                r["formula"].Split(' ', StringSplitOptions.RemoveEmptyEntries),
                r["names"].Length == 0 ? null : new Regex(
                    string.Join('|', r["names"].Split('|').Select(Pattern)), RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, Regex.InfiniteMatchTimeout))),
        ];

    // The beginning of a word is enough of a name. A formula stands by itself: "HCl" is not in "HClO4", and the hydrate of a chloride has reacted already.
    private static string Pattern(string name)
        => name[0] == '~' ? Regex.Escape(name[1..])
            : name.Any(char.IsDigit) || name.All(char.IsUpper) || name is "HCl" or "NaOH" ? $@"(?<![A-Za-z0-9\)]){Regex.Escape(name)}(?![A-Za-z0-9\(]|\s?[.·•*]\s?[0-9.]*H2O)"
            : $@"\b(?i:{Regex.Escape(name)})";
}
