using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Studies;
using Holdfast.Studies.Acts;

namespace Holdfast.Reports.Documents;

/// <summary>A fact that the methods text lacks, with the place where it is filled in.</summary>
/// <param name="Key">Which fact: the key of a <see cref="StudyDetail"/>, or what it is about and its name with colons between.</param>
/// <param name="What">What is lacking, in words.</param>
/// <param name="Page">The page where it is filled in, by its name.</param>
/// <param name="Address">Address of that place on the page.</param>
/// <param name="Command">What fills it in from the terminal.</param>
public sealed record MethodsGap(string Key, string What, string Page, string Address, string Command)
{
    private const string Attribute = "data-gap";

    /// <summary>Every gap in the methods of a study, in the order of the text, each once.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static ImmutableArray<MethodsGap> Of(Dossier dossier)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        return [.. MethodsSection.Text(dossier).SelectMany(KeysIn).Distinct(StringComparer.Ordinal).Select(Of).OfType<MethodsGap>()];
    }

    /// <summary>The methods text as a page shows it: every gap leads to the place where it is filled in.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static ImmutableArray<Node> OnPage(Dossier dossier) => [.. MethodsSection.Text(dossier).Select(Linked)];

    /// <summary>A piece of a report with its gaps turned into links.</summary>
    /// <param name="node">The piece.</param>
    public static Node Linked(Node node)
    {
        if (node is not Element element)
            return node;
        return element.Attribute(Attribute) is { } key && Of(key) is { } gap
            ? Html.Element("a", [("class", "blank"), ("href", gap.Address), ("aria-label", $"{gap.What}, not recorded: fill it in")], Prose.NotRecorded)
            : new Element(element.Name, element.Attributes.Select(a => (a.Name, (string?)a.Value)), element.Content.Select(Linked));
    }

    /// <summary>Where the gaps of some pieces are filled in, a line a place; nothing where there is none.</summary>
    /// <param name="pieces">Pieces of the report.</param>
    internal static IEnumerable<Node> Places(IEnumerable<Node> pieces)
    {
        var gaps = pieces.SelectMany(KeysIn).Distinct(StringComparer.Ordinal).Select(Of).OfType<MethodsGap>().ToArray();
        if (gaps.Length == 0)
            yield break;
        yield return Prose.Heading("To fill in");
        yield return Prose.List(gaps.GroupBy(g => (Page: g.Page.Split(',')[0], Command: g.Key.StartsWith("role:", StringComparison.Ordinal) ? "holdfast role" : g.Command[..g.Command.IndexOf('"', StringComparison.Ordinal)].TrimEnd()))
            .Select(g => $"{string.Join(", ", g.Select(x => x.What).Distinct(StringComparer.Ordinal))}: page {g.Key.Page}, or {(g.Count() == 1 ? g.First().Command : g.Key.Command)}."));
    }

    /// <summary>The gap with this key; null for a key that names no place.</summary>
    /// <param name="key">Its key.</param>
    internal static MethodsGap? Of(string key)
    {
        if (StudyDetail.Named(key) is { } detail)
        {
            var name = detail.Key == "analyte" ? "metal" : detail.Key;
            return new(key, detail.Title, "Plan", "/plan#setting-" + detail.Key, $"holdfast describe \"{name}=…\"");
        }

        return key.Split(':') switch
        {
            ["vessels", var named] when Property.Named(named) is { } property
                => new(key, property.Title, "Samples", "/samples?fill=" + named, $"holdfast set \"{named}=…{(property.Unit.Length > 0 ? " " + property.Unit : "")}\""),
            ["run", var id, var said] => Run(key, Uri.UnescapeDataString(id), said),
            ["role", var role] => new(key, role.Replace('-', ' '), "Samples", "/samples?fill=role", $"holdfast role CODE --is \"{role.Replace('-', ' ')}\""),
            _ => null,
        };
    }

    private static MethodsGap Run(string key, string id, string said)
        => new(key, $"{said.ToLowerInvariant()} of {id}", "Readings, run " + id, $"/runs/{Uri.EscapeDataString(id)}#run-{said.ToLowerInvariant()}", $"holdfast set \"{said.ToLowerInvariant()}=…\" --run {id}");

    private static IEnumerable<string> KeysIn(Node node) => node is not Element element ? []
        : element.Attributes.Where(a => a.Name == Attribute).Select(a => a.Value).Concat(element.Content.SelectMany(KeysIn));
}
