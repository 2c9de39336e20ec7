using System.Globalization;

namespace Holdfast.Reports.Markup;

/// <summary>
/// A formula in one line, as model cards write it ("q = qm·K·C / (1 + K·C)"), as a MathML tree (W3C MathML Core). Letters after the first lower themselves,
/// a solidus makes a fraction of the factors before it and the one behind it, ^ raises. It is the one form of an equation from which every format is written.
/// </summary>
public static class FormulaMath
{
    private static readonly HashSet<string> Functions = new(StringComparer.Ordinal) { "exp", "ln", "lg" };

    /// <summary>The equation, to stand in a line of text.</summary>
    /// <param name="formula">The formula: names, numbers, + − · / ^ ² √ Σ = and round brackets.</param>
    /// <exception cref="FormatException">A sign is not known or a bracket is not closed.</exception>
    public static Element Of(string formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var reader = new Reader(formula);
        var row = reader.Relation();
        return reader.AtEnd
            ? Html.Element("math", [("aria-label", formula)], row)
            : throw new FormatException($"The formula '{formula}' cannot be read at position {reader.At.ToString(CultureInfo.InvariantCulture)}.");
    }

    private sealed class Reader(string text)
    {
        public int At { get; private set; }

        public bool AtEnd
        {
            get
            {
                Skip();
                return At >= text.Length;
            }
        }

        private char Next
        {
            get
            {
                Skip();
                return At < text.Length ? text[At] : '\0';
            }
        }

        public Element Relation()
        {
            var parts = new List<Node>();
            parts.AddRange(Sum());
            while (Next == '=')
            {
                parts.Add(Sign(text[At++]));
                parts.AddRange(Sum());
            }

            return Html.Element("mrow", parts);
        }

        private List<Node> Sum()
        {
            var parts = new List<Node>();
            if (Next is '−' or '-')
            {
                At++;
                parts.Add(Sign('−'));
            }

            parts.AddRange(Product());
            while (Next is '+' or '−' or '-')
            {
                parts.Add(Sign(text[At++] == '+' ? '+' : '−'));
                parts.AddRange(Product());
            }

            return parts;
        }

        private List<Node> Product()
        {
            var factors = Power(inFraction: false);
            while (true)
            {
                if (Next == '·')
                {
                    At++;
                    factors.Add(Sign('·'));
                    factors.AddRange(Power(inFraction: false));
                }
                else if (Next == '/')
                {
                    At++;
                    factors = [Html.Element("mfrac", Html.Element("mrow", Bare(factors)), Html.Element("mrow", Power(inFraction: true)))];
                }
                else if (Next is 'Σ' || IsAtom(Next))
                {
                    factors.AddRange(Power(inFraction: false));
                }
                else
                {
                    return factors;
                }
            }
        }

        // A numerator in brackets of its own needs none above the bar.
        private static IEnumerable<Node> Bare(List<Node> factors)
            => factors is [Element { Name: "mrow" } only] && only.Content is [Element { Name: "mo" } open, .., Element { Name: "mo" }] && open.Content is [TextNode { Value: "(" }]
                ? only.Content.Skip(1).SkipLast(1) : factors;

        private List<Node> Power(bool inFraction)
        {
            var part = Atom(inFraction);
            while (true)
            {
                if (Next == '²')
                {
                    At++;
                    part = [Html.Element("msup", Html.Element("mrow", part), Html.Element("mn", "2"))];
                }
                else if (Next == '^')
                {
                    At++;
                    part = [Html.Element("msup", Html.Element("mrow", part), Html.Element("mrow", Atom(inFraction: true)))];
                }
                else
                {
                    return part;
                }
            }
        }

        private List<Node> Atom(bool inFraction)
        {
            var c = Next;
            if (c == '(')
                return Bracketed(!inFraction);
            if (c == '√')
            {
                At++;
                return [Html.Element("msqrt", Html.Element("mrow", Atom(inFraction: true)))];
            }

            if (c == 'Σ')
            {
                At++;
                return [Sign('Σ')];
            }

            if (char.IsAsciiDigit(c))
                return [Html.Element("mn", While(x => char.IsAsciiDigit(x) || x == '.'))];
            if (!char.IsLetter(c))
                throw new FormatException($"The formula '{text}' has a sign at position {At.ToString(CultureInfo.InvariantCulture)} that is not known.");
            var name = While(char.IsLetterOrDigit);
            if (!Functions.Contains(name))
                return [Symbol(name)];
            var called = new List<Node>();
            Node function = Html.Element("mi", [("mathvariant", "normal")], name);
            if (Next == '²')
            {
                At++;
                function = Html.Element("msup", function, Html.Element("mn", "2"));
            }

            called.Add(function);
            if (Next == '(')
                called.AddRange(Bracketed(withBrackets: true));
            return called;
        }

        private List<Node> Bracketed(bool withBrackets)
        {
            At++;
            var inner = Sum();
            if (Next != ')')
                throw new FormatException($"The formula '{text}' has a bracket that is not closed.");
            At++;
            return withBrackets ? [Html.Element("mrow", [Sign('('), .. inner, Sign(')')])] : inner;
        }

        // The first letter is the symbol; what follows tells it from its like.
        private static Element Symbol(string name)
            => name.Length == 1 ? Html.Element("mi", name)
                : Html.Element("msub", Html.Element("mi", name[..1]), name.Skip(1).All(char.IsAsciiDigit) ? Html.Element("mn", name[1..]) : Html.Element("mi", [("mathvariant", "normal")], name[1..]));

        private static Element Sign(char sign) => Html.Element("mo", sign.ToString());

        private static bool IsAtom(char c) => char.IsLetterOrDigit(c) || c is '(' or '√';

        private string While(Func<char, bool> belongs)
        {
            var from = At;
            while (At < text.Length && belongs(text[At]) && text[At] != '²')
                At++;
            return text[from..At];
        }

        private void Skip()
        {
            while (At < text.Length && (text[At] is ' ' or '\u00A0'))
                At++;
        }
    }
}
