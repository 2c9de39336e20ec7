using System.Globalization;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Latex;

/// <summary>Text in a line, with the places that are referred to.</summary>
internal sealed class LatexText
{
    private readonly Dictionary<string, (string Name, bool IsExhibit)> places = new(StringComparer.Ordinal);

    /// <summary>Finds every place that something in the document refers to.</summary>
    /// <param name="pieces">The whole document.</param>
    public LatexText(IReadOnlyCollection<Node> pieces)
    {
        var wanted = Tree.Wanted(pieces);
        foreach (var element in pieces.SelectMany(Tree.All))
        {
            if (element.Attribute("id") is not { } id)
                continue;
            if (Tree.Caption(element) is { } caption && Tree.Label(caption.Words) is var (kind, number, _))
                places[id] = ($"{kind}-{number}", true);
            else if (wanted.Contains(id))
                places[id] = (string.Create(CultureInfo.InvariantCulture, $"place-{places.Count + 1}"), false);
        }
    }

    /// <summary>The source of some pieces.</summary>
    /// <param name="pieces">Texts and elements that stand in a line.</param>
    public string Runs(IEnumerable<Node> pieces) => string.Concat(pieces.Select(Run));

    /// <summary>The caption of a figure or table; the typesetting counts, and the label leads references to it.</summary>
    /// <param name="id">Address of the figure or table.</param>
    /// <param name="caption">The caption, its number included.</param>
    public string Caption(string? id, Element caption)
        => Tree.Label(caption.Words) is var (kind, number, length)
            ? $@"\caption{{{Runs(Tree.Behind(caption.Content, length + 1))}}}" + (id is not null && places.ContainsKey(id) ? $@"\label{{{kind}-{number}}}" : "")
            : $@"\caption*{{{Runs(caption.Content)}}}";

    /// <summary>The mark of the place with this address; nothing where nothing refers to it.</summary>
    /// <param name="id">The address, or null.</param>
    public string At(string? id) => id is not null && places.TryGetValue(id, out var place) && !place.IsExhibit ? $@"\hypertarget{{{place.Name}}}{{}}" : "";

    private string Run(Node node)
    {
        if (node is TextNode text)
            return LatexLetters.Text(text.Value);
        if (node is not Element element || Tree.IsForTheEye(element))
            return "";
        var inner = Runs(element.Content);
        return At(element.Attribute("id")) + element.Name switch
        {
            "b" or "strong" => $@"\textbf{{{inner}}}",
            "i" or "em" => $@"\textit{{{inner}}}",
            "sup" => $@"\textsuperscript{{{inner}}}",
            "sub" => $@"\textsubscript{{{inner}}}",
            "s" => $@"\struck{{{inner}}}",
            "mark" => $@"\missing{{{inner}}}",
            "math" => LatexMath.Of(element),
            "br" => @"\newline{}",
            "cite" when element.Attribute("data-source") is { } key => $@"{inner}~\cite{{{key}}}",
            "a" when element.Attribute("href") is { } to && to.StartsWith('#') && places.TryGetValue(to[1..], out var place) => Reference(element, place, inner),
            _ => inner,
        };
    }

    private static string Reference(Element element, (string Name, bool IsExhibit) place, string inner)
        => place.IsExhibit && Tree.Label(element.Words + ".") is var (kind, _, _) ? $@"{kind}~\ref{{{place.Name}}}"
            : place.IsExhibit ? inner
            : $@"\hyperlink{{{place.Name}}}{{{inner}}}";
}
