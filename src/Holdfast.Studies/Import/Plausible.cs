using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Numbers that cannot be, or hardly can: asked about once, and kept as written when she says so.</summary>
internal static class Plausible
{
    // Lowest and highest value that passes without a word, in the property's unit; what is below Least cannot be at all.
    private static readonly Dictionary<Property, (double Least, double Low, double High)> Ranges = new()
    {
        [BatchProperties.Mass] = (0, 0, 1e6),
        [BatchProperties.Volume] = (double.Epsilon, 1e-3, 1e5),
        [BatchProperties.Dose] = (0, 0, 1e3),
        [BatchProperties.InitialConcentration] = (0, 0, 1e6),
        [BatchProperties.ContactTime] = (0, 0, 1e6),
        [BatchProperties.StartPh] = (double.MinValue, -1, 15),
        [BatchProperties.EndPh] = (double.MinValue, -1, 15),
        [BatchProperties.Temperature] = (double.Epsilon, 250, 500),
        [SpectrometryProperties.StandardConcentration] = (0, 0, 1e6),
        [SpectrometryProperties.Dilution] = (double.Epsilon, 1, 1e6),
    };

    /// <summary>Why a number cannot be, or hardly can; null when it can. <paramref name="impossible"/> when no answer can save it.</summary>
    /// <param name="property">What it is.</param>
    /// <param name="value">The number, in the property's unit.</param>
    /// <param name="impossible">True when it cannot be.</param>
    public static string? Doubt(Property property, double value, out bool impossible)
    {
        impossible = false;
        if (!Ranges.TryGetValue(property, out var range))
            return null;
        impossible = value < range.Least;
        return impossible ? (value < 0 ? "below zero" : "zero")
            : value < range.Low ? "unlikely small"
            : value > range.High ? "unlikely large" : null;
    }
}
