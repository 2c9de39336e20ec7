using System.Text.RegularExpressions;
using Holdfast.Testing;

namespace Holdfast.Conventions;

/// <summary>Every finding that the code can raise has a page in docs/findings, and no page outlives its finding.</summary>
public class FindingPageTests
{
    private static readonly Regex Code = new(@"(?<="")HF-\d{3}(?=[""\s])", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));

    private static readonly SortedSet<string> Raised =
        new(Sources.Shipped.SelectMany(p => Code.Matches(Sources.Text(p)).Select(m => m.Value)), StringComparer.Ordinal);

    private static readonly SortedSet<string> Pages =
        new(Directory.EnumerateFiles(Repository.Path("docs", "findings"), "HF-*.md").Select(p => Path.GetFileNameWithoutExtension(p)), StringComparer.Ordinal);

    [Fact]
    public void RaisedFindings_AllOfThem_HaveAPage() => HouseRule.Holds("Write a page in docs/findings.", Raised.Except(Pages));

    // Import and fitting once gave one code two meanings. A code belongs to one folder of one project; Finding.cs only shows an example.
    [Fact]
    public void RaisedFindings_EachCode_ComesFromOneFolder()
        => HouseRule.Holds("A code keeps one meaning: raise it in one folder.", Sources.Shipped
            .Where(p => p != "src/Holdfast/Finding.cs")
            .SelectMany(p => Code.Matches(Sources.Text(p)).Select(m => (m.Value, Folder: string.Join('/', p.Split('/')[..^1].Take(3)))))
            .Distinct()
            .GroupBy(c => c.Value)
            .Where(g => g.Count() > 1)
            .Select(g => $"{g.Key}: {string.Join(", ", g.Select(c => c.Folder))}"));

    [Fact]
    public void Pages_AllOfThem_BelongToAFindingThatIsRaised() => HouseRule.Holds("Drop the page.", Pages.Except(Raised));

    [Fact]
    public void Pages_AllOfThem_SayWhatHappenedWhatItMeansAndWhatToDo()
    {
        foreach (var page in Pages)
        {
            var text = Sources.Text($"docs/findings/{page}.md");
            Assert.StartsWith($"# {page} ", text, StringComparison.Ordinal);
            Assert.All(["## What happened", "## What it means", "## What to do"], h => Assert.Contains(h, text, StringComparison.Ordinal));
        }
    }
}
