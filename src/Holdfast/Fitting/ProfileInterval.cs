namespace Holdfast.Fitting;

/// <summary>An interval by profile likelihood. An end may be open: then the data set no limit on that side.</summary>
/// <remarks>D. M. Bates and D. G. Watts, Nonlinear Regression Analysis and Its Applications, 1988, chapter 6 (from memory).</remarks>
/// <param name="Confidence">Confidence, between 0 and 1.</param>
/// <param name="Lower">Lower end.</param>
/// <param name="Upper">Upper end.</param>
public sealed record ProfileInterval(double Confidence, ProfileLimit Lower, ProfileLimit Upper)
{
    /// <summary>True when both ends were reached.</summary>
    public bool IsClosed => Lower.Kind == LimitKind.Closed && Upper.Kind == LimitKind.Closed;
}

/// <summary>One end of a profile interval.</summary>
/// <param name="Value">The limit; the bound of the card when <paramref name="Kind"/> is a bound; null when open.</param>
/// <param name="Kind">Closed, open, or ended by a bound.</param>
/// <param name="Tau">|τ| there: the quantile of t when closed, the level that τ never exceeds when open.</param>
public readonly record struct ProfileLimit(double? Value, LimitKind Kind, double Tau);

/// <summary>How an end of a profile interval came about.</summary>
public enum LimitKind
{
    /// <summary>The sum of squares rises to the cut there.</summary>
    Closed,

    /// <summary>The sum of squares levels off below the cut: no limit on this side.</summary>
    Open,

    /// <summary>The card's bound is reached before the cut.</summary>
    Bound,
}
