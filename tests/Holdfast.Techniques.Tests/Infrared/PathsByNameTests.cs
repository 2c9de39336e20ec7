using Holdfast.Studies.Import;
using Holdfast.Techniques.Infrared;

namespace Holdfast.Techniques.Tests.Infrared;

/// <summary>Lines that say how each of two invented powders was measured.</summary>
public class PathsByNameTests
{
    [Theory]
    [InlineData("CB: KBr pellet, spring. CB-Cu: pressed on the diamond (ATR), autumn.", "transmission", "total reflection")]
    [InlineData("CB in KBr; CB-Cu by ATR", "transmission", "total reflection")]
    [InlineData("KBr-Pressling: CB; ATR: CB-Cu", "transmission", "total reflection")]
    [InlineData("CB-Cu sur diamant, CB en pastille", "transmission", "total reflection")]
    [InlineData("one by ATR, the other as a pellet", null, null)]
    public void Paths_ThatDiffer_AreOfTheirPowders(string line, string? before, string? after)
    {
        var paths = PathsByName.Of([new GridRow(1, [new(line)])], ["CB", "CB-Cu"])!;
        Assert.Equal((before, after), (paths["CB"]?.Written, paths["CB-Cu"]?.Written));
    }

    [Theory]
    [InlineData("both as KBr pellets")]
    [InlineData("CB and CB-Cu on the diamond, ATR")]
    [InlineData("spring and autumn")]
    public void Path_ThatIsOne_IsOfAll(string line) => Assert.Null(PathsByName.Of([new GridRow(1, [new(line)])], ["CB", "CB-Cu"]));
}
