using CsCheck;
using Holdfast.Studies.History;
using Holdfast.Studies.Package;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Tests.Package;

public class PlainPackageTests
{
    [Fact]
    public void Return_FromPlain_GivesTheSameBytesAndFingerprint()
    {
        using var bench = new Bench();
        string fingerprint;
        using (var study = bench.Begin())
        {
            study.Append(1, "Ada", Bench.Take(study, "V-01", 50.2), new Struck("R-0002", "=2+5"), new DetailSet("author", "Ada"));
            study.Append(4, "Ada", Bench.Take(study, "V-02", 49.8));
            study.UndoLast("Bo");
            fingerprint = study.Daybook.Fingerprint;
            study.Close();
        }
        var copy = Path.Combine(bench.Root, "copy");
        var (returned, findings) = PlainPackage.Return(Path.Combine(bench.Folder, "plain"), copy, bench.Clock);
        using (returned)
        {
            Assert.Empty(findings);
            Assert.Equal(fingerprint, returned.Daybook.Fingerprint);
            returned.Close();
        }
        var names = Directory.GetFiles(Path.Combine(bench.Folder, "plain")).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(names, Directory.GetFiles(Path.Combine(copy, "plain")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.All(names, n => Assert.Equal(File.ReadAllBytes(Path.Combine(bench.Folder, "plain", n!)), File.ReadAllBytes(Path.Combine(copy, "plain", n!))));
        Assert.True(Inspection.Of(copy, everyByte: true, TestContext.Current.CancellationToken).IsSound);
    }

    [Fact]
    public void Return_WithAMissingOriginal_ReturnsTheRestAndNamesIt()
    {
        using var bench = new Bench();
        using (var study = bench.Begin())
        {
            study.Append(1, "Ada", Bench.Take(study, "V-01", 50.2));
            study.Close();
        }
        var (returned, findings) = PlainPackage.Return(Path.Combine(bench.Folder, "plain"), Path.Combine(bench.Root, "copy"), bench.Clock, Path.Combine(bench.Root, "nowhere"));
        using (returned)
            Assert.Contains("V-01.csv", Assert.Single(findings).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Return_OfAChangedHistory_IsRefused()
    {
        using var bench = new Bench();
        using (var study = bench.Begin())
            study.Close();
        var history = Path.Combine(bench.Folder, "plain", "history.jsonl");
        File.WriteAllText(history, File.ReadAllText(history).Replace("ni-study", "pb-study", StringComparison.Ordinal));
        Assert.Equal("HF-432", Assert.Throws<StudyException>(() => PlainPackage.Return(Path.Combine(bench.Folder, "plain"), Path.Combine(bench.Root, "copy"), bench.Clock)).Code);
        Assert.False(Directory.Exists(Path.Combine(bench.Root, "copy")));
    }

    [Fact]
    public void Guard_ThenUnguard_IsTheSameText()
        => Gen.OneOf(Gen.String, Gen.Select(Gen.Char["=+-@\t\r\n'＝"], Gen.String, (c, s) => c + s))
            .Sample(text =>
            {
                var cell = PlainCell.Guard(text);
                Assert.Equal(text, PlainCell.Unguard(cell));
                Assert.False(cell.Length > 0 && "=+-@\t\r\n\0".Contains(cell[0], StringComparison.Ordinal));
            }, iter: 20_000, seed: "0000holdfast6");

    [Fact]
    public void Note_ThatLooksLikeAFormula_IsGuardedAndANegativeNumberIsNot()
    {
        // X39.
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", -0.5), new Struck("V-01", "=2+5"));
        var files = PlainPackage.Files(study.Daybook);
        Assert.Contains("V-01,'=2+5,", Text(files["strikes.csv"]), StringComparison.Ordinal);
        Assert.Contains("V-01,vessel,true,-0.5\n", Text(files["samples.csv"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Descriptor_NamesEveryFileWithItsHash()
    {
        // Data Package v2.0: each resource has a name and a path; recommended hash as "algorithm:digest", bytes.
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", 50));
        var files = PlainPackage.Files(study.Daybook);
        using var json = System.Text.Json.JsonDocument.Parse(files["datapackage.json"]);
        var resources = json.RootElement.GetProperty("resources").EnumerateArray().ToList();
        Assert.Equal(files.Keys.Where(k => k != "datapackage.json").Order(StringComparer.Ordinal),
            resources.Select(r => r.GetProperty("path").GetString()!).Order(StringComparer.Ordinal));
        Assert.All(resources, r => Assert.Equal("sha256:" + Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(files[r.GetProperty("path").GetString()!])),
            r.GetProperty("hash").GetString()));
        Assert.All(resources.Where(r => r.TryGetProperty("schema", out _)), r => Assert.Equal(
            Text(files[r.GetProperty("path").GetString()!]).Split('\n')[0],
            string.Join(',', r.GetProperty("schema").GetProperty("fields").EnumerateArray().Select(f => f.GetProperty("name").GetString()))));
    }

    [Fact]
    public void Files_InAnyCulture_AreTheSameBytes()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", 1234567.891), Bench.Take(study, "ä-İı", 0.1) with { Readings = [], Runs = [] });
        var expected = PlainPackage.Files(study.Daybook);
        foreach (var culture in new[] { "de-DE", "tr-TR", "sv-SE", "ar-SA", "th-TH" })
        {
            In.Culture(culture, () =>
            {
                var files = PlainPackage.Files(new Daybook(study.Daybook.Entries));
                Assert.Equal(expected.Keys, files.Keys);
                Assert.All(expected.Keys, k => Assert.Equal(expected[k], files[k]));
            });
        }
    }

    private static string Text(byte[] bytes) => System.Text.Encoding.UTF8.GetString(bytes);
}
