using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Holdfast.Reports.Documents.Sources;

/// <summary>Sources as CSL-JSON (Citation Style Language 1.0.2, input of its processors; from memory).</summary>
internal static class CslJson
{
    private static readonly JsonWriterOptions Form = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The file.</summary>
    /// <param name="sources">The sources.</param>
    public static string Of(IEnumerable<CitedSource> sources)
    {
        using var stream = new MemoryStream();
        using (var to = new Utf8JsonWriter(stream, Form))
        {
            to.WriteStartArray();
            foreach (var source in sources)
                Write(source, to);
            to.WriteEndArray();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Write(CitedSource source, Utf8JsonWriter to)
    {
        to.WriteStartObject();
        to.WriteString("id", source.Key);
        to.WriteString("type", source.Journal.Length > 0 ? "article-journal" : "document");
        if (!source.Authors.IsEmpty)
        {
            to.WriteStartArray("author");
            foreach (var (given, family) in source.Authors)
            {
                to.WriteStartObject();
                to.WriteString("family", family);
                if (given.Length > 0)
                    to.WriteString("given", given);
                to.WriteEndObject();
            }

            if (source.HasMoreAuthors)
            {
                to.WriteStartObject();
                to.WriteString("literal", "others");
                to.WriteEndObject();
            }

            to.WriteEndArray();
        }

        Text("container-title", source.Journal);
        Text("volume", source.Volume);
        Text("page", source.Page);
        if (source.Year is { } year)
        {
            to.WriteStartObject("issued");
            to.WriteStartArray("date-parts");
            to.WriteStartArray();
            to.WriteNumberValue(year);
            to.WriteEndArray();
            to.WriteEndArray();
            to.WriteEndObject();
        }

        to.WriteString("note", $"{CitedSource.Caution}: {source.Words}");
        to.WriteEndObject();

        void Text(string name, string value)
        {
            if (value.Length > 0)
                to.WriteString(name, value);
        }
    }
}
