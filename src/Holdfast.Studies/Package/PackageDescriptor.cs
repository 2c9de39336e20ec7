using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Package;

/// <summary>datapackage.json: what each file of the plain package is. Data Package v2.0 and Table Schema (datapackage.org, 26 June 2024).</summary>
internal static class PackageDescriptor
{
    /// <summary>Its file name.</summary>
    public const string FileName = "datapackage.json";

    /// <summary>The file's bytes.</summary>
    public static byte[] Write(Daybook daybook, ImmutableArray<PlainTable> tables, IReadOnlyDictionary<string, byte[]> files)
    {
        var study = daybook.Study;
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://datapackage.org/profiles/2.0/datapackage.json");
            json.WriteString("name", Slug(study.Title));
            json.WriteString("title", study.Title);
            json.WriteString("description", (study.Invented ? "INVENTED DEMO DATA: no number here is a measurement. " : "")
                + "A study kept by Holdfast, in plain form. It can be read without Holdfast and taken back in.");
            json.WriteString("created", daybook.Entries[0].When.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture));
            json.WriteString("holdfast:fingerprint", daybook.Fingerprint);
            json.WriteNumber("holdfast:entries", daybook.Version);
            json.WriteBoolean("holdfast:invented", study.Invented);
            if (study.Analyte is not null)
                json.WriteString("holdfast:analyte", study.Analyte);
            json.WriteStartObject("holdfast:details");
            foreach (var (key, value) in study.Details.OrderBy(d => d.Key, StringComparer.Ordinal))
                json.WriteString(key, value);
            json.WriteEndObject();
            json.WriteStartArray("contributors");
            foreach (var who in daybook.Entries.Select(e => e.Who).Distinct(StringComparer.Ordinal))
            {
                json.WriteStartObject();
                json.WriteString("title", who);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("resources");
            foreach (var table in tables)
                WriteTable(json, table, files[table.Name + ".csv"]);
            WriteHistory(json, files[PlainPackage.HistoryFile]);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void WriteTable(Utf8JsonWriter json, PlainTable table, byte[] bytes)
    {
        json.WriteStartObject();
        json.WriteString("name", table.Name);
        json.WriteString("type", "table");
        json.WriteString("path", table.Name + ".csv");
        json.WriteString("description", table.Description);
        WriteFile(json, "csv", "text/csv", bytes);
        json.WriteStartObject("dialect");
        json.WriteString("delimiter", ",");
        json.WriteString("lineTerminator", "\n");
        json.WriteString("quoteChar", "\"");
        json.WriteBoolean("doubleQuote", true);
        json.WriteEndObject();
        json.WriteStartObject("schema");
        json.WriteStartArray("fields");
        foreach (var field in table.Fields)
        {
            json.WriteStartObject();
            json.WriteString("name", field.Name);
            json.WriteString("type", field.Type);
            json.WriteString("description", field.Description);
            if (field.Unit is not null)
                json.WriteString("holdfast:unit", field.Unit);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("primaryKey");
        foreach (var key in table.Key)
            json.WriteStringValue(key);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteHistory(Utf8JsonWriter json, byte[] bytes)
    {
        json.WriteStartObject();
        json.WriteString("name", "history");
        json.WriteString("path", PlainPackage.HistoryFile);
        json.WriteString("description", "Every entry of the history, one a line. The hash of entry n is SHA-256 of the 32 bytes of the hash before it (zeros "
            + "before the first) followed by the bytes of line n without its line feed; the last one is the fingerprint.");
        WriteFile(json, "jsonl", "application/jsonl", bytes);
        json.WriteEndObject();
    }

    private static void WriteFile(Utf8JsonWriter json, string format, string mediaType, byte[] bytes)
    {
        json.WriteString("format", format);
        json.WriteString("mediatype", mediaType);
        json.WriteString("encoding", "utf-8");
        json.WriteNumber("bytes", bytes.Length);
        json.WriteString("hash", "sha256:" + Convert.ToHexStringLower(SHA256.HashData(bytes)));
    }

    // Names of packages are lower-case letters, digits, point, hyphen and underscore.
    private static string Slug(string title)
    {
        var slug = string.Concat(title.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' ? c : '-')).Trim('-');
        return slug.Length == 0 ? "study" : slug;
    }
}
