using System.Collections.Immutable;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Microsoft.AspNetCore.Components;

namespace Holdfast.Web.Live;

/// <summary>A section of results as pages: whole where it is short, else an opening and a page for each of its parts, so that no page grows with the study.</summary>
/// <param name="Id">Its address: "isotherms", "isotherms/series-iso-298" for a part.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Markup">What its own page holds.</param>
/// <param name="Figures">Names of the figures in it and in its parts, as they come.</param>
/// <param name="Parts">Its parts, each on a page of its own; empty for a section that stands on one page.</param>
public sealed record FoundSection(string Id, string Title, MarkupString Markup, ImmutableArray<string> Figures, ImmutableArray<FoundSection> Parts)
{
    /// <summary>Most elements that a section keeps on one page; with the frame around it a page stays below 2,500.</summary>
    public const int MostElements = 1800;

    /// <summary>Where it is shown.</summary>
    public string Address => "/findings/section/" + Id;

    /// <summary>A section, divided at its headings where it is too long for one page.</summary>
    /// <param name="id">Its address.</param>
    /// <param name="title">Its heading.</param>
    /// <param name="content">What it holds, with a heading of the third order over each part.</param>
    public static FoundSection Of(string id, string title, IReadOnlyList<Node> content)
    {
        ArgumentNullException.ThrowIfNull(content);
        ImmutableArray<string> figures = [.. content.SelectMany(FiguresIn)];
        int[] heads = [.. Enumerable.Range(0, content.Count).Where(i => content[i] is Element { Name: "h3" })];
        if (heads.Length < 2 || content.Sum(Elements) <= MostElements)
            return new(id, title, Written(content), figures, []);
        var parts = heads.Select((from, i) =>
        {
            var name = content[from].Words;
            Node[] body = [.. content.Take((heads.ElementAtOrDefault(i + 1) is > 0 and var next ? next : content.Count)).Skip(from + 1)];
            return new FoundSection($"{id}/{LevelTable.Id(name)}", name, Written(body), [.. body.SelectMany(FiguresIn)], []);
        });
        return new(id, title, Written(content.Take(heads[0])), figures, [.. parts]);
    }

    private static MarkupString Written(IEnumerable<Node> content) => new(string.Concat(content.Select(n => n.ToHtml())));

    private static int Elements(Node node) => node is Element element ? 1 + element.Content.Sum(Elements) : 0;

    private static IEnumerable<string> FiguresIn(Node node)
        => node is not Element element ? []
            : element.Attribute("data-figure") is { } id ? [id]
            : element.Content.SelectMany(FiguresIn);
}
