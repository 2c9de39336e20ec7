using Holdfast.Testing;

namespace Holdfast.Techniques.Tests.Fuzzing;

/// <summary>
/// Spoilt files of every kind: each ends in a refusal with its reason, a question, or numbers that are finite and possible. A few hundred here, seeded;
/// bench/Holdfast.Fuzz reads a hundred thousand and more by the same rules.
/// </summary>
public class FuzzTests
{
    private const int Inputs = 60;

    public static TheoryData<string> Kinds => [.. FuzzedKind.All(Repository.Root, null).Select(k => k.Name)];

    [Theory, MemberData(nameof(Kinds))]
    public void SpoiltFiles_AreRefusedAskedAboutOrRead(string kind)
    {
        var files = FuzzedKind.All(Repository.Root, null).Single(k => k.Name == kind);
        var ends = new HashSet<FuzzedEnd>();
        for (var number = 0; number < Inputs; number++)
        {
            var (name, bytes, chance) = files.Input(number);
            var reading = FuzzedReading.Of(name, bytes, chance);
            Assert.True(reading.Fault is null, $"{kind} {number} ({name}): {reading.Fault}");
            ends.Add(reading.End);
        }

        // Mutations that all end alike reach nothing.
        Assert.True(ends.Count > 1, $"Every input of {kind} was {string.Join(", ", ends)}.");
    }
}
