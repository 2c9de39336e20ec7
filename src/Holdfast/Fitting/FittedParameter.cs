using Holdfast.Statistics;

namespace Holdfast.Fitting;

/// <summary>One parameter as fitted.</summary>
/// <param name="Definition">What the card says of it.</param>
/// <param name="Unit">Its unit in the units of the data.</param>
/// <param name="Value">Best value, in <paramref name="Unit"/>.</param>
/// <param name="StandardError">Standard error; null when nothing is left over to judge by, or when it sits on a bound.</param>
/// <param name="Wald">value ± t · standard error; null without a standard error.</param>
/// <param name="Profile">Interval by profile likelihood; null when not asked for or not defined.</param>
/// <param name="OnBound">True when it sits on a bound of the card.</param>
public sealed record FittedParameter(
    Parameter Definition, string Unit, double Value, double? StandardError, Interval? Wald, ProfileInterval? Profile, bool OnBound)
{
    /// <summary>Symbol in the formula.</summary>
    public string Symbol => Definition.Symbol;

    /// <summary>
    /// True when the data say something of it that may be printed as a number: a profile with a limit on one side at least, or without a profile a finite
    /// standard error. A parameter open on both sides, or at the end of its range with nothing known of it, is "not determined by these data".
    /// </summary>
    public bool IsDetermined
        => double.IsFinite(Value) && (Profile is { } profile
            ? profile.Lower.Kind == LimitKind.Closed || profile.Upper.Kind == LimitKind.Closed
            : StandardError is null || double.IsFinite(StandardError.Value));
}
