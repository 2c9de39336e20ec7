using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests.Fuzzing;

/// <summary>The files that are spoilt elsewhere, sound: each on the whole way by the same rules. PeoplesFileTests compares the numbers of every one, so that of many only some are read here.</summary>
public class SoundFileTests
{
    private const int Most = 30;

    [Theory, MemberData(nameof(FuzzTests.Kinds), MemberType = typeof(FuzzTests))]
    public void SoundFiles_AreRead(string kind)
    {
        var seeds = FuzzedKind.All(Repository.Root, null).Single(k => k.Name == kind).Seeds;
        var every = (seeds.Length + Most - 1) / Most;
        Assert.All(seeds.Where((_, i) => i % every == 0), s => Assert.Null(FuzzedReading.Of(s.Name, s.Bytes, new SeededStream(0, "sound")).Fault));
    }
}
