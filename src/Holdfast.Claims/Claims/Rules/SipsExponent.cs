using Holdfast.Claims.Analyses;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>The exponent of the Sips curve of a series: 1 is one kind of site, below 1 a spread of them, above 1 an isotherm that bends upwards first.</summary>
internal static class SipsExponent
{
    /// <summary>The exponent, or null where no Sips curve settled with points to spare.</summary>
    /// <param name="fitted">The series with its fits.</param>
    public static Estimate? Of(FittedSeries fitted)
        => Candidates.Named(fitted, "Sips") is { Nu: >= 1 } fit
            && fit.Parameters.FirstOrDefault(p => string.Equals(p.Symbol, "n", StringComparison.Ordinal)) is { StandardError: { } se and > 0 } n
            ? new("Sips exponent", n.Value, se, fit.Nu, fit.N)
            : null;
}
