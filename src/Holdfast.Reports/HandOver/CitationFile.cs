using System.Text;
using System.Text.Json;

namespace Holdfast.Reports.HandOver;

/// <summary>CITATION.cff: how the data want to be cited, Citation File Format 1.2.0. Words stand as JSON strings, which are strings of YAML 1.2 too.</summary>
internal static class CitationFile
{
    /// <summary>The text of the file.</summary>
    /// <param name="about">What is said of the package.</param>
    public static string Of(HandOverWords about)
    {
        var text = new StringBuilder();
        text.Append("cff-version: 1.2.0\ntype: dataset\n");
        Line(text, "message", "If you use these data, cite them as below.");
        Line(text, "title", about.Title);
        Line(text, "abstract", about.Abstract);
        text.Append("authors:\n");
        text.Append("  - name: ").Append(JsonSerializer.Serialize(about.Author)).Append('\n');
        if (about.Orcid is { } orcid)
            text.Append("    orcid: ").Append(JsonSerializer.Serialize("https://orcid.org/" + orcid)).Append('\n');
        Line(text, "version", about.Daybook.Fingerprint);
        Line(text, "date-released", about.Day);
        if (about.Licence is { } licence)
            Line(text, "license", licence.Id);
        return text.ToString();
    }

    private static void Line(StringBuilder text, string key, string value) => text.Append(key).Append(": ").Append(JsonSerializer.Serialize(value)).Append('\n');
}
