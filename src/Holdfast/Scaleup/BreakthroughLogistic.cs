using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Scaleup;

/// <summary>
/// The logistic of a fixed bed. It goes by three names, Thomas, Yoon-Nelson and the usual form of Bohart-Adams: one curve in other letters. Equal fits
/// of the three are arithmetic, not agreement of models; k and τ are fitted once and the rest is derived (<see cref="BedConstants"/>).
/// </summary>
/// <remarks>H. C. Thomas 1944; Y. H. Yoon and J. H. Nelson 1984; G. S. Bohart and E. Q. Adams 1920 (all from memory).</remarks>
public readonly struct BreakthroughLogistic : ICurve<BreakthroughLogistic>
{
    public static ModelCard Card { get; } = new(
        "Breakthrough logistic",
        "C/C0 = 1 / (1 + exp(k·(τ − t)))",
        [
            new("k", Kind.PerX, "1/({x})", "steepness of the front", Above: 0),
            new("τ", Kind.X, "{x}", "time at half of the inlet concentration", Above: 0),
        ],
        "H. C. Thomas 1944, from memory; Yoon and Nelson 1984 and Bohart and Adams 1920 are the same curve",
        "The curve must be near 0 at t = 0 (k·τ above 4.6), otherwise the bed is shorter than its critical depth. Real fronts tail: a symmetric curve misses the foot.")
    {
        Aliases = ["Thomas", "Yoon-Nelson", "Bohart-Adams"],
        Abscissa = "t",
    };

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => 1 / (1 + T.Exp(p[0] * (p[1] - x)));

    /// <summary>The plateau is the inlet itself and not free, so that the scan searches both parameters.</summary>
    public static IReadOnlyList<Kind> Scan => [Kind.PerX, Kind.X];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p) => shapes.CopyTo(p);

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => BedConstants.Determined(BedConstants.AtStart(p[0], p[1])) == Ruling.Holds
            ? []
            : [Finding.Of("HF-643", Weight.Caution, FormattableString.Invariant(
                $"The curve gives C/C0 = {BedConstants.AtStart(p[0], p[1]):0.000} at the start: the bed is shorter than its critical depth. Use a deeper bed or a slower flow."))];
}
