using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims.Tests;

/// <summary>An area's analysis is worked out once for each evidence.</summary>
public class AnalysisTests
{
    [Fact]
    public void Of_TheSameEvidence_IsWorkedOutOnce()
    {
        var times = 0;
        var analysis = new Analysis<string>(e => $"{++times}: {e.Vessels.Length}");
        var evidence = Made.Evidence([]);
        Assert.Same(analysis.Of(evidence), analysis.Of(evidence));
        Assert.StartsWith("1:", analysis.Of(evidence), StringComparison.Ordinal);
        Assert.StartsWith("2:", analysis.Of(evidence with { Findings = [] }), StringComparison.Ordinal);
    }
}
