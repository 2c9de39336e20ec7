using System.Globalization;
using System.Text.Json;
using Holdfast.Studies.Package;

namespace Holdfast.Reports.HandOver;

/// <summary>
/// datacite.json: what a repository asks for, in the JSON form of the DataCite metadata schema 4. The identifier is the repository's to give; a publisher that nobody named is
/// "(:tba)", the schema's own word for what is announced later.
/// </summary>
internal static class DataCiteFile
{
    /// <summary>The file.</summary>
    /// <param name="about">What is said of the package.</param>
    /// <param name="files">Every file before this one.</param>
    public static byte[] Of(HandOverWords about, IReadOnlyCollection<HandOverFile> files)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, PackageDescriptor.Style))
        {
            json.WriteStartObject();
            List(json, "creators", [() => Person(json, about.Author, about.Orcid, null)]);
            List(json, "titles", [() => json.WriteString("title", about.Title)]);
            json.WriteStartObject("publisher");
            json.WriteString("name", about.Publisher ?? "(:tba)");
            json.WriteEndObject();
            json.WriteString("publicationYear", about.When.To.Year.ToString("0000", CultureInfo.InvariantCulture));
            json.WriteStartObject("types");
            json.WriteString("resourceType", "Data package of a sorption study");
            json.WriteString("resourceTypeGeneral", "Dataset");
            json.WriteEndObject();
            List(json, "subjects", about.Keywords.Distinct(StringComparer.Ordinal).Select<string, Action>(k => () => json.WriteString("subject", k)));
            List(json, "contributors", about.Others.Select<string, Action>(o => () => Person(json, o, null, "DataCollector")));
            List(json, "dates",
            [
                () => Date(json, string.Create(CultureInfo.InvariantCulture, $"{about.When.From:yyyy-MM-dd}/{about.Day}"), "Collected"),
                () => Date(json, about.Day, "Created"),
            ]);
            json.WriteString("language", "en");
            List(json, "alternateIdentifiers", [() => Pair(json, "alternateIdentifier", about.Daybook.Fingerprint, "alternateIdentifierType", "SHA-256 fingerprint of the history")]);
            json.WriteStartArray("sizes");
            json.WriteStringValue(string.Create(CultureInfo.InvariantCulture, $"{files.Count} files"));
            json.WriteEndArray();
            json.WriteStartArray("formats");
            foreach (var format in files.Select(f => f.MediaType).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
                json.WriteStringValue(format);
            json.WriteEndArray();
            json.WriteString("version", about.Daybook.Version.ToString(CultureInfo.InvariantCulture));
            if (about.Licence is { } licence)
            {
                List(json, "rightsList",
                [
                    () =>
                    {
                        Pair(json, "rights", licence.Title, "rightsUri", licence.Address);
                        Pair(json, "rightsIdentifier", licence.Id, "rightsIdentifierScheme", "SPDX");
                        json.WriteString("schemeUri", "https://spdx.org/licenses/");
                    },
                ]);
            }

            List(json, "descriptions", [() => Pair(json, "description", about.Abstract, "descriptionType", "Abstract")]);
            json.WriteString("schemaVersion", "http://datacite.org/schema/kernel-4");
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void Person(Utf8JsonWriter json, string name, string? orcid, string? contributorType)
    {
        Pair(json, "name", name, "nameType", "Personal");
        if (contributorType is not null)
            json.WriteString("contributorType", contributorType);
        if (orcid is null)
            return;
        List(json, "nameIdentifiers",
        [
            () =>
            {
                Pair(json, "nameIdentifier", "https://orcid.org/" + orcid, "nameIdentifierScheme", "ORCID");
                json.WriteString("schemeUri", "https://orcid.org");
            },
        ]);
    }

    private static void Date(Utf8JsonWriter json, string date, string type) => Pair(json, "date", date, "dateType", type);

    private static void Pair(Utf8JsonWriter json, string first, string one, string second, string other)
    {
        json.WriteString(first, one);
        json.WriteString(second, other);
    }

    private static void List(Utf8JsonWriter json, string name, IEnumerable<Action> items)
    {
        var all = items.ToArray();
        if (all.Length == 0)
            return;
        json.WriteStartArray(name);
        foreach (var item in all)
        {
            json.WriteStartObject();
            item();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
