using Holdfast.Fitting;

namespace Holdfast.Fluorescence;

/// <summary>The quenching laws, found by one pass over the library: a law is added by adding its file. Each is a curve of the signal F, never of F0/F.</summary>
public static class Quenching
{
    private static readonly IReadOnlyList<Model> Found = Model.AllIn(typeof(Quenching).Namespace!);

    /// <summary>Every law over the concentration of the quencher, ordered by name.</summary>
    public static IReadOnlyList<Model> All { get; } = [.. Found.Where(m => m.Card.Abscissa is null)];

    /// <summary>Laws whose abscissa is Q/H0, for which the concentration of sites H0 must be known.</summary>
    public static IReadOnlyList<Model> OverSiteConcentration { get; } = [.. Found.Where(m => m.Card.Abscissa is not null)];

    /// <summary>The law of that name; null when there is none.</summary>
    /// <param name="name">As on the card; case does not count.</param>
    public static Model? Named(string name) => Found.FirstOrDefault(m => string.Equals(m.Card.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>
    /// Readings as points with constant relative error: each weighs 1/(mean signal of its level)². The weights come from the data and not from a curve,
    /// so that all laws are fitted to the same readings with the same weights and can be ranked.
    /// </summary>
    /// <param name="quencher">Concentrations of the quencher, 0 for readings without, in <paramref name="quencherUnit"/>.</param>
    /// <param name="signal">Corrected signals, in <paramref name="signalUnit"/>.</param>
    /// <param name="quencherUnit">For example "µmol/L".</param>
    /// <param name="signalUnit">For example "counts"; empty for arbitrary units.</param>
    /// <param name="ids">Id of each reading, or null.</param>
    /// <returns>The points; none when a level has a mean signal of 0 or below, or one so small or large that no weight can be made of it.</returns>
    public static Outcome<Points> PointsOf(
        IReadOnlyList<double> quencher, IReadOnlyList<double> signal, string quencherUnit, string signalUnit, IReadOnlyList<string>? ids = null)
    {
        ArgumentNullException.ThrowIfNull(quencher);
        ArgumentNullException.ThrowIfNull(signal);
        if (quencher.Count != signal.Count)
            throw new ArgumentException(FormattableString.Invariant($"{quencher.Count} concentrations for {signal.Count} signals."), nameof(signal));
        var means = quencher.Zip(signal).GroupBy(p => p.First).ToDictionary(g => g.Key, g => g.Average(p => p.Second));
        return means.Where(m => !(m.Value > 0) || !double.IsNormal(1 / (m.Value * m.Value))).OrderBy(m => m.Key).Select(m => ((double Level, double Mean)?)(m.Key, m.Value)).FirstOrDefault() is { } off
            ? Outcome<Points>.None(FluorescenceFindings.SignalNotAboveZero(off.Level, off.Mean, quencherUnit))
            : new(new(quencher, signal, quencherUnit, signalUnit, weights: [.. quencher.Select(q => 1 / (means[q] * means[q]))], ids: ids), []);
    }

    /// <summary>
    /// Ranks laws by AICc. A law that its own numbers exclude (constants that are not real) is not ranked, however small its residuals.
    /// </summary>
    /// <param name="fits">Fits of different laws to the same readings with the same weights.</param>
    public static CurveComparison Compare(IReadOnlyList<FitResult> fits)
    {
        ArgumentNullException.ThrowIfNull(fits);
        return CurveComparison.Of([.. fits.Where(f => !f.Findings.Any(d => string.Equals(d.Code, FluorescenceFindings.NotReal, StringComparison.Ordinal)))]);
    }
}
