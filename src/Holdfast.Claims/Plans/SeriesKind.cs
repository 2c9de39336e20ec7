namespace Holdfast.Claims.Plans;

/// <summary>Kinds of series that a plan can hold.</summary>
public enum SeriesKind
{
    /// <summary>Start concentration varied.</summary>
    Isotherm,

    /// <summary>Contact time varied.</summary>
    Kinetic,

    /// <summary>Dose varied.</summary>
    Dose,

    /// <summary>pH varied.</summary>
    Ph,

    /// <summary>An isotherm at each of several temperatures.</summary>
    Temperature,

    /// <summary>Batches of the sorbent side by side.</summary>
    Batches,
}
