namespace Holdfast.Claims.Plans;

/// <summary>One setting of a planned series.</summary>
/// <param name="X">The varied quantity, in its own unit.</param>
/// <param name="Start">Start concentration, mg/L.</param>
/// <param name="Dose">Dose, g/L.</param>
/// <param name="Ph">pH at the start.</param>
/// <param name="Temperature">Temperature, K.</param>
/// <param name="Time">Contact time, min.</param>
public sealed record PlannedLevel(double X, double Start, double Dose, double Ph, double Temperature, double Time)
{
    /// <summary>Batch of the sorbent, or null.</summary>
    public string? Batch { get; init; }

    /// <summary>Vessels here for each vessel of the series' replicates: 2 at levels that carry most of the knowledge.</summary>
    public int Share { get; init; } = 1;

    /// <summary>True where more than the least number of replicates is of use: the levels that are compared.</summary>
    public bool IsCompared { get; init; } = true;

    /// <summary>Controls without sorbent beside it.</summary>
    public int Blanks { get; init; }
}
