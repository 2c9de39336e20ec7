using System.Collections.Immutable;

namespace Holdfast.Claims;

/// <summary>
/// What the deciding numbers say by themselves, before they are tied to a claim, its scope and its ground. A rule's <c>Decide</c>
/// is a pure function of plain numbers that returns one of these, so that a worked example tests the very code that judges a study.
/// </summary>
/// <param name="Ruling">How the numbers stand before the gates are looked at.</param>
/// <param name="Reason">Why, in plain words with the deciding numbers and units.</param>
/// <param name="Method">The test, by its name in the trade.</param>
public sealed record Decision(Ruling Ruling, string Reason, string Method)
{
    // The rest stands among the gates: a reason that lists all of them is not read.
    private const int MostNamed = 2;

    /// <summary>The deciding numbers.</summary>
    public ImmutableArray<Deciding> Numbers { get; init; } = [];

    /// <summary>Conditions that must be met before the claim can hold.</summary>
    public ImmutableArray<Gate> Gates { get; init; } = [];

    /// <summary>Caveats that leave the ruling as it is.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>What an examiner would ask.</summary>
    public ImmutableArray<Question> Questions { get; init; } = [];

    /// <summary>The smallest experiment that would settle it, or null.</summary>
    public NextExperiment? Next { get; init; }

    /// <summary>True when nothing was measured that could test the claim.</summary>
    public bool IsUntested { get; init; }

    /// <summary>Data are missing, so nothing is decided.</summary>
    /// <param name="reason">What is missing and what would bring it.</param>
    /// <param name="next">The experiment that would bring it, or null.</param>
    /// <param name="questions">What an examiner would ask about the gap.</param>
    public static Decision Missing(string reason, NextExperiment? next = null, params ReadOnlySpan<Question> questions)
        => new(Ruling.NotShownYet, reason, "none: data are missing") { Next = next, Questions = [.. questions], IsUntested = true };

    /// <summary>A setting was not recorded or named, so that the question could not be put; that is a hole in the record, not in the tests.</summary>
    /// <param name="reason">What is not known and where to write it.</param>
    public static Decision Unasked(string reason) => Missing(reason) with { IsUntested = false };

    /// <summary>A parameter that the claim needs was not given, or is not of the kind the rule works with.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="name">Name of the parameter.</param>
    /// <param name="example">How it is written: "120 min".</param>
    public static Decision NotNamed(Claim claim, string name, string example)
    {
        ArgumentNullException.ThrowIfNull(claim);
        return Unasked(claim.Words(name) is { } words
            ? $"“{words}” cannot be read as the {name} of this claim. Write it like {example}."
            : $"The claim names no {name}. Write it like {example}.");
    }

    /// <summary>
    /// The ruling after the gates: a gate that failed forbids "holds", and "contradicted" too where it leaves the data mute.
    /// </summary>
    public Ruling Gated => InTheWay.Any() ? Ruling.NotShownYet : Ruling;

    /// <summary>The gates of this part beside a ruling on several: a part that is mute by itself does not mute another that speaks.</summary>
    /// <param name="together">The ruling on all parts.</param>
    internal IEnumerable<Gate> GatesBeside(Ruling together) => Gated == together ? Gates : Gates.Select(g => g with { Silences = false });

    private IEnumerable<Gate> InTheWay => Ruling switch
    {
        Ruling.Holds => Gates.Where(g => !g.Passed),
        Ruling.Contradicted => Gates.Where(g => g is { Passed: false, Silences: true }),
        _ => [],
    };

    /// <summary>The verdict on a claim.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="sentence">The claim in words.</param>
    /// <param name="scope">Range of the data it rests on; kept only when it holds.</param>
    /// <param name="data">Codes of the samples it rests on.</param>
    public Verdict On(Claim claim, string sentence, string? scope, IEnumerable<string> data)
    {
        var reason = Gated == Ruling ? Reason : $"{Reason} Yet {Phrase.Listed(InTheWay.Take(MostNamed).Select(g => g.Sentence))}.";
        var verdict = new Verdict(
            claim, sentence, Gated, reason, Numbers, Method, Gated == Ruling.Holds ? scope : null, Gates, Warnings, Questions,
            Gated == Ruling.Holds ? null : Next, [.. data.Distinct(StringComparer.Ordinal)]);
        return verdict with { IsUntested = IsUntested };
    }
}
