namespace Holdfast.Fitting;

/// <summary>
/// Batch vessels as they were set up and read: start concentration, dose and the concentration left. A fit of these has one
/// measured response, while loading against Ce carries the error of Ce on both axes.
/// </summary>
public sealed class BatchPoints
{
    /// <summary>Vessels of an isotherm or a dose series.</summary>
    /// <param name="start">Start concentrations C0, in <paramref name="concentrationUnit"/>; above 0.</param>
    /// <param name="dose">Doses s = m/V such that (C0 − Ce)/s is in <paramref name="loadingUnit"/> (g/L with mg/L and mg/g); above 0.</param>
    /// <param name="left">Concentrations left Ce, in <paramref name="concentrationUnit"/>.</param>
    /// <param name="u">Standard uncertainties of Ce, in its unit; null when only the scatter can tell.</param>
    /// <param name="concentrationUnit">Unit of C0 and Ce.</param>
    /// <param name="loadingUnit">Unit of the loading.</param>
    /// <param name="ids">Vessel codes, or null to number them.</param>
    public BatchPoints(
        IReadOnlyList<double> start,
        IReadOnlyList<double> dose,
        IReadOnlyList<double> left,
        IReadOnlyList<double>? u = null,
        string concentrationUnit = "mg/L",
        string loadingUnit = "mg/g",
        IReadOnlyList<string>? ids = null)
    {
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(dose);
        Readings = new(start, left, concentrationUnit, concentrationUnit, u, null, ids);
        if (dose.Count != start.Count)
            throw new ArgumentException(FormattableString.Invariant($"{dose.Count} doses for {start.Count} vessels."), nameof(dose));
        for (var i = 0; i < dose.Count; i++)
        {
            if (!(double.IsFinite(dose[i]) && dose[i] > 0))
                throw new ArgumentException(FormattableString.Invariant($"Dose {i + 1} is {dose[i]}; it must be above 0."), nameof(dose));
            if (start[i] <= 0)
                throw new ArgumentException(FormattableString.Invariant($"Start concentration {i + 1} is {start[i]}; it must be above 0."), nameof(start));
        }

        Doses = [.. dose];
        LoadingUnit = loadingUnit;
    }

    /// <summary>Ce against C0, with the uncertainties of Ce.</summary>
    public Points Readings { get; }

    /// <summary>Doses, in (unit of concentration)/(unit of loading).</summary>
    public IReadOnlyList<double> Doses { get; }

    /// <summary>Unit of the loading.</summary>
    public string LoadingUnit { get; }

    /// <summary>Unit of the concentrations.</summary>
    public string ConcentrationUnit => Readings.XUnit;

    /// <summary>
    /// Loading q = (C0 − Ce)/s against Ce. Where u(Ce) is known both axes carry it: u(q) = u(Ce)/s and cov(Ce, q) = −u(Ce)²/s, so
    /// that the effective variance of a point is [(1/s + q′) u(Ce)]².
    /// </summary>
    public Points AsLoadings()
    {
        var (c0, ce, u) = (Readings.XValues, Readings.YValues, Readings.UValues);
        return new(
            ce,
            [.. ce.Select((c, i) => (c0[i] - c) / Doses[i])],
            ConcentrationUnit,
            LoadingUnit,
            u is null ? null : [.. u.Select((v, i) => v / Doses[i])],
            null,
            Readings.Ids,
            u,
            u is null ? null : [.. u.Select((v, i) => -v * v / Doses[i])]);
    }
}
