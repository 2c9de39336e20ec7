using Holdfast.Fitting;

namespace Holdfast.Fluorescence;

/// <summary>
/// The straightened plots of the trade, as checks beside the fitted law and never as results: they stretch the noise of weak signals, and the last two
/// take the quencher added for the quencher free.
/// </summary>
/// <remarks>
/// Stern and Volmer's line; H. A. Benesi and J. H. Hildebrand, J. Am. Chem. Soc. 71 (1949) 2703; the double logarithmic line after A. V. Hill
/// (all from memory). That the double reciprocal misleads: C. Yang 2000 (abstract).
/// </remarks>
public static class QuenchingPlots
{
    /// <summary>F0/F on Q. Its intercept must be 1 within two standard errors, or F0 and the series do not belong together.</summary>
    /// <param name="quencher">Concentrations Q, any unit, at least two different.</param>
    /// <param name="signal">Signals, above 0, any unit.</param>
    /// <param name="withoutQuencher">F0, in the unit of the signals.</param>
    public static Outcome<QuenchingLine> Ratio(IReadOnlyList<double> quencher, IReadOnlyList<double> signal, double withoutQuencher)
    {
        ArgumentNullException.ThrowIfNull(quencher);
        ArgumentNullException.ThrowIfNull(signal);
        var line = StraightLine.Through([.. quencher], [.. signal.Select(f => withoutQuencher / f)]);
        return new(
            new("F0/F on Q", line, line.Slope, null),
            line.InterceptError is { } u && Math.Abs(line.Intercept - 1) > 2 * u ? [FluorescenceFindings.InterceptNotOne(line.Intercept, u)] : []);
    }

    /// <summary>1/(F0 − F) on 1/Q: K is intercept over slope.</summary>
    /// <param name="quencher">Concentrations Q, any unit; those at 0 are left out.</param>
    /// <param name="signal">Signals, any unit; those at or above F0 are left out.</param>
    /// <param name="withoutQuencher">F0, in the unit of the signals.</param>
    /// <returns>The line with its caveat; none with fewer than two usable levels.</returns>
    public static Outcome<QuenchingLine> DoubleReciprocal(IReadOnlyList<double> quencher, IReadOnlyList<double> signal, double withoutQuencher)
        => Straight(quencher, signal, withoutQuencher, "1/(F0 − F) on 1/Q", q => 1 / q, f => 1 / (withoutQuencher - f), l => l.Intercept / l.Slope, _ => null);

    /// <summary>lg((F0 − F)/F) on lg Q: slope n, K is 10 to the intercept.</summary>
    /// <param name="quencher">Concentrations Q, any unit; those at 0 are left out.</param>
    /// <param name="signal">Signals, any unit; those at or above F0 are left out.</param>
    /// <param name="withoutQuencher">F0, in the unit of the signals.</param>
    /// <returns>The line with its caveat; none with fewer than two usable levels.</returns>
    public static Outcome<QuenchingLine> DoubleLogarithmic(IReadOnlyList<double> quencher, IReadOnlyList<double> signal, double withoutQuencher)
        => Straight(quencher, signal, withoutQuencher, "lg((F0 − F)/F) on lg Q", Math.Log10,
            f => Math.Log10((withoutQuencher - f) / f), l => Math.Pow(10, l.Intercept), l => l.Slope);

    private static Outcome<QuenchingLine> Straight(
        IReadOnlyList<double> quencher, IReadOnlyList<double> signal, double withoutQuencher, string name,
        Func<double, double> x, Func<double, double> y, Func<StraightLine, double> constant, Func<StraightLine, double?> order)
    {
        ArgumentNullException.ThrowIfNull(quencher);
        ArgumentNullException.ThrowIfNull(signal);
        var used = quencher.Zip(signal).Where(p => p.First > 0 && p.Second > 0 && p.Second < withoutQuencher).ToArray();
        if (used.Select(p => p.First).Distinct().Count() < 2)
            return Outcome<QuenchingLine>.None(FluorescenceFindings.NoStraightPlot(name, used.Length));
        var line = StraightLine.Through(Array.ConvertAll(used, p => x(p.First)), Array.ConvertAll(used, p => y(p.Second)));
        return new(new(name, line, constant(line), order(line)), [FluorescenceFindings.StraightPlotMisleads(name)]);
    }
}

/// <summary>A straightened plot.</summary>
/// <param name="Name">What is plotted on what.</param>
/// <param name="Line">The line.</param>
/// <param name="Constant">The constant it gives, one over the unit of Q; for comparison only.</param>
/// <param name="Order">The slope read as a number of sites by the double logarithmic plot; null for the others; no unit.</param>
public sealed record QuenchingLine(string Name, StraightLine Line, double Constant, double? Order);
