namespace Holdfast.DemoData;

/// <summary>One vessel of the invented sensor, or one reading of the drift vessel.</summary>
/// <param name="Code">Code on the label.</param>
/// <param name="Series">Series it belongs to.</param>
/// <param name="Read">What was read: signal in its own unit, lifetime in ms, or amount found in µmol/L.</param>
public sealed record SensorVessel(string Code, string Series, double Read)
{
    /// <summary>What it is for.</summary>
    public string Role { get; init; } = "vessel";

    /// <summary>Number of the vessel at its level, from 1.</summary>
    public int Replicate { get; init; } = 1;

    /// <summary>The water it is in.</summary>
    public string Matrix { get; init; } = "demineralised water";

    /// <summary>Nickel added, µmol/L, or null.</summary>
    public double? Quencher { get; init; }

    /// <summary>Time in the light, min, or null.</summary>
    public double? Minutes { get; init; }

    /// <summary>Absorbance at 394 nm, or null when not read.</summary>
    public double? Excitation { get; init; }

    /// <summary>Absorbance at 616 nm, or null when not read.</summary>
    public double? Emission { get; init; }

    /// <summary>Symbol of another ion, or null.</summary>
    public string? Ion { get; init; }

    /// <summary>Its concentration, µmol/L, or null.</summary>
    public double? IonConcentration { get; init; }

    /// <summary>Nickel added to a real water, µmol/L, or null.</summary>
    public double? Added { get; init; }
}
