using Holdfast.Amounts;

namespace Holdfast.Calibration;

/// <summary>
/// A result below detection. It is printed as "&lt; limit" and never stored that way: the signed value stays for means, fits and
/// removal; half the limit is never put in its place.
/// </summary>
/// <param name="Signed">What was found, sign kept, in the unit of the sample.</param>
/// <param name="Limit">The detection limit in the unit of the sample, dilution included.</param>
/// <param name="Definition">Which limit it is.</param>
public sealed record Censored(Measured Signed, double Limit, LimitDefinition Definition);
