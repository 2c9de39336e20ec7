using System.Globalization;
using System.Text;
using Holdfast.Reports.Documents.Sources;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Latex;

/// <summary>
/// A document as LaTeX source that pdfLaTeX of a standard distribution takes, its figures as PDF beside it, and its sources for a bibliography as BibTeX and as CSL-JSON.
/// Figures and tables are counted by the typesetting and referred to by their labels. The same document gives the same bytes.
/// </summary>
internal sealed class LatexFile
{
    // TeX's point is 1/72.27 inch. A4 less two margins of 20 mm, upright and on its side.
    private const double PointsPerMm = 72.27 / 25.4;
    private const double TextWidth = 170 * PointsPerMm;
    private const double TextLength = 257 * PointsPerMm;

    private readonly WrittenDocument document;
    private readonly LatexText text;
    private readonly StringBuilder to = new();
    private readonly List<DocumentFile> pictures = [];
    private readonly string folder;

    private LatexFile(WrittenDocument document)
    {
        this.document = document;
        text = new(Tree.Pieces(document));
        folder = document.Name + "-figures";
    }

    /// <summary>The source first, then what lies beside it.</summary>
    /// <param name="document">The document.</param>
    public static IReadOnlyList<DocumentFile> Of(WrittenDocument document)
    {
        var file = new LatexFile(document);
        file.Write();
        var sources = document.Sources;
        return
        [
            new(document.Name + ".tex", Encoding.UTF8.GetBytes(file.to.ToString())),
            .. sources.Count > 0
                ? [new(document.Name + ".bib", Encoding.UTF8.GetBytes(BibTex.Of(sources))), new DocumentFile(document.Name + ".csl.json", Encoding.UTF8.GetBytes(CslJson.Of(sources)))]
                : Array.Empty<DocumentFile>(),
            .. file.pictures,
        ];
    }

    private void Write()
    {
        to.Append(Head());
        Blocks(document.Opening.Content);
        foreach (var section in document.Sections)
        {
            to.Append(CultureInfo.InvariantCulture, $"\n\\section{(document.IsNumbered ? "" : "*")}{{{LatexLetters.Text(section.Title)}}}{text.At("section-" + section.Id)}{text.At(section.Id + "-heading")}\n");
            Blocks(section.Content);
        }

        Blocks(document.Foot.Content);
        if (document.Sources.Count > 0)
            to.Append(CultureInfo.InvariantCulture, $"\n\\bibliographystyle{{unsrt}}\n\\bibliography{{{document.Name}}}\n");
        to.Append("\n\\end{document}\n");
    }

    private string Head() => string.Create(CultureInfo.InvariantCulture, $$$"""
        % {{{LatexLetters.OneLine(document.Title)}}}
        % Run: pdflatex {{{document.Name}}}, bibtex {{{document.Name}}}, pdflatex {{{document.Name}}} twice. Every package is part of a standard distribution.
        \documentclass[10pt,a4paper]{article}
        \usepackage[utf8]{inputenc}
        \usepackage[T1]{fontenc}
        \usepackage{textcomp}
        \IfFileExists{lmodern.sty}{\usepackage{lmodern}}{}
        \usepackage[english]{babel}
        \usepackage[margin=20mm]{geometry}
        \usepackage{amsmath}
        \usepackage{array,longtable,booktabs}
        \usepackage{caption}
        \usepackage{graphicx}
        \usepackage{color}
        \usepackage{pdflscape}
        \usepackage[hidelinks]{hyperref}
        \hypersetup{pdftitle={{{{LatexLetters.Text(document.Title)}}}},pdfauthor={{{{LatexLetters.Text(document.Author)}}}}}
        \captionsetup{labelsep=period,labelfont=bf,justification=raggedright,singlelinecheck=off,font=footnotesize}
        \setcounter{secnumdepth}{1}
        \setlength{\parindent}{0pt}
        \setlength{\parskip}{4pt plus 1pt}
        \setlength{\tabcolsep}{3pt}
        \setlength{\LTpre}{6pt}
        \setlength{\LTpost}{4pt}
        \emergencystretch=3em
        \raggedbottom
        % A value that is struck, and a fact that is not recorded.
        \newcommand{\struck}[1]{\leavevmode\setbox0=\hbox{#1}\rlap{\rule[.5ex]{\wd0}{.4pt}}\box0{}}
        \newcommand{\missing}[1]{\colorbox{yellow}{#1}}
        \pagestyle{myheadings}
        \markright{{{{LatexLetters.Text(document.Notice)}}}}
        \begin{document}

        """);

    private void Blocks(IEnumerable<Node> pieces)
    {
        foreach (var piece in Tree.OnPaper(pieces))
        {
            if (piece is Element element)
                Block(element);
            else if (piece is TextNode { Value: var words } && words.Trim().Length > 0)
                Paragraph(LatexLetters.Text(words));
        }
    }

    private void Block(Element element)
    {
        var at = text.At(element.Attribute("id"));
        switch (element.Name)
        {
            case "h1":
                Paragraph($@"{{\LARGE\bfseries\raggedright {text.Runs(element.Content)}\par}}{at}");
                break;
            case "h2" or "h3" or "h4":
                to.Append(CultureInfo.InvariantCulture, $"\n\\{(element.Name switch { "h2" => "section", "h3" => "subsection", _ => "subsubsection" })}*{{{text.Runs(element.Content)}}}{at}\n");
                break;
            case "p":
                Paragraph(at + (Tree.IsOf(element, "table-notes") ? $@"{{\footnotesize {text.Runs(element.Content)}\par}}" : text.Runs(element.Content)));
                break;
            case "ul" or "ol":
                to.Append(at).Append("\n\\begin{itemize}\\setlength{\\itemsep}{0pt}\n");
                foreach (var item in element.Content.OfType<Element>())
                    to.Append(CultureInfo.InvariantCulture, $"\\item {text.At(item.Attribute("id"))}{text.Runs(item.Content)}\n");
                to.Append("\\end{itemize}\n");
                break;
            case "dl":
                foreach (var (name, value) in Tree.Facts(element))
                    Paragraph($@"\textbf{{{text.Runs(name.Content)}}}: {text.Runs(value.Content)}");
                break;
            case "table":
                Table(element, at);
                break;
            case "figure":
                Figures([element], "");
                break;
            case "div" when Tree.IsOf(element, "pair"):
                Element[] pair = [.. element.Content.OfType<Element>()];
                Figures(pair, pair.Length > 1 ? @"[b]{0.49\textwidth}" : "");
                break;
            default:
                to.Append(at);
                Blocks(element.Content);
                break;
        }
    }

    private void Paragraph(string source) => to.Append(CultureInfo.InvariantCulture, $"\n{source}\n");

    private void Table(Element table, string at)
    {
        var side = LatexTable.Read(table).Least > TextWidth;
        to.Append(at).Append(side ? "\n\\begin{landscape}\n" : "\n").Append("{\\footnotesize\n").Append(LatexTable.Of(table, text, side ? TextLength : TextWidth)).Append("}\n");
        if (side)
            to.Append("\\end{landscape}\n");
    }

    private void Figures(Element[] figures, string box)
    {
        to.Append("\n\\begin{figure}[!htbp]\n");
        foreach (var element in figures)
        {
            var id = element.Attribute("id");
            if (id is null || !document.Figures.TryGetValue(id, out var figure))
            {
                Blocks([element]);
                continue;
            }

            var format = document.FigureSize(figure);
            var name = string.Create(CultureInfo.InvariantCulture, $"{folder}/{pictures.Count + 1:00}-{string.Concat(figure.Id.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'))}.pdf");
            pictures.Add(new(name, PdfFigure.File(figure, format)));
            to.Append(CultureInfo.InvariantCulture, $"% {LatexLetters.OneLine(figure.Alt)}\n");
            var picture = string.Create(CultureInfo.InvariantCulture, $"\\includegraphics[width={format.WidthMm:0.##}mm]{{{name}}}\n{(Tree.Caption(element) is { } caption ? text.Caption(id, caption) : "")}\n");
            to.Append(box.Length == 0 ? picture : $"\\begin{{minipage}}{box}\n{picture}\\end{{minipage}}{(ReferenceEquals(element, figures[^1]) ? "" : @"\hfill")}\n");
        }

        to.Append("\\end{figure}\n");
    }
}
