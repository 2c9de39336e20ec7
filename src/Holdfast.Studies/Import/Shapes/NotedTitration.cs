using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using W = Holdfast.Studies.Import.Headings.HeadingWord;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>What lines of text say of a titration: "EDTA 0.01000 mol/L; aliquot 20.00 mL; blank 0.16 mL".</summary>
/// <param name="Strength">Concentration of the titrant in mol/L.</param>
/// <param name="Aliquot">Volume that was titrated each time, mL; null where no line states it.</param>
/// <param name="Blank">What the blank took, mL; null where no line states it.</param>
/// <param name="IsBlankTakenOff">True where a line says that the blank is subtracted already.</param>
/// <param name="Line">The line that states the titrant.</param>
internal sealed partial record NotedTitration(double Strength, double? Aliquot, double? Blank, bool IsBlankTakenOff, string Line)
{
    private const double MillimolesOfAMole = 1000;

    // EDTA and its salt; it binds the cations of a sorption study one to one (common practice).
    private static readonly HashSet<string> OneToOne = new("edta edtano na2edta na2h2edta".Split(' '), StringComparer.Ordinal);
    private static readonly HashSet<string> Already = new("already bereits schon deja ya ja gia al reeds zaten juz redan jiz sudah subtracted deducted abgezogen soustrait deduit restado descontado sottratto detratto afgetrokken".Split(' '), StringComparer.Ordinal);

    /// <summary>What the lines say; null where none states a titrant that binds one to one with its concentration.</summary>
    /// <param name="lines">Lines above, beside and below a table.</param>
    public static NotedTitration? In(IEnumerable<string> lines)
    {
        double? strength = null, aliquot = null, blank = null;
        var (takenOff, line) = (false, "");
        foreach (var text in lines)
        {
            if (Ratio().Matches(text).Any(r => r.Groups["one"].Value != r.Groups["other"].Value))
                return null;
            foreach (var clause in text.Split(';'))
            {
                var tokens = Lexicon.Tokens(clause);
                if (strength is null && tokens.Any(OneToOne.Contains) && StrengthIn(clause) is { } stated)
                    (strength, line) = (stated, text);
                var words = Lexicon.Of(tokens);
                var volume = VolumeIn(clause);
                if (words.Contains(W.Blank))
                {
                    blank ??= volume;
                    takenOff |= volume is not null && tokens.Any(Already.Contains) && !tokens.Any(Lexicon.Denials.Contains) && !tokens.Contains("yet") && !tokens.Contains("noch");
                }
                else if (volume is not null && tokens.Any(ColumnGuess.Drawn.Contains))
                {
                    aliquot ??= volume;
                }
            }
        }

        return strength is > 0 and var found ? new(found, aliquot, blank, takenOff, line) : null;
    }

    /// <summary>True for a line that speaks of a titration: its volumes are no vessel's.</summary>
    /// <param name="line">The line.</param>
    public static bool Speaks(string line) => Lexicon.Tokens(line).Any(t => OneToOne.Contains(t) || t.StartsWith("titra", StringComparison.Ordinal) || t.StartsWith("titul", StringComparison.Ordinal) || t.StartsWith("titol", StringComparison.Ordinal));

    private static double? StrengthIn(string clause)
        => Strengths().Match(clause) is { Success: true } m && Number(m.Groups["number"].Value) is { } value ? m.Groups["unit"].Value.StartsWith("mm", StringComparison.Ordinal) || m.Groups["unit"].Value == "mM" ? value / MillimolesOfAMole : value : null;

    private static double? VolumeIn(string clause) => Volumes().Match(clause) is { Success: true } m ? Number(m.Groups["number"].Value) : null;

    private static double? Number(string text) => CellText.Read(text, text.Contains(',', StringComparison.Ordinal) ? DecimalMark.Comma : DecimalMark.Point) is CellText.Number number ? number.Value : null;

    // "0.01000 mol/L", "EDTA (mol/L) 0.005", "10 mM".
    [GeneratedRegex(@"(?<number>\d+([.,]\d+)?)\s*(?<unit>mmol/[Ll]|mmol L-1|mM|mol/[Ll]|mol L-1|mol·L-1|mol dm-3|M)\b|[(\[]\s*(?<unit>mmol/[Ll]|mmol L-1|mM|mol/[Ll]|mol L-1|mol·L-1|mol dm-3|M)\s*[)\]]\s*[:=]?\s*(?<number>\d+([.,]\d+)?)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Strengths();

    [GeneratedRegex(@"(?<number>\d+([.,]\d+)?)\s*(mL|ml|cm3|cm³)\b|[(\[]\s*(mL|ml|cm3|cm³)\s*[)\]]\s*[:=]?\s*(?<number>\d+([.,]\d+)?)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Volumes();

    [GeneratedRegex(@"\b(?<one>[1-6])\s*:\s*(?<other>[1-6])\b", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Ratio();
}
