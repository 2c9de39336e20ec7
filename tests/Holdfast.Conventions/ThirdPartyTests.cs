using System.Text.Json;
using Holdfast.Testing;

namespace Holdfast.Conventions;

/// <summary>The list of what others wrote is complete, and archives and bills of materials are made from it.</summary>
public class ThirdPartyTests
{
    // What the program was built of, as the build wrote it down beside it.
    private static IReadOnlyList<(string Name, string Version)> BuiltOf
    {
        get
        {
            using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Holdfast.Cli.deps.json")));
            return [.. json.RootElement.GetProperty("libraries").EnumerateObject().Where(l => l.Value.GetProperty("type").GetString() == "package")
                .Select(l => l.Name.Split('/')).Select(p => (p[0], p[1]))];
        }
    }

    private static IReadOnlyList<string[]> Rows
        => [.. Sources.Lines("THIRD-PARTY.md").Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(2).Select(l => l.Trim('|').Split('|', StringSplitOptions.TrimEntries))];

    [Fact]
    public void List_OfPackages_IsWhatTheProgramIsBuiltOf()
    {
        Assert.True(BuiltOf.Count > 15);
        Assert.Equal(BuiltOf.Order(), Rows.Select(r => (r[0], r[1])).Order());
    }

    [Fact]
    public void List_EveryRow_NamesALicenceWhoseTextIsThereAndAnAuthor()
    {
        var list = Sources.Text("THIRD-PARTY.md");
        Assert.Contains("Permission is hereby granted", list, StringComparison.Ordinal);
        Assert.Contains("Apache License", File.ReadAllText(Repository.Path("docs", "licences", "Apache-2.0.txt")), StringComparison.Ordinal);
        Assert.All(Rows, r => Assert.True(r is [_, _, "MIT" or "Apache-2.0", { Length: > 3 }], string.Join(" | ", r)));
    }

    // A typeface is no package: a new one would otherwise travel unnamed.
    [Fact]
    public void List_Typefaces_AreNamed()
        => Assert.All(Directory.GetFiles(Repository.Path("src", "Holdfast.Reports", "Fonts"), "*.ttf"),
            f => Assert.StartsWith("LiberationSans", Path.GetFileName(f), StringComparison.Ordinal));
}
