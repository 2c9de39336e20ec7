namespace Holdfast.Statistics;

/// <summary>Independent replicates of one condition. The unit that a claim speaks of sets what counts as one value: a vessel, a batch.</summary>
/// <param name="Name">Name of the condition.</param>
/// <param name="Values">Its values, all in one unit.</param>
public sealed record Group(string Name, IReadOnlyList<double> Values)
{
    /// <summary>Mean, sd and the rest.</summary>
    public Summary Summary { get; } = Summary.Of(Values);
}
