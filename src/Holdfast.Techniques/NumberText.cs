using System.Globalization;

namespace Holdfast.Techniques;

/// <summary>Numbers and words as files of measurements have them: points, every digit, nothing that breaks a line.</summary>
internal static class NumberText
{
    /// <summary>Shortest text that reads back as the same number.</summary>
    /// <param name="value">A number.</param>
    public static string Of(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Words on one line: no control signs.</summary>
    /// <param name="words">Any words.</param>
    public static string Line(string words) => string.Concat(words.ReplaceLineEndings(" ").Select(c => char.IsControl(c) ? ' ' : c)).Trim();

    /// <summary>Words as a value of a CIF: in quotation marks that do not stand in them, or between lines that begin with a semicolon.</summary>
    /// <remarks>CIF 1.1 syntax: a quotation mark ends a string only where a space follows; here a mark that occurs at all is not used.</remarks>
    /// <param name="words">Any words.</param>
    public static string Cif(string words)
    {
        var line = Line(words);
        return line.Length == 0 ? "?" : !line.Contains('\'', StringComparison.Ordinal) ? $"'{line}'" : !line.Contains('"', StringComparison.Ordinal) ? $"\"{line}\"" : $"\n;{line}\n;";
    }

    /// <summary>Name of a data block of a CIF: letters, digits, hyphens and underscores.</summary>
    /// <param name="id">Id of the measurement.</param>
    /// <param name="sample">What was measured.</param>
    public static string Block(string id, string sample) => "data_" + string.Concat($"{id}_{sample}".Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' ? c : '_'));
}
