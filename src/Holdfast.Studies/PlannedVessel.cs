namespace Holdfast.Studies;

/// <summary>One row of a designed series: a vessel that is to be run, with its targets. What is really done is recorded under its code, as of any sample.</summary>
/// <param name="Code">The code on the label, with a check character.</param>
/// <param name="Series">The series it belongs to.</param>
/// <param name="Role">What it is for.</param>
/// <param name="Replicate">Which of the vessels of its level, from 1.</param>
/// <param name="Block">Day or tray, from 1.</param>
/// <param name="StartOrder">Place in the order of starting within the series, from 1.</param>
/// <param name="ReadOrder">Place in the order of reading within the series, from 1.</param>
public sealed record PlannedVessel(string Code, string Series, SampleRole Role, int Replicate, int Block, int StartOrder, int ReadOrder)
{
    /// <summary>Name that stands as the origin of a fact that a plan gave, such as the series.</summary>
    public const string Source = "plan";

    /// <summary>A mass or volume that differs from its target by more than this share is asked about once, and shown as a deviation; common practice.</summary>
    public const double AmountTolerance = 0.2;

    /// <summary>Concentration at the start, mg/L; 0 for a vessel without metal.</summary>
    public required double InitialConcentration { get; init; }

    /// <summary>Volume of liquid, mL.</summary>
    public required double Volume { get; init; }

    /// <summary>Sorbent to weigh in, mg; 0 for a vessel without.</summary>
    public required double Mass { get; init; }

    /// <summary>pH at the start, or null where it is not set.</summary>
    public double? Ph { get; init; }

    /// <summary>Temperature, K, or null where it is not set.</summary>
    public double? Temperature { get; init; }

    /// <summary>Contact time, min.</summary>
    public required double ContactTime { get; init; }

    /// <summary>When it is started, in minutes after the beginning of its block.</summary>
    public required double StartsAt { get; init; }

    /// <summary>Concentration supposed after contact, mg/L.</summary>
    public required double Expected { get; init; }

    /// <summary>How many times the liquid is to be diluted for reading; 1 for not at all.</summary>
    public required double Dilution { get; init; }

    /// <summary>Batch of the sorbent, or null where one batch serves all.</summary>
    public string? Batch { get; init; }
}
