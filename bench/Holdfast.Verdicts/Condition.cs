namespace Holdfast.Verdicts;

/// <summary>How a claim stands to the truth of a simulated study.</summary>
internal enum Truth
{
    /// <summary>The claim is true, and the study is as large as the rule itself advises.</summary>
    True,

    /// <summary>The truth lies on the rule's margin: a verdict either way would be chance.</summary>
    Margin,

    /// <summary>The claim is false.</summary>
    False,

    /// <summary>The truth lies between what matters and what is tolerated: either verdict can be given for it, and the row is there to be read.</summary>
    Between,

    /// <summary>The study cannot speak: neither verdict is supported.</summary>
    Mute,
}

/// <summary>One rule asked about one kind of simulated study.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Name">What the studies are like.</param>
/// <param name="Truth">How the claim stands to their truth.</param>
/// <param name="Judge">The ruling on the study of a seed.</param>
internal sealed record Condition(string Rule, string Name, Truth Truth, Func<ulong, Ruling> Judge)
{
    /// <summary>Largest share of wrong verdicts, of one kind.</summary>
    public const double MostWrong = 0.05;

    /// <summary>Standard errors beyond a bar that are no chance: with some 150 rows one-sided 95 % would cry wolf in seven of them.</summary>
    public const double Chance = 3;

    /// <summary>Smallest share of "holds" where the claim is true.</summary>
    public const double LeastRight = 0.80;

    /// <summary>Whether "holds" would be wrong.</summary>
    public bool HoldsIsWrong => Truth is not (Truth.True or Truth.Between);

    /// <summary>Whether "contradicted" would be wrong.</summary>
    public bool ContradictedIsWrong => Truth is not (Truth.False or Truth.Between);
}

/// <summary>How often each ruling came out.</summary>
/// <param name="Holds">Studies in which it held.</param>
/// <param name="Open">Studies in which it was not shown yet.</param>
/// <param name="Contradicted">Studies in which it was contradicted.</param>
internal readonly record struct Count(int Holds, int Open, int Contradicted)
{
    /// <summary>Studies.</summary>
    public int Studies => Holds + Open + Contradicted;

    /// <summary>One study more.</summary>
    /// <param name="ruling">How it came out.</param>
    public Count With(Ruling ruling) => ruling switch
    {
        Ruling.Holds => this with { Holds = Holds + 1 },
        Ruling.Contradicted => this with { Contradicted = Contradicted + 1 },
        _ => this with { Open = Open + 1 },
    };

    /// <summary>The bars a condition misses by more than chance (three standard errors, normal approximation); none when all are met.</summary>
    /// <param name="condition">The condition.</param>
    public IEnumerable<string> Missed(Condition condition)
    {
        var slack = Condition.Chance * Math.Sqrt(Condition.MostWrong * (1 - Condition.MostWrong) * Studies);
        if (condition.HoldsIsWrong && Holds > Condition.MostWrong * Studies + slack)
            yield return "false holds";
        if (condition.ContradictedIsWrong && Contradicted > Condition.MostWrong * Studies + slack)
            yield return "false contradicted";
        if (condition.Truth == Truth.True && Holds < Condition.LeastRight * Studies - Condition.Chance * Math.Sqrt(Condition.LeastRight * (1 - Condition.LeastRight) * Studies))
            yield return "rightly holds";
    }
}
