namespace Holdfast.Fitting;

/// <summary>Why a fit ended. Only the first two are fits.</summary>
public enum StopReason
{
    /// <summary>The gradient is nil beside the scatter, and the last step was below the rounding of the parameters.</summary>
    Converged,

    /// <summary>The least sum of squares within rounding: no further step lowers it.</summary>
    StalledByRounding,

    /// <summary>Still moving after the most steps allowed.</summary>
    IterationLimit,

    /// <summary>A parameter sits on a bound of its card and would leave it.</summary>
    OnBound,

    /// <summary>A parameter ran away to where the curve no longer depends on it.</summary>
    Plateau,

    /// <summary>Only a combination of parameters is determined.</summary>
    RankDeficient,

    /// <summary>The data cannot be fitted with this curve; a finding says why.</summary>
    Refused,
}
