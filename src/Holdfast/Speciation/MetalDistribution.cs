namespace Holdfast.Speciation;

/// <summary>How one metal is spread over its species at one pH.</summary>
/// <param name="Ph">pH.</param>
/// <param name="LgFree">lg activity of the free ion.</param>
/// <param name="Shares">Share of the metal in each species, in the order of <see cref="MetalInWater.Species"/>; they add up to 1.</param>
/// <param name="Steps">Newton steps taken.</param>
public sealed record MetalDistribution(double Ph, double LgFree, IReadOnlyList<double> Shares, int Steps);
