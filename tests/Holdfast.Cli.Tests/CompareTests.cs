using System.Text.Json;

namespace Holdfast.Cli.Tests;

/// <summary>Several studies beside each other at the command line: rows, pairs and findings in every form, the same bytes each time and by way of lines.</summary>
public class CompareTests
{
    private const string Published = "sorbent,metal,Ce (mg/L),q (mg/g),u (mg/g),dose (g/L),pH,T (°C),water,source\n"
        + "clay X,Pb,5,2,0.1,0.8,6.5,25,,invented handbook 1\nclay Z,Pb,5,2,0.1,0.8,6.5,25,,\n";

    [Fact]
    public void Group_WithADamagedStudy_ComparesTheOthersAndSaysWhy()
    {
        using var line = Group();
        line.Type("compare", "group", "--at", "5", "--beside", "published.csv");
        Assert.Equal(Exit.Done, line.Type("compare", "group", "--at", "5", "--beside", "published.csv"));
        Assert.Contains("broken is left out", line.Error, StringComparison.Ordinal);
        Assert.Contains("names no source", line.Error, StringComparison.Ordinal);
        Assert.Contains("clay X", line.Out, StringComparison.Ordinal);
        Assert.Contains("invented handbook 1", line.Out, StringComparison.Ordinal);
        Assert.Contains("water of", line.Out, StringComparison.Ordinal);
        var first = line.Out;
        line.Type("compare", "group", "--at", "5", "--beside", "published.csv");
        Assert.Equal(first, line.Out);
    }

    [Theory, InlineData("text"), InlineData("csv"), InlineData("json")]
    public void Lines_ComparedLater_GiveTheSameBytes(string form)
    {
        using var line = Group();
        line.Type("compare", "group", "--as", form);
        var direct = line.Out;
        Assert.Contains("one, ISO", direct, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("compare", "group", "--map"));
        Assert.Equal(3, line.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        line.File("lines.jsonl", line.Out);
        line.Type("compare", "lines.jsonl", "--as", form);
        Assert.Equal(direct, line.Out);
    }

    [Fact]
    public void Json_IsOneObjectALine_AsTheSchemaSays()
    {
        using var line = Group();
        line.Type("compare", "group", "--as", "json", "--beside", "published.csv");
        var schema = new Schema();
        var kinds = new HashSet<string>(StringComparer.Ordinal);
        foreach (var text in line.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            Assert.Empty(schema.Odd(text));
            using var json = JsonDocument.Parse(text);
            kinds.Add(json.RootElement.GetProperty("line").GetString()!);
        }

        Assert.Equal(["findings", "pairs", "uptakes"], kinds.Order(StringComparer.Ordinal));
    }

    // The two good studies hold one sheet each, of one curve ("exact"): the same uptake at the same vessels, so that neither is better by 10 %.
    [Fact]
    public void StartAndDose_AreMetByVesselsOfTheirOwn()
    {
        using var line = Group();
        Assert.Equal(Exit.Done, line.Type("compare", "group", "--start", "40", "--dose", "0.8", "--as", "json"));
        Assert.Contains("\"line\":\"uptakes\"", line.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("\"first_better\":\"holds\"", line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCannotBe_IsNotUnderstoodOrNotThere()
    {
        using var line = Group();
        Assert.Equal(Exit.NotUnderstood, line.Type("compare", "group", "--at", "5", "--start", "3", "--dose", "1"));
        Assert.Equal(Exit.NotUnderstood, line.Type("compare", "group", "--start", "3"));
        Assert.Equal(Exit.NotUnderstood, line.Type("compare", "group", "--margin", "-1"));
        Assert.Equal(Exit.NoSuchThing, line.Type("compare", "nowhere"));
        Assert.Equal(Exit.NeedsDecision, line.Type("compare", "group", "--beside", "nowhere.csv"));
    }

    private static Typed Group()
    {
        var line = new Typed();
        var root = line.Folder;
        foreach (var (name, shape) in new[] { ("group/one", "exact"), ("group/two", "exact") })
        {
            line.Folder = root;
            line.Begin(name);
            line.TakeAsItStands(line.File("vessels.csv", OddStudies.Sheet(shape, seed: 5)));
        }

        line.Folder = root;
        Directory.CreateDirectory(Path.Combine(root, "group", "broken"));
        File.WriteAllText(Path.Combine(root, "group", "broken", "study.db"), "no study");
        line.File("published.csv", Published);
        return line;
    }
}
