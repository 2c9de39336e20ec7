namespace Holdfast;

/// <summary>Something the data say about themselves: a caveat, a refusal, a surprise. It travels beside the value it concerns.</summary>
/// <param name="Code">Stable code, for example "HF-403"; each has a page in docs/findings.</param>
/// <param name="Weight">How much it weighs.</param>
/// <param name="Sentence">What happened, what it means for the data, what to do; at most about 25 words, numbers with units.</param>
/// <param name="Concerns">Ids of the samples, readings or series it speaks of.</param>
public sealed record Finding(string Code, Weight Weight, string Sentence, IReadOnlyList<string> Concerns)
{
    /// <summary>A finding that concerns the named things.</summary>
    public static Finding Of(string code, Weight weight, string sentence, params string[] concerns) => new(code, weight, sentence, concerns);
}

/// <summary>How much a finding weighs.</summary>
public enum Weight
{
    /// <summary>Worth knowing; nothing is wrong.</summary>
    Note,

    /// <summary>The number stands, with this caveat.</summary>
    Caution,

    /// <summary>What rests on this cannot be used as it is.</summary>
    Stop,
}
