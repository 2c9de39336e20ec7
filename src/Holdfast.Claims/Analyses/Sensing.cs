using System.Collections.Immutable;

namespace Holdfast.Claims.Analyses;

/// <summary>What a study shows about a sensor that dims: quenching series, lifetimes, drift, other ions, spiked waters.</summary>
public sealed record Sensing
{
    /// <summary>Works it out once for each evidence.</summary>
    public static readonly Analysis<Sensing> Known = new(SensingWorkup.Of);

    /// <summary>Every vessel with a signal that counts, in the order they came.</summary>
    public ImmutableArray<SensorSample> Signals { get; init; } = [];

    /// <summary>Quenching series in the order they came.</summary>
    public ImmutableArray<SensorSeries> Series { get; init; } = [];

    /// <summary>Lifetimes in the order they came.</summary>
    public ImmutableArray<LifetimeSeries> Lifetimes { get; init; } = [];

    /// <summary>Vessels without quencher over time.</summary>
    public ImmutableArray<DriftRun> Drifts { get; init; } = [];

    /// <summary>Other ions.</summary>
    public ImmutableArray<InterferenceSeries> Interferences { get; init; } = [];

    /// <summary>Spiked waters.</summary>
    public ImmutableArray<SpikedSeries> Waters { get; init; } = [];

    /// <summary>What the data say about themselves.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>True when the study holds nothing of it.</summary>
    public bool IsEmpty => Series.IsEmpty && Lifetimes.IsEmpty && Drifts.IsEmpty && Interferences.IsEmpty && Waters.IsEmpty && Findings.IsEmpty;

    /// <summary>What a study shows; the same object for the same evidence.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static Sensing Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The quenching series of this name, or the only one when none is named; else null.</summary>
    /// <param name="name">Name of a series, or null.</param>
    public SensorSeries? SeriesNamed(string? name) => Named(Series, s => s.Name, name);

    /// <summary>The lifetimes of this name, or the only ones; else null.</summary>
    /// <param name="name">Name of a series, or null.</param>
    public LifetimeSeries? LifetimesNamed(string? name) => Named(Lifetimes, s => s.Name, name);

    /// <summary>The other ions of this name, or the only ones; else null.</summary>
    /// <param name="name">Name of a series, or null.</param>
    public InterferenceSeries? InterferencesNamed(string? name) => Named(Interferences, s => s.Name, name);

    /// <summary>The spiked water of this name, or the only one; else null.</summary>
    /// <param name="name">Name of a series, or null.</param>
    public SpikedSeries? WaterNamed(string? name) => Named(Waters, s => s.Name, name);

    private static T? Named<T>(ImmutableArray<T> all, Func<T, string> nameOf, string? name) where T : class
        => name is null ? (all.Length == 1 ? all[0] : null) : all.FirstOrDefault(s => string.Equals(nameOf(s), name, StringComparison.OrdinalIgnoreCase));
}
