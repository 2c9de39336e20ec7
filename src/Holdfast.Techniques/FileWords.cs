using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques;

/// <summary>Words of a file as all techniques compare them, and what the lines around a table and the name of its file say of the powder.</summary>
internal static partial class FileWords
{
    private const int LongestText = 240;
    private const string Raised = "¹²³⁴⁵⁶⁷⁸⁹⁻₀₁₂₃₄₅₆₇₈₉−–‐‑ºµ⁰";
    private const string Level = "123456789-0123456789----°μ°";
    private const string NamesPowder = "sample samplename specimen powder material title probe probenname echantillon muestra amostra campione monster probka numune sampel 样品 образец";
    private const string NoName = "edx eds xeds sem tem ftir ir atr icp xrf chn particles partikel sizes lengths langen laengen longueurs longitudes lunghezze comprimentos dlugosci rods points puntos pontos punkte punkty oxides oxidos oxydes ossidi tlenki dosage digest digests aufschluss comptage spectrum spectra spektrum data";

    /// <summary>Lower case, without accents, with raised and lowered digits as plain ones: "cm³ g⁻¹" is "cm3 g-1", "p/p₀" is "p/p0".</summary>
    /// <param name="text">Any text.</param>
    public static string Plain(string text)
    {
        // By a table of our own: what the platform can take apart depends on how it was built.
        var plain = new StringBuilder(text.Length);
        foreach (var c in text.AsSpan(0, Math.Min(text.Length, LongestText)))
        {
            var at = Raised.IndexOf(c, StringComparison.Ordinal);
            plain.Append(at >= 0 ? Level[at] : char.ToLowerInvariant(c));
        }

        return Spaces().Replace(Lexicon.Plain(plain.ToString()).ToLowerInvariant(), " ").Trim();
    }

    /// <summary>The powder's name: what a line states, else what is left of the file's name without words of the technique; asked where it can be wrong.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="lines">Lines around the table.</param>
    public static string Powder(MeasurementSource source, IEnumerable<GridRow> lines)
    {
        var stem = Stem(source);
        var (stated, row) = Stated(lines);
        // Sheets that have codes of their own are powders of their own, whatever the workbook is called.
        if (stated is null && source.File.Length > 1 && source.Grid.Sheet is { } sheet && IsCode(sheet))
            return PowderName.Settle(source, null);

        // "ceria in zirconia CZ-10" in the file CZ-10.csv: the file has the short name of it.
        if (stated is not null && stated.Contains(' ', StringComparison.Ordinal) && stem.Length > 2 && Key(stated).Contains(Key(stem), StringComparison.Ordinal))
            stated = null;
        if (stated is null && (InTitle(lines) ?? InNameAndLine(source, lines)) is { } titled)
            (stated, row) = titled;
        return PowderName.Settle(source, stated ?? (stem.Length > 0 && !string.Equals(stem, Path.GetFileNameWithoutExtension(source.Talk.FileName), StringComparison.Ordinal) ? stem : null), stated is null ? 0 : row);
    }

    /// <summary>True for a key that says that a powder's name follows: "Sample", "Probe".</summary>
    /// <param name="key">The key.</param>
    public static bool NamesAPowder(string key) => MeasuredTable.Has(key.Replace(" ", "", StringComparison.Ordinal), NamesPowder);

    /// <summary>A name as the study spells it already, or as it stands.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="name">The name.</param>
    public static string Spelled(MeasurementSource source, string name) => PowderName.Known(source.Study).FirstOrDefault(k => PowderName.Same(k, name)) ?? name.Normalize();

    /// <summary>The number in front of a unit of wavenumbers in a line: "4 cm-1"; null for none.</summary>
    /// <param name="text">The line.</param>
    /// <param name="after">Unit in plain spelling: "cm-1".</param>
    public static double? NumberBefore(string text, string after)
    {
        var plain = FileWords.Plain(text).Replace("cm^-1", "cm-1", StringComparison.Ordinal).Replace("1/cm", "cm-1", StringComparison.Ordinal);
        for (var at = plain.IndexOf(after, StringComparison.Ordinal); at > 0; at = plain.IndexOf(after, at + 1, StringComparison.Ordinal))
        {
            var end = at;
            while (end > 0 && plain[end - 1] == ' ')
                end--;
            var start = end;
            while (start > 0 && (char.IsAsciiDigit(plain[start - 1]) || plain[start - 1] is '.' or ','))
                start--;
            if (start < end && double.TryParse(plain[start..end].Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value > 0)
                return value;
        }

        return null;
    }

    private static string Stem(MeasurementSource source)
    {
        var name = Path.GetFileNameWithoutExtension(source.Talk.FileName);
        string[] parts = [.. name.Split('_', ' ').Where(p => p.Length > 0)];
        return string.Join('_', parts.Where(p => !NoName.Split(' ').Contains(FileWords.Plain(p).Replace("-", "", StringComparison.Ordinal), StringComparer.Ordinal)));
    }

    private static (string? Name, int Row) Stated(IEnumerable<GridRow> lines)
    {
        foreach (var row in lines)
        {
            ImmutableArray<string> cells = [.. row.Cells.Where(c => !c.IsBlank).Select(c => c.Text)];
            if (cells.Length == 0)
                continue;
            var mark = cells[0].IndexOfAny([':', '=']);
            var (key, value) = mark > 0 ? (cells[0][..mark], string.Join(' ', cells.Skip(1).TakeWhile(c => !c.Contains(':', StringComparison.Ordinal)).Prepend(cells[0][(mark + 1)..].Trim())).Trim()) : (cells[0], cells.Length == 2 ? cells[1] : "");
            if (value.Length is > 0 and <= 60 && key.Trim().TrimStart('#').Trim().Length <= 24 && NamesAPowder(key))
                return (value, row.Number);
        }

        return (null, 0);
    }

    // "Rods of powder RW-Ti, three images": a code right behind a word for the powder, and no other code behind another.
    private static (string Name, int Row)? InTitle(IEnumerable<GridRow> lines)
    {
        var named = new List<(string Name, int Row)>();
        foreach (var row in lines.Where(r => r.Filled == 1))
        {
            string[] words = [.. row.Cells.First(c => !c.IsBlank).Text.Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries)];
            named.AddRange(Enumerable.Range(1, Math.Max(0, words.Length - 1)).Where(i => IsCode(words[i]) && MeasuredTable.Has(words[i - 1], NamesPowder + " pulver* poudre* polvo* polvere* proszek proszk* po")).Select(i => (words[i].TrimEnd('.', ':'), row.Number)));
        }

        return named.DistinctBy(n => n.Name, StringComparer.OrdinalIgnoreCase).ToList() is [var only] ? only : null;
    }

    // "PB-3_ontsluiting.csv" over "lead on apatite PB-3": the only code that the file's name and a line of it have in common.
    private static (string Name, int Row)? InNameAndLine(MeasurementSource source, IEnumerable<GridRow> lines)
    {
        string[] parts = Path.GetFileNameWithoutExtension(source.Talk.FileName).Split(['_', ' '], StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length < 2)
            return null;
        var common = lines.SelectMany(r => r.Cells.Where(c => !c.IsBlank).SelectMany(c => c.Text.Split([' ', ',', ';', ':', '(', ')'])).Where(w => IsCode(w) && parts.Contains(w, StringComparer.OrdinalIgnoreCase)).Select(w => (Name: w, Row: r.Number)));
        return common.DistinctBy(c => c.Name, StringComparer.OrdinalIgnoreCase).ToList() is [var only] ? only : null;
    }

    /// <summary>True for letters with a number or a stroke, and no formula: what the powder is made of is not what it is called.</summary>
    /// <param name="word">A word.</param>
    public static bool IsCode(string word)
        => word.Length is > 1 and <= 20 && char.IsLetter(word[0]) && word.Any(char.IsUpper) && word.Any(c => char.IsDigit(c) || c == '-') && !word.Contains('=', StringComparison.Ordinal) && (word.Contains('-', StringComparison.Ordinal) || Composition.Formula.Read(word).Value is null);

    private static string Key(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    [GeneratedRegex(@"\s+", RegexOptions.NonBacktracking)]
    private static partial Regex Spaces();
}
