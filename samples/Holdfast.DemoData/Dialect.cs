using System.Globalization;

namespace Holdfast.DemoData;

/// <summary>How a program writes a table as text.</summary>
/// <param name="Separator">Between two cells.</param>
/// <param name="DecimalMark">Between whole number and fraction.</param>
public sealed record Dialect(char Separator, char DecimalMark)
{
    /// <summary>Semicolon and decimal comma, as spreadsheets of many countries write.</summary>
    public static readonly Dialect Semicolon = new(';', ',');

    /// <summary>Comma and decimal point.</summary>
    public static readonly Dialect Comma = new(',', '.');

    /// <summary>Tabulator and decimal point.</summary>
    public static readonly Dialect Tab = new('\t', '.');

    private const int Figures = 12;

    /// <summary>One line.</summary>
    /// <param name="cells">Words, numbers or nothing.</param>
    public string Line(params object?[] cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        return string.Join(Separator, cells.Select(Cell));
    }

    /// <summary>
    /// A number with 12 figures and no trailing zeros: more than an instrument shows, so that every quantity of the demo can be
    /// checked against an independent program, and few enough that the last bit of a logarithm never shows.
    /// </summary>
    /// <param name="value">Any finite number.</param>
    public static string Number(double value)
    {
        if (value == 0)
            return "0";
        var decimals = Math.Clamp(Figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 20);
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return decimals == 0 ? text : text.TrimEnd('0').TrimEnd('.');
    }

    private string Cell(object? content) => content switch
    {
        null => "",
        string words => Quoted(words),
        double number => Number(number).Replace('.', DecimalMark),
        int count => count.ToString(CultureInfo.InvariantCulture),
        _ => throw new ArgumentException($"A cell holds words or a number, not {content.GetType().Name}.", nameof(content)),
    };

    private string Quoted(string words) => words.Contains(Separator, StringComparison.Ordinal) ? $"\"{words}\"" : words;
}
