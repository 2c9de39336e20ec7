using System.Collections.Immutable;
using Holdfast.Reports.Documents.Latex;
using Holdfast.Reports.Documents.Pdf;
using Holdfast.Reports.Documents.Sources;
using Holdfast.Reports.Documents.Word;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents;

/// <summary>
/// A document of one study, before any format: headings, paragraphs with runs, tables, figures, equations, lists and references as one tree, made once. Every
/// format is written from it, so that no two of them can differ in a word or a number.
/// </summary>
/// <remarks>
/// The tree uses the elements of HTML for what they mean: h1 to h4, p, ul, table, figure, math, mark for a gap, and "a" with the
/// address of a figure, table or part for a reference to it.
/// </remarks>
public sealed class WrittenDocument
{
    internal WrittenDocument(string name, string title, Numbering numbering, Element opening, IEnumerable<Section> sections, Element foot)
    {
        Name = name;
        Title = title;
        Opening = Notation.Set(opening);
        Sections = [.. sections.Select(s => s with { Content = [.. s.Content.Select(Notation.Set)] })];
        Foot = Notation.Set(foot);
        Figures = numbering.Figures;
        FigureSize = numbering.Size;
    }

    /// <summary>What it is, as its file is named: "chapter", "record".</summary>
    public string Name { get; }

    /// <summary>Its title.</summary>
    public string Title { get; }

    /// <summary>Who wrote it, as recorded; empty where nobody is.</summary>
    public string Author { get; internal init; } = "";

    /// <summary>Said on every page, such as that the data are invented; empty for nothing.</summary>
    public string Notice { get; internal init; } = "";

    /// <summary>Fingerprint of the history it was made from; empty for none.</summary>
    public string Fingerprint { get; internal init; } = "";

    /// <summary>True where the sections bear numbers.</summary>
    internal bool IsNumbered { get; init; }

    /// <summary>What stands before the first section.</summary>
    internal Element Opening { get; }

    /// <summary>What stands behind the last.</summary>
    internal Element Foot { get; }

    /// <summary>Its sections.</summary>
    internal ImmutableArray<Section> Sections { get; }

    /// <summary>What it cites.</summary>
    internal IReadOnlyList<CitedSource> Sources => SourceList.In(Tree.Pieces(this));

    /// <summary>Every figure in it by the address of its element, for formats that draw it themselves.</summary>
    internal IReadOnlyDictionary<string, Figure> Figures { get; }

    /// <summary>The size of each figure.</summary>
    internal Func<Figure, FigureFormat> FigureSize { get; }

    /// <summary>As one self-contained page: no script, nothing loaded from elsewhere.</summary>
    public string Html() => DocumentHtml.Of(this);

    /// <summary>As DOCX: the same document gives the same bytes.</summary>
    public byte[] Docx() => WordFile.Of(this);

    /// <summary>As PDF of A4 pages, its typeface inside: the same document gives the same bytes.</summary>
    public byte[] Pdf() => PdfFile.Of(this);

    /// <summary>
    /// As LaTeX: the source first, then its bibliography as BibTeX and CSL-JSON where it cites something, then its figures as PDF. Names are those that the source
    /// itself uses, so the files stay beside each other.
    /// </summary>
    public IReadOnlyList<DocumentFile> Latex() => LatexFile.Of(this);

    /// <summary>The heading of a section.</summary>
    /// <param name="index">Its place, from 0.</param>
    internal string Heading(int index) => IsNumbered ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{index + 1}. {Sections[index].Title}") : Sections[index].Title;
}
