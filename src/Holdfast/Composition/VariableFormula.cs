using System.Globalization;
using System.Text.RegularExpressions;

namespace Holdfast.Composition;

/// <summary>A formula with open counts, "Ca10-xEux(PO4)6(OH)2-xOx" or "Zn1-xCoxO": one formula for each value of its variables.</summary>
/// <remarks>Variables are x, y, z and δ, and n before hydrate water. "Dy" is always dysprosium. A count is a sum of numbers and variables: 1-x-y, 2x, 0.5x.</remarks>
public sealed partial class VariableFormula
{
    private const int LongestText = 200;

    private readonly string pattern;

    private VariableFormula(string text, string pattern, IReadOnlyList<char> variables) => (Text, this.pattern, Variables) = (text, pattern, variables);

    /// <summary>As written.</summary>
    public string Text { get; }

    /// <summary>The variables, in the order of first appearance.</summary>
    public IReadOnlyList<char> Variables { get; }

    /// <summary>Reads a formula with at least one variable.</summary>
    /// <param name="text">The formula.</param>
    public static Outcome<VariableFormula> Read(string? text)
    {
        var written = (text ?? "").Trim();
        if (written.Length > LongestText)
            return Outcome<VariableFormula>.None(Finding.Of("HF-499", Weight.Stop, "The formula is too long to be one."));
        var plain = written.Replace('\u2212', '-').Replace('\u2013', '-').Replace(" ", "", StringComparison.Ordinal)
            .Replace('ₓ', 'x').Replace('₋', '-').Replace('₊', '+');
        plain = string.Concat(plain.Select(c => c is >= '₀' and <= '₉' ? (char)('0' + (c - '₀')) : c));
        char[] variables = [.. Counts().Matches(plain).SelectMany(m => m.Value.Where(IsVariable)).Distinct()];
        if (variables.Length == 0)
            return Outcome<VariableFormula>.None(Finding.Of("HF-499", Weight.Stop, $"'{text}' has no open count such as 1-x: it is one formula."));
        var formula = new VariableFormula(written, plain, variables);

        // A value between 0 and 1 stands for any: what cannot be weighed there is no formula.
        return formula.At(variables.ToDictionary(v => v, _ => 0.125)) is { Value: null } refused ? Outcome<VariableFormula>.None([.. refused.Findings]) : new(formula, []);
    }

    /// <summary>The formula at given values; none when a count falls below 0.</summary>
    /// <param name="values">A value for each variable; no unit.</param>
    /// <exception cref="ArgumentException">A variable has no value.</exception>
    public Outcome<Formula> At(IReadOnlyDictionary<char, double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        string? below = null;
        var weighed = Counts().Replace(pattern, match =>
        {
            var count = 0.0;
            foreach (var term in Terms().Matches(match.Value.Trim('(', ')')).Cast<Match>())
            {
                var size = term.Groups["number"].Value is { Length: > 0 } number ? double.Parse(number, CultureInfo.InvariantCulture) : 1;
                if (term.Groups["variable"].Value is { Length: > 0 } variable)
                    size *= values.TryGetValue(variable[0], out var value) ? value : throw new ArgumentException($"{variable} has no value.", nameof(values));
                count += term.Groups["sign"].Value == "-" ? -size : size;
            }

            if (count < -1e-12)
                below = match.Value;
            return Math.Max(0, Math.Round(count, 12)).ToString("0.############", CultureInfo.InvariantCulture);
        });
        return below is null
            ? Formula.Read(weighed)
            : Outcome<Formula>.None(Finding.Of("HF-499", Weight.Stop, $"{below} in {Text} is below 0 there: fewer atoms than none."));
    }

    /// <summary>The formula at a value of its only variable.</summary>
    /// <param name="value">No unit.</param>
    /// <exception cref="InvalidOperationException">There are several variables.</exception>
    public Outcome<Formula> At(double value)
        => Variables.Count == 1 ? At(new Dictionary<char, double> { [Variables[0]] = value }) : throw new InvalidOperationException($"{Text} has {Variables.Count.ToString(CultureInfo.InvariantCulture)} variables.");

    private static bool IsVariable(char c) => c is 'x' or 'y' or 'z' or 'n' or 'δ';

    // A count that holds a variable, behind an element, a closed bracket or the dot of a hydrate, where n is one too. The y of Dy belongs to the symbol.
    // No limit of time, which would depend on how busy the computer is: the text is short, and no part can be matched in two ways.
    [GeneratedRegex(@"((?<=[·.*])n(?=H2O))|(?<=[A-Za-z)\]}·.*])(?<!D(?=y))(\(([0-9]+(\.[0-9]+)?[+-])*([0-9]+(\.[0-9]+)?)?[xyzδ]([+-]([0-9]+(\.[0-9]+)?)?[xyzδ]?)*\)|([0-9]+(\.[0-9]+)?[+-])*([0-9]+(\.[0-9]+)?)?[xyzδ]([+-]([0-9]+(\.[0-9]+)?)?[xyzδ]?)*)", RegexOptions.ExplicitCapture, Timeout.Infinite)]
    private static partial Regex Counts();

    [GeneratedRegex(@"(?<sign>[+-]?)((?<number>[0-9]+(\.[0-9]+)?)(?<variable>[xyznδ])?|(?<variable>[xyznδ]))", RegexOptions.ExplicitCapture, Timeout.Infinite)]
    private static partial Regex Terms();
}
