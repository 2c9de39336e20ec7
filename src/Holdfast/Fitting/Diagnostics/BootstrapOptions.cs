namespace Holdfast.Fitting.Diagnostics;

/// <summary>How a fit is resampled.</summary>
public sealed record BootstrapOptions
{
    /// <summary>The scheme.</summary>
    public Resampling Scheme { get; init; } = Resampling.Residual;

    /// <summary>Number of resamples, at least 100.</summary>
    public int Count { get; init; } = 2000;

    /// <summary>Seed, kept in the record of the study. The same seed gives the same bits on one thread or many.</summary>
    public ulong Seed { get; init; }

    /// <summary>The most threads used.</summary>
    public int Threads { get; init; } = 1;

    /// <summary>
    /// Told how many resamples of each fit are done, after each block of 250: the count never falls, and the last one is <see cref="Count"/>. Told by whichever
    /// thread drew the block, one at a time, so what listens should be brief. Null for silence.
    /// </summary>
    public IProgress<int>? Progress { get; init; }
}

/// <summary>What is drawn anew.</summary>
public enum Resampling
{
    /// <summary>Residuals, inflated by √(n/ν) and recentred, put on the fitted curve: the design is fixed and the scatter even.</summary>
    Residual,

    /// <summary>Each residual over 1 − h with a random sign: the scatter may differ from point to point (C. F. J. Wu, Ann. Statist. 14 (1986) 1261; from memory).</summary>
    Wild,

    /// <summary>Whole points: the design is itself random, or replicated.</summary>
    Case,
}
