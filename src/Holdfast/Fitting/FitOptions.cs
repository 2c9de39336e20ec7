namespace Holdfast.Fitting;

/// <summary>How a fit is to be made. The defaults are right for nearly every series.</summary>
public sealed record FitOptions
{
    /// <summary>The defaults.</summary>
    public static FitOptions Default { get; } = new();

    /// <summary>Confidence of all intervals, between 0 and 1.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Whether profile-likelihood intervals are computed.</summary>
    public bool Profiles { get; init; } = true;

    /// <summary>Whether starting points are searched from the scale of the data.</summary>
    public bool Scan { get; init; } = true;

    /// <summary>Starting points of the user's own, each in the card's order of parameters.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Starts { get; init; } = [];

    /// <summary>How the readings are weighed.</summary>
    public Weighting Weighting { get; init; } = Weighting.AsGiven;

    /// <summary>In what the vessels of a series scatter; null takes the likelier form.</summary>
    public ScatterForm? Form { get; init; }

    /// <summary>The most steps of the final fit.</summary>
    public int MostIterations { get; init; } = 5000;
}

/// <summary>How the readings are weighed.</summary>
public enum Weighting
{
    /// <summary>As the points say: 1/u², relative weights, or all alike.</summary>
    AsGiven,

    /// <summary>
    /// Constant relative error: 1/f² from the fitted value, refreshed until it settles. Weights from the readings themselves (1/y²)
    /// would favour the points that happen to read low.
    /// </summary>
    RelativeToFit,
}
