using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json.Nodes;
using Holdfast.Studies.Package;

namespace Holdfast.Reports.HandOver;

/// <summary>ro-crate-metadata.json: the package as a research object, with the people, the licence and the act that made its tables and documents from its raw files. RO-Crate 1.2.</summary>
internal static class CrateFile
{
    /// <summary>Its file name.</summary>
    public const string FileName = "ro-crate-metadata.json";

    private const string Version = "https://w3id.org/ro/crate/1.2";

    /// <summary>The file.</summary>
    /// <param name="about">What is said of the package.</param>
    /// <param name="files">Every file before this one.</param>
    public static byte[] Of(HandOverWords about, IReadOnlyCollection<HandOverFile> files)
    {
        HandOverFile[] all = [.. files.OrderBy(f => f.Name, StringComparer.Ordinal)];
        var author = about.Orcid is { } orcid ? "https://orcid.org/" + orcid : "#author";
        var people = about.Others.Select((name, i) => (Id: string.Create(CultureInfo.InvariantCulture, $"#person-{i + 1}"), Name: name)).ToArray();
        var root = Entity("./", "Dataset", about.Title, about.Abstract);
        root["datePublished"] = about.Day;
        root["license"] = about.Licence is { } licence ? Ref(licence.Address) : "No licence was chosen: all rights stay with the author.";
        root["author"] = Ref(author);
        if (people.Length > 0)
            root["contributor"] = new JsonArray([.. people.Select(p => Ref(p.Id))]);
        if (about.Publisher is not null)
            root["publisher"] = Ref("#publisher");
        root["keywords"] = string.Join(", ", about.Keywords);
        root["identifier"] = about.Daybook.Fingerprint;
        root["hasPart"] = new JsonArray([.. all.Select(f => Ref(Address(f.Name)))]);
        root["mentions"] = new JsonArray(Ref("#worked-out"));

        var graph = new JsonArray(
            new JsonObject { ["@id"] = FileName, ["@type"] = "CreativeWork", ["conformsTo"] = Ref(Version), ["about"] = Ref("./") },
            root,
            Entity(author, "Person", about.Author, null));
        foreach (var (id, name) in people)
            graph.Add(Entity(id, "Person", name, null));
        if (about.Publisher is { } publisher)
            graph.Add(Entity("#publisher", "Organization", publisher, null));
        if (about.Licence is { } chosen)
        {
            var entity = Entity(chosen.Address, "CreativeWork", chosen.Title, chosen.Says);
            entity["identifier"] = chosen.Id;
            graph.Add(entity);
        }

        var program = Entity("#holdfast", "SoftwareApplication", "Holdfast", "From instrument readings to a defended sorption result.");
        program["softwareVersion"] = about.MadeBy.Split(' ')[^1];
        graph.Add(program);
        var act = Entity("#worked-out", "CreateAction", "Quantities, findings and verdicts worked out from the raw files", null);
        act["agent"] = Ref(author);
        act["instrument"] = Ref("#holdfast");
        act["endTime"] = about.When.To.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture);
        act["object"] = new JsonArray([.. all.Where(f => f.Kind is "raw" || f.Name == HandedOver.Plain + PlainPackage.HistoryFile).Select(f => Ref(Address(f.Name)))]);
        act["result"] = new JsonArray([.. all.Where(f => f.Kind is "table" or "figure" or "document" or "characterisation").Select(f => Ref(Address(f.Name)))]);
        graph.Add(act);
        foreach (var file in all)
        {
            var entity = Entity(Address(file.Name), "File", Path.GetFileName(file.Name), file.Says);
            entity["encodingFormat"] = file.MediaType;
            entity["contentSize"] = file.Bytes.Length.ToString(CultureInfo.InvariantCulture);
            entity["sha256"] = Convert.ToHexStringLower(SHA256.HashData(file.Bytes));
            graph.Add(entity);
        }

        var crate = new JsonObject { ["@context"] = Version + "/context", ["@graph"] = graph };
        using var stream = new MemoryStream();
        using (var json = new System.Text.Json.Utf8JsonWriter(stream, PackageDescriptor.Style))
            crate.WriteTo(json);
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static JsonObject Entity(string id, string type, string name, string? description)
    {
        var entity = new JsonObject { ["@id"] = id, ["@type"] = type, ["name"] = name };
        if (description is not null)
            entity["description"] = description;
        return entity;
    }

    private static JsonObject Ref(string id) => new JsonObject { ["@id"] = id };

    // Identifiers are relative addresses: what an address may not hold is written by its number (RFC 3986).
    private static string Address(string name) => string.Join('/', name.Split('/').Select(Uri.EscapeDataString));
}
