using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Tests.StudyTables;

/// <summary>Progress in words. At an even pace the time left follows by proportion: a fifth in 2 s leaves four fifths, 8 s.</summary>
public class CountingTests
{
    [Theory]
    [InlineData(0, 5000, 1, "0 of 5 000")]
    [InlineData(1240, 5000, 2, "1 240 of 5 000, about 7 s left")]
    [InlineData(1000, 5000, 2, "1 000 of 5 000, about 8 s left")]
    [InlineData(5000, 5000, 12, "5 000 of 5 000, about 0 s left")]
    [InlineData(10_000, 1_000_000, 1, "10 000 of 1 000 000, about 2 min left")]
    public void Words_OfCountedWork_SayHowMuchAndHowLong(int done, int all, double seconds, string expected)
        => Assert.Equal(expected, new Counting(done, all, TimeSpan.FromSeconds(seconds)).Words.Replace('\u00A0', ' '));

    [Theory, InlineData(0, ""), InlineData(1249, ""), InlineData(1250, "a quarter"), InlineData(2500, "half"), InlineData(4999, "three quarters"), InlineData(5000, "all")]
    public void Share_OfCountedWork_ChangesAtTheQuarters(int done, string expected) => Assert.Equal(expected, new Counting(done, 5000, TimeSpan.Zero).Share);
}
