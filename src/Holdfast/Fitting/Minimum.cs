namespace Holdfast.Fitting;

/// <summary>Another local minimum of the sum of squares.</summary>
/// <param name="Values">Parameters there, in the card's order.</param>
/// <param name="SumOfSquares">Weighted sum of squares there.</param>
public sealed record Minimum(IReadOnlyList<double> Values, double SumOfSquares);
