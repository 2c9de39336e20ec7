using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Holdfast.Reports.Tables;
using Holdfast.Studies.Package;

namespace Holdfast.Reports.HandOver;

/// <summary>datapackage.json of a package: every file, tables with their columns and units. Data Package v2.0 and Table Schema (datapackage.org, 26 June 2024).</summary>
internal static class DataPackageFile
{
    /// <summary>The file.</summary>
    /// <param name="about">What is said of the package.</param>
    /// <param name="tables">The tables that were worked out.</param>
    /// <param name="files">Every file before this one.</param>
    public static byte[] Of(HandOverWords about, ImmutableArray<Table> tables, IReadOnlyCollection<HandOverFile> files)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, PackageDescriptor.Style))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://datapackage.org/profiles/2.0/datapackage.json");
            json.WriteString("name", PackageDescriptor.Slug(about.Title));
            json.WriteString("title", about.Title);
            json.WriteString("description", about.Abstract);
            json.WriteString("version", string.Create(CultureInfo.InvariantCulture, $"{about.Daybook.Version}.0.0"));
            json.WriteString("created", about.When.To.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture));
            json.WriteString("holdfast:fingerprint", about.Daybook.Fingerprint);
            json.WriteBoolean("holdfast:invented", about.Study.Invented);
            json.WriteStartArray("keywords");
            foreach (var word in about.Keywords)
                json.WriteStringValue(word);
            json.WriteEndArray();
            json.WriteStartArray("contributors");
            foreach (var (who, role) in about.Others.Select(o => (o, "contributor")).Prepend((about.Author, "creator")))
            {
                json.WriteStartObject();
                json.WriteString("title", who);
                if (role == "creator" && about.Orcid is { } orcid)
                    json.WriteString("path", "https://orcid.org/" + orcid);
                json.WriteStartArray("roles");
                json.WriteStringValue(role);
                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            if (about.Licence is { } licence)
            {
                json.WriteStartArray("licenses");
                json.WriteStartObject();
                json.WriteString("name", licence.Id);
                json.WriteString("path", licence.Address);
                json.WriteString("title", licence.Title);
                json.WriteEndObject();
                json.WriteEndArray();
            }

            json.WriteStartArray("resources");
            Resources(json, about, tables, files);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void Resources(Utf8JsonWriter json, HandOverWords about, ImmutableArray<Table> tables, IReadOnlyCollection<HandOverFile> files)
    {
        var byName = files.ToDictionary(f => f.Name, StringComparer.Ordinal);
        var given = new HashSet<string>(StringComparer.Ordinal);
        foreach (var table in PlainPackage.Tables(about.Study))
        {
            PackageDescriptor.WriteTable(json, table, HandedOver.Plain, byName[$"{HandedOver.Plain}{table.Name}.csv"].Bytes);
            given.Add(table.Name);
            byName.Remove($"{HandedOver.Plain}{table.Name}.csv");
        }

        PackageDescriptor.WriteHistory(json, HandedOver.Plain, byName[HandedOver.Plain + PlainPackage.HistoryFile].Bytes);
        given.Add("history");
        byName.Remove(HandedOver.Plain + PlainPackage.HistoryFile);
        foreach (var table in tables)
        {
            var file = byName[$"tables/{table.Id}.csv"];
            PackageDescriptor.WriteTable(json, Free("table-" + table.Id, given), file.Name, table.Caption.Plain, "\r\n", Fields(table), [], file.Bytes);
            byName.Remove(file.Name);
        }

        foreach (var file in byName.Values.OrderBy(f => f.Name, StringComparer.Ordinal))
        {
            json.WriteStartObject();
            json.WriteString("name", Free(file.Name.Replace('/', '-'), given));
            json.WriteString("path", file.Name);
            json.WriteString("description", file.Says);
            PackageDescriptor.WriteFile(json, file.Format, file.MediaType, file.Encoding, file.Bytes);
            json.WriteString("holdfast:kind", file.Kind);
            json.WriteEndObject();
        }
    }

    // A column is what all its cells are; words among numbers make it words.
    private static ImmutableArray<PlainField> Fields(Table table)
        => [.. TableFields.Of(table).Select(f => new PlainField(
            f.Name,
            table.Rows.Select(f.Value).OfType<object>().Where(v => v is not "").Select(v => v switch { double => "number", bool => "boolean", _ => "string" }).Distinct().ToArray() is [var one] ? one : "string",
            f.Heading.Length == 0 ? f.Name : f.Heading,
            f.Unit))];

    private static string Free(string wanted, HashSet<string> given)
    {
        var name = PackageDescriptor.Slug(wanted);
        for (var n = 2; !given.Add(name); n++)
            name = string.Create(CultureInfo.InvariantCulture, $"{PackageDescriptor.Slug(wanted)}-{n}");
        return name;
    }
}
