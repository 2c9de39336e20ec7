using System.Globalization;

namespace Holdfast.Cli.Tests;

/// <summary>Undo says what it takes back; a person at a terminal is asked before a large import goes, a script never is.</summary>
public class UndoTests
{
    [Theory]
    [InlineData(20, true, Exit.Done)]
    [InlineData(21, true, Exit.NeedsDecision)]
    [InlineData(21, false, Exit.Done)]
    public void Undo_OfAnImport_AsksOnlyAPersonAndOnlyAboutALargeOne(int samples, bool terminal, int exit)
    {
        using var line = new Typed { IsTerminal = terminal };
        line.Begin();
        line.Type("take", line.File("vessels.csv", "sample,m (mg)\n" + string.Concat(Enumerable.Range(1, samples).Select(i => string.Create(CultureInfo.InvariantCulture, $"V-{i},20\n")))));
        Assert.Equal(exit, line.Type("undo"));
        var words = string.Create(CultureInfo.InvariantCulture, $"{samples} samples");
        if (exit == Exit.Done)
        {
            Assert.Contains($"undo: take in vessels.csv ({words})", line.Out, StringComparison.Ordinal);
            return;
        }

        Assert.Contains($"This takes back {words} of entry 2: take in vessels.csv. Nothing is undone yet", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("undo", "--yes"));
        Assert.Equal(Exit.NeedsDecision, line.Type("undo"));
    }
}
