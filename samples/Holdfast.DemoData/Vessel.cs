namespace Holdfast.DemoData;

/// <summary>One vessel of the invented study as the student wrote it down, with what the spectrometer read of it.</summary>
/// <param name="Code">Code on the label.</param>
/// <param name="Series">Series the student put it in.</param>
/// <param name="Stream">Name of the random stream its numbers came from.</param>
/// <param name="Level">Level of the varied setting, in words with unit.</param>
/// <param name="Replicate">Number of the replicate, from 1.</param>
public sealed record Vessel(string Code, string Series, string Stream, string Level, int Replicate)
{
    /// <summary>What it is for.</summary>
    public string Role { get; init; } = "vessel";

    /// <summary>Concentration as made up, mg/L.</summary>
    public double C0 { get; init; } = 20;

    /// <summary>Mass of powder, mg; null for a control without powder.</summary>
    public double? Mass { get; init; } = 50;

    /// <summary>Volume of liquid, mL.</summary>
    public double Volume { get; init; } = 25;

    /// <summary>Contact time, min.</summary>
    public double Minutes { get; init; } = 1440;

    /// <summary>pH at the start, or null when it was not written down.</summary>
    public double? StartPh { get; init; } = 6.0;

    /// <summary>pH at the end, or null when it was not written down.</summary>
    public double? EndPh { get; init; }

    /// <summary>Temperature in °C.</summary>
    public double Celsius { get; init; } = 25;

    /// <summary>The water.</summary>
    public string Matrix { get; init; } = "0.01 mol/L NaNO3";

    /// <summary>What the spectrometer read; null when the liquid was not read with the others.</summary>
    public Portion? Portion { get; init; }

    /// <summary>Dose in g/L, or null for a control without powder.</summary>
    public double? Dose => Mass / Volume;

    /// <summary>Removal in %, or null when the liquid was not read.</summary>
    public double? Removal => 100 * (C0 - Portion?.Concentration) / C0;

    /// <summary>Uptake in mg/g, or null when the liquid was not read or there is no powder.</summary>
    public double? Uptake => (C0 - Portion?.Concentration) / Dose;
}
