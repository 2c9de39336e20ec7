using Holdfast.Studies;

namespace Holdfast.Cli.Tests;

/// <summary>A program in one file has no list of its assemblies: what it finds by its references must be all there is.</summary>
public class CatalogueTests
{
    [Fact]
    public void References_OfTheProgram_ReachEveryAssemblyThatHoldsKinds()
    {
        var reached = Catalogue.Reached(typeof(CommandLine).Assembly).Where(a => a.IsDefined(typeof(HoldsKindsAttribute), inherit: false)).SelectMany(a => a.GetTypes());
        Assert.Equal(Catalogue.Types.Select(t => t.FullName), reached.Select(t => t.FullName).Order(StringComparer.Ordinal));
    }
}
