using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Package;

/// <summary>datapackage.json: what each file of the plain package is. Data Package v2.0 and Table Schema (datapackage.org, 26 June 2024).</summary>
public static class PackageDescriptor
{
    /// <summary>Its file name.</summary>
    public const string FileName = "datapackage.json";

    /// <summary>How JSON of packages is written: indented, line feeds alone, letters as they are.</summary>
    public static JsonWriterOptions Style { get; } = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The file's bytes.</summary>
    internal static byte[] Write(Daybook daybook, ImmutableArray<PlainTable> tables, IReadOnlyDictionary<string, byte[]> files)
    {
        var study = daybook.Study;
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Style))
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
                WriteTable(json, table, "", files[table.Name + ".csv"]);
            WriteHistory(json, "", files[PlainPackage.HistoryFile]);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    /// <summary>Writes the resource of a table of the plain form.</summary>
    /// <param name="json">Receives it.</param>
    /// <param name="table">The table.</param>
    /// <param name="folder">Its folder in the package, with "/" behind it; empty for none.</param>
    /// <param name="bytes">Its file.</param>
    public static void WriteTable(Utf8JsonWriter json, PlainTable table, string folder, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(table);
        WriteTable(json, table.Name, folder + table.Name + ".csv", table.Description, "\n", table.Fields, table.Key, bytes);
    }

    /// <summary>Writes the resource of a table.</summary>
    /// <param name="json">Receives it.</param>
    /// <param name="name">Its name: lower-case letters, digits, point, hyphen and underscore; no other resource of the package has it.</param>
    /// <param name="path">Its file, below the description's own folder.</param>
    /// <param name="description">What it holds, in words.</param>
    /// <param name="lineEnd">How its lines end.</param>
    /// <param name="fields">Its columns.</param>
    /// <param name="key">Names of the columns that tell a row from all others; empty where nothing does.</param>
    /// <param name="bytes">Its file.</param>
    public static void WriteTable(
        Utf8JsonWriter json, string name, string path, string description, string lineEnd, ImmutableArray<PlainField> fields, ImmutableArray<string> key, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteString("name", name);
        json.WriteString("type", "table");
        json.WriteString("path", path);
        json.WriteString("description", description);
        WriteFile(json, "csv", "text/csv", "utf-8", bytes);
        json.WriteStartObject("dialect");
        json.WriteString("delimiter", ",");
        json.WriteString("lineTerminator", lineEnd);
        json.WriteString("quoteChar", "\"");
        json.WriteBoolean("doubleQuote", true);
        json.WriteEndObject();
        json.WriteStartObject("schema");
        json.WriteStartArray("fields");
        foreach (var field in fields)
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
        if (!key.IsEmpty)
        {
            json.WriteStartArray("primaryKey");
            foreach (var column in key)
                json.WriteStringValue(column);
            json.WriteEndArray();
        }
        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>Writes the resource of a history.</summary>
    /// <param name="json">Receives it.</param>
    /// <param name="folder">Its folder in the package, with "/" behind it; empty for none.</param>
    /// <param name="bytes">Its file.</param>
    public static void WriteHistory(Utf8JsonWriter json, string folder, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteString("name", "history");
        json.WriteString("path", folder + PlainPackage.HistoryFile);
        json.WriteString("description", "Every entry of the history, one a line. The hash of entry n is SHA-256 of the 32 bytes of the hash before it (zeros "
            + "before the first) followed by the bytes of line n without its line feed; the last one is the fingerprint.");
        WriteFile(json, "jsonl", "application/jsonl", "utf-8", bytes);
        json.WriteEndObject();
    }

    /// <summary>Writes what every resource says of its file: format, kind, encoding, length, fingerprint.</summary>
    /// <param name="json">Receives it.</param>
    /// <param name="format">Ending of its name, without the point.</param>
    /// <param name="mediaType">Its media type.</param>
    /// <param name="encoding">Encoding of a text; null for what is none.</param>
    /// <param name="bytes">The file.</param>
    public static void WriteFile(Utf8JsonWriter json, string format, string mediaType, string? encoding, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(bytes);
        json.WriteString("format", format);
        json.WriteString("mediatype", mediaType);
        if (encoding is not null)
            json.WriteString("encoding", encoding);
        json.WriteNumber("bytes", bytes.Length);
        json.WriteString("hash", "sha256:" + Convert.ToHexStringLower(SHA256.HashData(bytes)));
    }

    /// <summary>A title as a name of a package or resource: lower-case letters, digits, point, hyphen and underscore.</summary>
    /// <param name="title">Any title.</param>
    public static string Slug(string title)
    {
        ArgumentNullException.ThrowIfNull(title);
        var slug = string.Concat(title.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' ? c : '-')).Trim('-');
        return slug.Length == 0 ? "study" : slug;
    }
}
