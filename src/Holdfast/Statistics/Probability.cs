using System.Globalization;

namespace Holdfast.Statistics;

/// <summary>What a probability may be when someone hands one in.</summary>
internal static class Probability
{
    /// <summary>Refuses anything that is not strictly between 0 and 1.</summary>
    /// <param name="value">The probability; no unit.</param>
    /// <param name="name">The argument's name.</param>
    public static void Require(double value, [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && value < 1))
            throw new ArgumentOutOfRangeException(name, string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; it must lie between 0 and 1."));
    }

    /// <summary>Refuses degrees of freedom that are not above 0.</summary>
    /// <param name="value">Degrees of freedom; may be infinite.</param>
    /// <param name="name">The argument's name.</param>
    public static void RequireDegreesOfFreedom(double value, [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0))
            throw new ArgumentOutOfRangeException(name, string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; degrees of freedom must be above 0."));
    }
}
