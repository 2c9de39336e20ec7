using System.Text.RegularExpressions;
using Holdfast.Testing;

namespace Holdfast.Conventions;

/// <summary>House rules about files: length, names, and words that do not belong here.</summary>
public class RepositoryTests
{
    private const int LongestFile = 400;
    private static readonly string[] BannedNames = ["Common", "Helper", "Helpers", "Util", "Utils", "Utilities", "Manager", "Managers", "Core", "Misc"];

    [Fact]
    public void CodeFiles_AllOfThem_StayBelowTheCeiling()
        => HouseRule.Holds("A file has one job and at most 400 lines.", Sources.Code.Where(p => Sources.Lines(p).Length > LongestFile));

    [Fact]
    public void Types_TheirNames_AreWordsOfTheTrade()
        => HouseRule.Holds("A type is named for what it is in the trade.", Shipped.Assemblies.SelectMany(a => a.GetTypes())
            .Where(t => BannedNames.Contains(t.Name, StringComparer.Ordinal) || t.Name.EndsWith("Helper", StringComparison.Ordinal) || t.Name.EndsWith("Manager", StringComparison.Ordinal))
            .Select(t => t.FullName));

    [Fact]
    public void Folders_OfShippedCode_AreWordsOfTheTrade()
        => HouseRule.Holds("A folder is a field of work.", Sources.Shipped.Where(p => p.Split('/').Any(part => BannedNames.Contains(part, StringComparer.OrdinalIgnoreCase))));

    // The words are put together here so that this file does not hold them itself.
    [Fact]
    public void Texts_AllOfThem_NameNoFolderOfOneMachine()
    {
        string[] banned = [".." + "/shared", "/" + "work/", "/" + "root/", "/" + "home/", "C:" + "\\Users"];
        Assert.NotEmpty(Sources.Texts);
        HouseRule.Holds("The repository knows no machine.", Sources.Texts.Where(p => banned.Any(b => Sources.Text(p).Contains(b, StringComparison.Ordinal))));
    }

    [Fact]
    public void Texts_AllOfThem_LeaveNothingMarkedUnfinished()
    {
        var marks = new Regex(@"\b(?:" + "TO" + "DO|FIX" + "ME|HA" + @"CK)\b|NotImplemented" + "Exception", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
        HouseRule.Holds("Nothing is left unfinished.", Sources.Texts.Where(p => marks.IsMatch(Sources.Text(p))));
    }

    // Holdfast asks nobody outside: no client of any network protocol in shipped code.
    [Fact]
    public void ShippedCode_NetworkClients_AreAbsent()
    {
        string[] banned = ["HttpClient", "WebRequest", "WebClient", "TcpClient", "UdpClient", "Dns.", "ClientWebSocket", "SmtpClient"];
        HouseRule.Holds("Nothing leaves the computer.", Sources.Shipped.Where(p => banned.Any(b => Sources.Text(p).Contains(b, StringComparison.Ordinal))));
    }

    // What a file brings may not depend on how busy the computer is: expressions go through a text once, or a text they see is short.
    [Fact]
    public void ShippedCode_Expressions_HaveNoLimitOfTime()
    {
        var limited = new Regex(@"Regex(\(|Options\.).*(, [0-9]+\)\]|TimeSpan\.From)", RegexOptions.NonBacktracking);
        HouseRule.Holds("A regular expression is bounded by work, not by time.", Sources.Shipped.Where(p => Sources.Lines(p).Any(limited.IsMatch)));
    }

    // A folder from a stranger may hold links: whatever is written goes through the places that refuse them.
    [Fact]
    public void ShippedCode_Writing_GoesThroughOnePlace()
    {
        string[] writers = ["File.WriteAll", "File.AppendAll", "File.Create(", "File.CreateText", "FileMode.Create)", "FileMode.OpenOrCreate,"];
        HouseRule.Holds("Files are written by DurableFile.", Sources.Shipped.Where(p => writers.Any(w => Sources.Text(p).Contains(w, StringComparison.Ordinal))));
    }

    // A document type or an entity in a workbook's XML could read files or eat memory: readers are made in one place that forbids both.
    [Fact]
    public void ShippedCode_XmlReaders_AreMadeWithDocumentTypesForbidden()
    {
        var makers = Sources.Shipped.Where(p => Regex.IsMatch(Sources.Text(p), @"XmlReader\.Create|new XmlTextReader|XDocument\.Load|XElement\.Load|new XmlDocument", RegexOptions.None, TimeSpan.FromSeconds(5)));
        HouseRule.Holds("An XML reader forbids document types.", makers.Where(p => !Sources.Text(p).Contains("DtdProcessing.Prohibit", StringComparison.Ordinal)));
    }

    [Fact]
    public void TextFiles_OfShippedCodeAndDocs_EndWithOneLineFeedAndHoldNoCarriageReturn()
        => HouseRule.Holds("Text ends with a line feed and holds no carriage return.", Sources.Texts
            .Where(p => p.StartsWith("src/", StringComparison.Ordinal) || p.StartsWith("docs/", StringComparison.Ordinal))
            .Where(p => !Sources.Text(p).EndsWith('\n') || Sources.Text(p).Contains('\r', StringComparison.Ordinal)));

    [Fact]
    public void Solution_Projects_AreAllListed()
    {
        var listed = Sources.Text("Holdfast.slnx");
        var projects = new[] { "src", "tests", "samples", "bench" }
            .Select(f => Repository.Path(f)).Where(Directory.Exists)
            .SelectMany(f => Directory.EnumerateFiles(f, "*.csproj", SearchOption.AllDirectories))
            .Select(p => Path.GetRelativePath(Repository.Root, p).Replace('\\', '/'));
        HouseRule.Holds("Every project is in the solution.", projects.Where(p => !listed.Contains(p, StringComparison.Ordinal)));
    }
}
