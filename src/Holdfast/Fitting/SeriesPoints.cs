using Holdfast.Amounts;

namespace Holdfast.Fitting;

/// <summary>
/// The vessels of one series as points of a curve, each with the sources of its uncertainty: what two vessels share (a flask, a calibration line, a
/// pipette) is one source in both, and what y shares with x is one source in both. The scatter from vessel to vessel comes on top and is found by the fit.
/// </summary>
public sealed class SeriesPoints
{
    /// <summary>Points whose abscissa is exact, for example uptakes against time.</summary>
    /// <param name="x">Abscissas.</param>
    /// <param name="y">Readings with their uncertainty.</param>
    /// <param name="xUnit">Unit of x.</param>
    /// <param name="yUnit">Unit of y.</param>
    /// <param name="ids">Vessel codes, or null to number them.</param>
    /// <param name="settings">Which setting each vessel stands at: vessels of one number are replicates of one another; null for none.</param>
    /// <exception cref="ArgumentException">Numbers of entries differ, or one is not finite.</exception>
    public SeriesPoints(
        IReadOnlyList<double> x, IReadOnlyList<Measured> y, string xUnit = "", string yUnit = "", IReadOnlyList<string>? ids = null,
        IReadOnlyList<int>? settings = null)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        Plain = new Points(x, [.. y.Select(v => v.Value)], xUnit, yUnit, ids: ids);
        (X, Y, Settings) = ([.. x.Select(v => (Measured)v)], [.. y], Checked(settings, x.Count));
    }

    private SeriesPoints(IReadOnlyList<Measured> start, IReadOnlyList<Measured> dose, IReadOnlyList<Measured> left, IReadOnlyList<string>? ids, IReadOnlyList<int>? settings)
    {
        X = [.. left];
        Y = [.. left.Select((c, i) => (start[i] - c) / dose[i])];
        Plain = new Points([.. X.Select(v => v.Value)], [.. Y.Select(v => v.Value)], "mg/L", "mg/g", ids: ids);
        Vessels = new([.. start.Select(v => v.Value)], [.. dose.Select(v => v.Value)], [.. X.Select(v => v.Value)], ids: ids);
        Settings = Checked(settings, left.Count);
    }

    /// <summary>
    /// Vessels of an isotherm in mg/L, g/L and mg/g. What is read in each is the concentration left, and it is fitted through the mass balance; the uptake
    /// worked out from it is what is shown.
    /// </summary>
    /// <param name="start">Start concentrations, mg/L, above 0.</param>
    /// <param name="dose">Doses, g/L, above 0.</param>
    /// <param name="left">Concentrations left, mg/L, signed.</param>
    /// <param name="ids">Vessel codes, or null to number them.</param>
    /// <param name="settings">Which setting each vessel stands at: vessels of one number are replicates although their Ce differ; null for none.</param>
    /// <exception cref="ArgumentException">Numbers of entries differ, one is not finite, or a start or dose is not above 0.</exception>
    public static SeriesPoints OfVessels(
        IReadOnlyList<Measured> start, IReadOnlyList<Measured> dose, IReadOnlyList<Measured> left, IReadOnlyList<string>? ids = null, IReadOnlyList<int>? settings = null)
    {
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(dose);
        ArgumentNullException.ThrowIfNull(left);
        if (start.Count != left.Count || dose.Count != left.Count)
            throw new ArgumentException(FormattableString.Invariant($"{start.Count} starts and {dose.Count} doses for {left.Count} vessels."), nameof(start));
        return new(start, dose, left, ids, settings);
    }

    /// <summary>The same points without their uncertainties.</summary>
    public Points Plain { get; }

    /// <summary>Abscissas.</summary>
    public IReadOnlyList<Measured> X { get; }

    /// <summary>Readings.</summary>
    public IReadOnlyList<Measured> Y { get; }

    /// <summary>Setting of each vessel, or null.</summary>
    public IReadOnlyList<int>? Settings { get; }

    /// <summary>How the vessels of an isotherm were set up; null for other points.</summary>
    public BatchPoints? Vessels { get; }

    /// <summary>Number of vessels.</summary>
    public int Count => Plain.Count;

    /// <summary>What was read and is fitted: the concentrations left of an isotherm, else y.</summary>
    internal double[] Response => Vessels is null ? Plain.YValues : Plain.XValues;

    private static int[]? Checked(IReadOnlyList<int>? settings, int count)
        => settings is null || settings.Count == count
            ? settings?.ToArray()
            : throw new ArgumentException(FormattableString.Invariant($"{settings.Count} settings for {count} points."), nameof(settings));
}
