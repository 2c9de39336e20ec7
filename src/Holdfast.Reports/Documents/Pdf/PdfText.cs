using System.Globalization;
using System.Text;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Fonts;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>Text as atoms, and atoms as lines.</summary>
internal static class PdfText
{
    private const char FigureSpace = '\u2007';
    private const char MarkSpace = '\u2008';

    /// <summary>The atoms of some pieces.</summary>
    /// <param name="pieces">Texts and elements that stand in a line.</param>
    /// <param name="look">How they look.</param>
    public static IEnumerable<Atom> Atoms(IEnumerable<Node> pieces, Look look) => pieces.SelectMany(p => Atoms(p, look));

    /// <summary>Atoms in lines no wider than a width; what is wider by itself is divided.</summary>
    /// <param name="atoms">The atoms.</param>
    /// <param name="width">Width in pt.</param>
    public static IReadOnlyList<IReadOnlyList<Atom>> Lines(IEnumerable<Atom> atoms, double width)
    {
        var lines = new List<IReadOnlyList<Atom>>();
        var (line, word) = (new List<Atom>(), new List<Atom>());
        double lineWidth = 0, wordWidth = 0;
        Atom? joint = null;
        foreach (var atom in atoms)
        {
            if (atom is not Gap { Breaks: true } and not Gap { Ends: true })
            {
                foreach (var part in Divided(atom, width))
                {
                    if (wordWidth + part.Width > width && word.Count > 0)
                        Settle();
                    word.Add(part);
                    wordWidth += part.Width;
                }

                continue;
            }

            Settle();
            joint = atom;
            if (atom is Gap { Ends: true })
                End();
        }

        Settle();
        if (line.Count > 0 || lines.Count == 0)
            lines.Add(line);
        return lines;

        void Settle()
        {
            if (word.Count == 0)
                return;
            if (line.Count > 0 && lineWidth + (joint?.Width ?? 0) + wordWidth > width)
            {
                if (joint is Gap { Space: not null } space)
                    line.Add(space with { Room = 0 });
                End();
            }

            if (line.Count > 0 && joint is not null)
            {
                line.Add(joint);
                lineWidth += joint.Width;
            }

            line.AddRange(word);
            lineWidth += wordWidth;
            (joint, wordWidth) = (null, 0);
            word.Clear();
        }

        void End()
        {
            lines.Add([.. line]);
            line.Clear();
            (joint, lineWidth) = (null, 0);
        }
    }

    /// <summary>The least width of some atoms at which no word is divided, and the width in one line; in pt.</summary>
    /// <param name="atoms">The atoms.</param>
    public static (double Least, double Whole) Widths(IEnumerable<Atom> atoms)
    {
        double least = 0, word = 0, whole = 0;
        foreach (var atom in atoms)
        {
            word = atom is Gap { Breaks: true } ? 0 : word + atom.Width;
            whole += atom.Width;
            least = Math.Max(least, word);
        }

        return (least, whole);
    }

    private static IEnumerable<Atom> Atoms(Node node, Look look)
    {
        if (node is TextNode text)
            return RichText.Literal(text.Value).Runs.SelectMany(r => Words(r.Text, r.Shift switch { Shift.Super => look with { Drop = Look.Raised }, Shift.Sub => look with { Drop = Look.Lowered }, _ => look }));
        if (node is not Element element || Tree.IsForTheEye(element))
            return [];
        var inner = element.Name switch
        {
            "b" or "strong" => Atoms(element.Content, look with { Bold = true }),
            "i" or "em" => Atoms(element.Content, look with { Italic = true }),
            "sup" => Atoms(element.Content, look with { Drop = Look.Raised }),
            "sub" => Atoms(element.Content, look with { Drop = Look.Lowered }),
            "s" => Atoms(element.Content, look with { Struck = true }),
            "mark" => Atoms(element.Content, look with { Marked = true }),
            "math" => [PdfMath.Of(element, look.Size)],
            "br" => [new Gap(0, Ends: true)],
            "a" when element.Attribute("href") is { } to && to.StartsWith('#') => Atoms(element.Content, look).Select(a => a with { LeadsTo = to[1..] }),
            _ => Atoms(element.Content, look),
        };
        return element.Attribute("id") is { } id ? inner.Prepend(new Gap(0) { Place = id }) : inner;
    }

    // Words and the spaces between them; a hyphen between letters allows a break behind it.
    private static IEnumerable<Atom> Words(string text, Look look)
    {
        var face = LiberationSans.Face(look.Bold, look.Italic);
        double Room(string of) => face.Width(of) * (look.Drop == 0 ? look.Size : look.Size * look.ShiftedShare);
        var word = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (c is FigureSpace or MarkSpace || (char.IsWhiteSpace(c) && c != '\u00A0'))
            {
                if (word.Length > 0)
                    yield return new Letters(word.ToString(), look);
                word.Clear();
                yield return c switch { FigureSpace => new Gap(Room("0")), MarkSpace => new Gap(Room(".")), '\u202F' or '\u2009' => new Gap(Room(" ") / 2), _ => new Gap(Room(" "), Breaks: true) { Space = look } };
                continue;
            }

            var rune = char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]) ? new Rune(c, text[++i]) : Rune.TryCreate(c, out var one) ? one : Rune.ReplacementChar;
            if (c == '\u00A0')
                word.Append(' ');
            else if (face.Has(rune))
                word.Append(rune.ToString());
            else
                word.Append(CultureInfo.InvariantCulture, $"[U+{rune.Value:X4}]");
            if (c is '-' or '/' or '\u2010' && i > 0 && i + 1 < text.Length && char.IsLetter(text[i - 1]) && char.IsLetter(text[i + 1]))
            {
                yield return new Letters(word.ToString(), look);
                word.Clear();
                yield return new Gap(0, Breaks: true);
            }
        }

        if (word.Length > 0)
            yield return new Letters(word.ToString(), look);
    }

    // Letters wider than a line, such as a hash, go on in the next.
    private static IEnumerable<Atom> Divided(Atom atom, double width)
    {
        if (atom is not Letters { Text.Length: > 1 } letters || atom.Width <= width)
        {
            yield return atom;
            yield break;
        }

        var from = 0;
        for (var to = 1; to <= letters.Text.Length; to++)
        {
            if (to < letters.Text.Length && letters.Part(from, to + 1).Width <= width)
                continue;
            yield return letters.Part(from, to);
            from = to;
        }
    }
}
