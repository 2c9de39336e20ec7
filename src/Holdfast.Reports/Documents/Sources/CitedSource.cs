using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Reports.Documents.Sources;

/// <summary>
/// A source as the program names it, taken apart as far as its words go: nothing is looked up and nothing is added. What is not said, such as a title, stays empty,
/// and the words themselves are kept.
/// </summary>
/// <param name="Words">The source as named: "I. Langmuir, J. Am. Chem. Soc. 40 (1918) 1361".</param>
internal sealed partial record CitedSource(string Words)
{
    /// <summary>Said of every source: what the program knows of it is not a checked citation.</summary>
    public const string Caution = "As the program names it; look it up before you cite it";

    /// <summary>Authors, each with initials and family name; empty where the words name a body or nobody.</summary>
    public ImmutableArray<(string Given, string Family)> Authors { get; private init; } = [];

    /// <summary>True where the words say "et al." or "and co-workers".</summary>
    public bool HasMoreAuthors { get; private init; }

    /// <summary>The year, or null.</summary>
    public int? Year { get; private init; }

    /// <summary>The journal as abbreviated; empty for none.</summary>
    public string Journal { get; private init; } = "";

    /// <summary>Its volume; empty for none.</summary>
    public string Volume { get; private init; } = "";

    /// <summary>The first page; empty for none.</summary>
    public string Page { get; private init; } = "";

    /// <summary>True where the words name something that was published; a derivation of our own or common practice is none.</summary>
    public bool IsPublished => !Authors.IsEmpty || AnyYear().IsMatch(Words);

    /// <summary>Its key in a bibliography: family name of the first author and year, "langmuir1918"; else from its words.</summary>
    public string Key
    {
        get
        {
            var name = Authors.IsEmpty ? string.Join('-', Ascii(Words).Split('-').Take(4)) : Ascii(Authors[0].Family);
            // Books and papers of one year are told apart by the page.
            return name + (Year?.ToString(CultureInfo.InvariantCulture) ?? "") + (Page.Length > 0 ? "-" + Ascii(Page) : "");
        }
    }

    /// <summary>Reads a source.</summary>
    /// <param name="words">The words.</param>
    public static CitedSource Read(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var match = VolumeYearPage().Match(words);
        if (!match.Success)
            match = YearFirst().Match(words);
        if (!match.Success)
            match = YearAlone().Match(words);
        if (!match.Success)
            return new(words);
        var (authors, more) = Named(match.Groups["who"].Value);
        return authors.IsEmpty ? new(words) : new(words)
        {
            Authors = authors,
            HasMoreAuthors = more,
            Year = int.Parse(match.Groups["year"].Value, CultureInfo.InvariantCulture),
            Journal = match.Groups["journal"].Value.Trim(),
            Volume = match.Groups["volume"].Value,
            Page = match.Groups["page"].Value,
        };
    }

    // Nobody is made up: a part that is not initials and a family name, or one name before "et al.", leaves the words as they are.
    private static (ImmutableArray<(string, string)> Authors, bool More) Named(string who)
    {
        var more = MoreAuthors().Match(who);
        var parts = (more.Success ? who[..more.Index] : who).Split([", ", " and "], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var authors = ImmutableArray.CreateBuilder<(string, string)>();
        foreach (var part in parts)
        {
            if (Person().Match(part) is not { Success: true } person || (person.Groups["given"].Length == 0 && !more.Success))
                return ([], false);
            authors.Add((person.Groups["given"].Value.Trim(), person.Groups["family"].Value));
        }

        return (authors.ToImmutable(), more.Success);
    }

    private static string Ascii(string words)
    {
        var letters = words.Normalize(NormalizationForm.FormD).Where(c => CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark);
        return string.Join('-', string.Concat(letters.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    [GeneratedRegex(@"^(?<who>[^\d;]+?), (?<journal>[^\d,;()]+) (?<volume>\d+) \((?<year>(18|19|20)\d\d)\) (?<page>\d+)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex VolumeYearPage();

    [GeneratedRegex(@"^(?<who>[^\d;]+?) (?<year>(18|19|20)\d\d), (?<journal>[^\d,;()]+) (?<volume>\d+), (?<page>\d+)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex YearFirst();

    [GeneratedRegex(@"^(?<who>[^\d;]+?) (?<year>(18|19|20)\d\d)\b", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex YearAlone();

    [GeneratedRegex(@"\b(18|19|20)\d\d\b", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex AnyYear();

    [GeneratedRegex(@" (et al\.|and co-workers)$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex MoreAuthors();

    [GeneratedRegex(@"^(?<given>(\p{Lu}\p{Ll}?\. ?)*)(?<family>\p{Lu}[\p{L}'’-]+)$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Person();
}
