using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.HandOver;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Package;
using Holdfast.Studies.Store;
using Holdfast.Testing;

namespace Holdfast.Reports.Tests.HandOver;

public sealed class HandOverPackageTests : IClassFixture<HandOverPackageTests.Handed>
{
    private readonly Handed handed;

    public HandOverPackageTests(Handed handed) => this.handed = handed;

    [Fact]
    public void Of_TheDemo_ReturnsAsAStudyThatHandsOverTheSameBytes()
    {
        var archive = HandOverPackage.Zip(handed.Files);
        var package = HandedOver.Of("demo.zip", archive);
        Assert.Empty(package.Check());
        Assert.Null(package.PackedElsewhere);
        var (study, findings) = package.Return(Path.Combine(handed.Root, "again"), TimeProvider.System);
        using (study)
        {
            Assert.Empty(findings);
            Assert.Equal(handed.Daybook.Fingerprint, study.Daybook.Fingerprint);
            Assert.Equal(archive, HandOverPackage.Zip(HandOverPackage.Of(study.Daybook, Dossier.Of(study.Study), study.ReadOriginal, withDocuments: false)));
        }
    }

    [Fact]
    public void DataPackage_OfTheDemo_NamesEveryFileOnceWithItsHashAndEveryColumn()
    {
        // Data Package v2.0 and Table Schema: resources with unique names and relative paths outside hidden folders, fields with unique names and a type of the list.
        using var json = JsonDocument.Parse(Bytes("datapackage.json"));
        var resources = json.RootElement.GetProperty("resources").EnumerateArray().ToList();
        Assert.Equal(
            handed.Files.Select(f => f.Name).Except(["datapackage.json", "ro-crate-metadata.json", "SHA256SUMS"], StringComparer.Ordinal).Order(StringComparer.Ordinal),
            resources.Select(r => r.GetProperty("path").GetString()!).Order(StringComparer.Ordinal));
        Assert.Equal(resources.Count, resources.Select(r => r.GetProperty("name").GetString()).Distinct(StringComparer.Ordinal).Count());
        Assert.All(resources, r =>
        {
            var bytes = Bytes(r.GetProperty("path").GetString()!);
            Assert.Matches("^[-a-z0-9._/]+$", r.GetProperty("name").GetString()!);
            Assert.Equal(bytes.Length, r.GetProperty("bytes").GetInt64());
            Assert.Equal("sha256:" + Convert.ToHexStringLower(SHA256.HashData(bytes)), r.GetProperty("hash").GetString());
            Assert.DoesNotContain("/.", "/" + r.GetProperty("path").GetString(), StringComparison.Ordinal);
            if (!r.TryGetProperty("schema", out var schema))
                return;
            string[] fields = [.. schema.GetProperty("fields").EnumerateArray().Select(f => f.GetProperty("name").GetString()!)];
            Assert.Equal(fields.Length, fields.Distinct(StringComparer.Ordinal).Count());
            Assert.Equal(Encoding.UTF8.GetString(bytes).Split('\n')[0].TrimEnd('\r'), string.Join(',', fields));
            Assert.All(schema.GetProperty("fields").EnumerateArray(), f => Assert.Contains(f.GetProperty("type").GetString(), new[] { "string", "number", "integer", "boolean", "datetime", "object" }));
        });
        Assert.Equal("CC-BY-4.0", json.RootElement.GetProperty("licenses")[0].GetProperty("name").GetString());
    }

    [Fact]
    public void Crate_OfTheDemo_HasWhatTheSpecificationRequires()
    {
        // RO-Crate 1.2, root data entity: @type Dataset, @id "./", name, description, datePublished, license; descriptor with about and conformsTo; every file a part.
        using var json = JsonDocument.Parse(Bytes("ro-crate-metadata.json"));
        var graph = json.RootElement.GetProperty("@graph").EnumerateArray().ToDictionary(e => e.GetProperty("@id").GetString()!, StringComparer.Ordinal);
        Assert.Equal("https://w3id.org/ro/crate/1.2/context", json.RootElement.GetProperty("@context").GetString());
        var descriptor = graph["ro-crate-metadata.json"];
        Assert.Equal("CreativeWork", descriptor.GetProperty("@type").GetString());
        Assert.Equal("./", descriptor.GetProperty("about").GetProperty("@id").GetString());
        var root = graph["./"];
        Assert.Equal("Dataset", root.GetProperty("@type").GetString());
        Assert.Matches(@"^\d{4}-\d{2}-\d{2}$", root.GetProperty("datePublished").GetString()!);
        Assert.All(new[] { "name", "description", "license", "author" }, p => Assert.True(root.TryGetProperty(p, out _)));
        Assert.Equal(
            handed.Files.Select(f => f.Name).Except(["ro-crate-metadata.json", "SHA256SUMS"], StringComparer.Ordinal).Order(StringComparer.Ordinal),
            root.GetProperty("hasPart").EnumerateArray().Select(p => Uri.UnescapeDataString(p.GetProperty("@id").GetString()!)).Order(StringComparer.Ordinal));
        Assert.All(References(json.RootElement.GetProperty("@graph")).Where(id => !id.StartsWith("https://w3id.org/", StringComparison.Ordinal)), id => Assert.True(graph.ContainsKey(id), id));
    }

    [Fact]
    public void DataCite_OfTheDemo_HasWhatTheSchemaRequires()
    {
        // DataCite metadata schema 4.6, JSON form: creators, titles, publisher (an object), publicationYear, types, schemaVersion.
        using var json = JsonDocument.Parse(Bytes("datacite.json"));
        var root = json.RootElement;
        Assert.Equal("A. Student", root.GetProperty("creators")[0].GetProperty("name").GetString());
        Assert.Equal("https://orcid.org/0000-0000-0000-0001", root.GetProperty("creators")[0].GetProperty("nameIdentifiers")[0].GetProperty("nameIdentifier").GetString());
        Assert.NotEmpty(root.GetProperty("titles")[0].GetProperty("title").GetString()!);
        Assert.Equal("(:tba)", root.GetProperty("publisher").GetProperty("name").GetString());
        Assert.Matches(@"^\d{4}$", root.GetProperty("publicationYear").GetString()!);
        Assert.Equal("Dataset", root.GetProperty("types").GetProperty("resourceTypeGeneral").GetString());
        Assert.Equal("http://datacite.org/schema/kernel-4", root.GetProperty("schemaVersion").GetString());
    }

    [Fact]
    public void Next_OfTheDemo_NamesEveryStatedClaimAndTheExperimentOfEachOpenOne()
    {
        var text = Text("NEXT.md");
        var verdicts = Dossier.Of(handed.Daybook.Study).Verdicts.Where(v => v.Claim.Stated).ToArray();
        Assert.NotEmpty(verdicts);
        Assert.All(verdicts, v => Assert.Contains($"**{v.Claim.Id}**", text, StringComparison.Ordinal));
        Assert.All(verdicts.Where(v => v is { Ruling: Ruling.NotShownYet, Next: not null }), v => Assert.Contains(v.Next!.Sentence, text, StringComparison.Ordinal));
        Assert.Contains("box 4", text, StringComparison.Ordinal);
        Assert.Contains("Invented demo data", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Readme_OfTheDemo_NamesEveryOriginalAndSaysHowToCheckAndGoOn()
    {
        var text = Text("README.md");
        Assert.All(handed.Daybook.Files, f => Assert.Contains(f.Sha256, text, StringComparison.Ordinal));
        Assert.Contains("sha256sum -c SHA256SUMS", text, StringComparison.Ordinal);
        Assert.Contains("holdfast copy-in", text, StringComparison.Ordinal);
        Assert.Contains("CC-BY-4.0", text, StringComparison.Ordinal);
        Assert.Contains("INVENTED", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Sums_OfTheDemo_AreOfEveryOtherFile()
        => Assert.Equal(
            handed.Files.Where(f => f.Name != HandedOver.Sums).Select(f => $"{Convert.ToHexStringLower(SHA256.HashData(f.Bytes.Span))}  {f.Name}"),
            Text(HandedOver.Sums).TrimEnd('\n').Split('\n'));

    [Fact]
    public void Originals_WithNamesOfAnyKind_GetNamesThatEveryComputerHolds()
    {
        string[] names = ["run.csv", "RUN.csv", "a/b:c?.csv", "..", "con.txt", " x. ", new string('ü', 300) + ".xlsx", "gpj\u202Eexe", ".hidden", ""];
        var given = OriginalNames(names);
        Assert.All(given, n => Assert.Null(SafeZip.WhatIsWrong(n)));
        Assert.Equal(names.Length, given.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal("run.csv", given[0]);
        Assert.EndsWith(".xlsx", given[6], StringComparison.Ordinal);

        static string[] OriginalNames(string[] names)
        {
            TakenFile[] files = [.. names.Select((n, i) => new TakenFile(Convert.ToHexStringLower(SHA256.HashData([(byte)i])), n, 1))];
            var all = OriginalName.All(files);
            return [.. files.Select(f => all[f.Sha256])];
        }
    }

    private static IEnumerable<string> References(JsonElement at) => at.ValueKind switch
    {
        JsonValueKind.Object when at.EnumerateObject().Count() == 1 && at.TryGetProperty("@id", out var id) => [id.GetString()!],
        JsonValueKind.Object => at.EnumerateObject().SelectMany(p => References(p.Value)),
        JsonValueKind.Array => at.EnumerateArray().SelectMany(References),
        _ => [],
    };

    private byte[] Bytes(string name) => handed.Files.Single(f => f.Name == name).Bytes.ToArray();

    private string Text(string name) => Encoding.UTF8.GetString(Bytes(name));

    /// <summary>The demo with what a package asks for, handed over once for all tests.</summary>
    public sealed class Handed : IDisposable
    {
        public Handed()
        {
            Root = Directory.CreateTempSubdirectory("holdfast-hand-over-").FullName;
            using var study = StudyFolder.Begin(Path.Combine(Root, "demo"), "Ada", TimeProvider.System, new StudyBegun("Nickel on EHA-2 (invented)", "Ni", Invented: true));
            Take.Files(study, [Repository.Path("samples", "demo")], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
            foreach (var (key, value) in new[] { ("author", "A. Student"), ("licence", "CC-BY-4.0"), ("orcid", "0000-0000-0000-0001"), ("shelf", "cold room, box 4") })
                study.Append(study.Daybook.Version, "Ada", new DetailSet(key, value));
            Daybook = study.Daybook;
            Files = HandOverPackage.Of(Daybook, Dossier.Of(study.Study), study.ReadOriginal, withDocuments: false);
            study.Close();
        }

        public string Root { get; }

        public Daybook Daybook { get; }

        public IReadOnlyList<DocumentFile> Files { get; }

        public void Dispose()
        {
            foreach (var file in Directory.EnumerateFiles(Root, "*", SearchOption.AllDirectories))
                File.SetAttributes(file, FileAttributes.Normal);
            Directory.Delete(Root, recursive: true);
        }
    }
}
