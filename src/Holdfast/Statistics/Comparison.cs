namespace Holdfast.Statistics;

/// <summary>One of several comparisons made at once, with the price of looking several times paid.</summary>
/// <param name="First">Name of the first group.</param>
/// <param name="Second">Name of the second group.</param>
/// <param name="Difference">First less second, as if it were the only comparison.</param>
/// <param name="P">p adjusted for the number of comparisons; no unit.</param>
/// <param name="Simultaneous">Interval that holds for all comparisons together, or null where the method gives none.</param>
/// <param name="Method">The adjustment, in words.</param>
/// <param name="Comparisons">How many comparisons were made.</param>
public sealed record Comparison(
    string First, string Second, Estimate Difference, double P, Interval? Simultaneous, string Method, int Comparisons);
