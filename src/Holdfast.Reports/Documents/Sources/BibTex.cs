using System.Globalization;
using System.Text;
using Holdfast.Reports.Documents.Latex;

namespace Holdfast.Reports.Documents.Sources;

/// <summary>Sources as BibTeX (O. Patashnik, BibTeXing, 1988; from memory): articles where the words name a journal, else "misc" with the words as its note.</summary>
internal static class BibTex
{
    /// <summary>The file.</summary>
    /// <param name="sources">The sources.</param>
    public static string Of(IEnumerable<CitedSource> sources)
    {
        var to = new StringBuilder();
        foreach (var source in sources)
        {
            to.Append(CultureInfo.InvariantCulture, $"@{(source.Journal.Length > 0 ? "article" : "misc")}{{{source.Key},\n");
            Field("author", string.Join(" and ", source.Authors.Select(a => $"{LatexLetters.Text(a.Family)}{(a.Given.Length > 0 ? ", " + LatexLetters.Text(a.Given) : "")}").Concat(source.HasMoreAuthors ? ["others"] : [])));
            Field("journal", LatexLetters.Text(source.Journal));
            Field("volume", source.Volume);
            Field("pages", source.Page);
            Field("year", source.Year?.ToString(CultureInfo.InvariantCulture) ?? "");
            Field("note", LatexLetters.Text(source.Authors.IsEmpty ? source.Words : $"named as: {source.Words}"));
            Field("annote", LatexLetters.Text(CitedSource.Caution));
            to.Append("}\n\n");
        }

        return to.ToString();

        void Field(string name, string value)
        {
            if (value.Length > 0)
                to.Append(CultureInfo.InvariantCulture, $"  {name} = {{{value}}},\n");
        }
    }
}
