using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Fitting;
using Holdfast.Fluorescence;
using Holdfast.Statistics;

namespace Holdfast.Claims.Analyses;

/// <summary>A quenching series: signals at several levels of quencher, its blanks, its laws and its line.</summary>
/// <param name="Name">Name of the series.</param>
/// <param name="Samples">Vessels that count, by rising quencher.</param>
/// <param name="Struck">Vessels that were struck.</param>
/// <param name="Blanks">Separately prepared blanks read in the same run, else all of the study.</param>
public sealed record SensorSeries(
    string Name, ImmutableArray<SensorSample> Samples, ImmutableArray<SensorSample> Struck, ImmutableArray<SensorSample> Blanks)
{
    /// <summary>Signal without quencher, on which F0/F stands: mean of the blanks, else of the vessels without quencher; null without either.</summary>
    public double? F0
        => Blanks.Length > 1 ? Blanks.Average(b => b.Signal.Value)
            : Samples.Where(s => s.Quencher == 0).Select(s => (double?)s.Signal.Value).Average();

    /// <summary>Where F0 comes from, in words.</summary>
    public string F0From => Blanks.Length > 1 ? $"mean of {Phrase.Count(Blanks.Length, "blank")}" : $"mean of {Phrase.Count(Samples.Count(s => s.Quencher == 0), "vessel")} without quencher";

    /// <summary>Every quenching law fitted to the signals; empty when no curve can be fitted.</summary>
    public ImmutableArray<FitResult> Fits { get; init; } = [];

    /// <summary>The laws ranked by AICc, those excluded by their own constants left out; null without fits.</summary>
    public CurveComparison? Ranking { get; init; }

    /// <summary>How far up from the lowest level F0/F stays straight; null without F0.</summary>
    public LinearRange? Range { get; init; }

    /// <summary>Two joined lines against one, on F0/F; null where there are too few points.</summary>
    public JoinedLines? TwoLines { get; init; }

    /// <summary>Straightened plots, for comparison only.</summary>
    public ImmutableArray<QuenchingLine> Plots { get; init; } = [];

    /// <summary>That the powder takes up much of what is added, so that the axis is not the free concentration; null where it does not, or is not known to.</summary>
    public Finding? TakenUp { get; init; }

    /// <summary>What the series says about itself.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Different levels of quencher, µmol/L, rising.</summary>
    public ImmutableArray<double> Levels => [.. Samples.Select(s => s.Quencher).Distinct().Order()];

    /// <summary>The fit of the law with the lowest AICc, or null.</summary>
    public FitResult? Best => Ranking?.Ranked.Select(r => r.Fit).FirstOrDefault();

    /// <summary>F0/F of every vessel up to a level, as readings of standards; empty without F0.</summary>
    /// <param name="to">Highest level, µmol/L; null for all.</param>
    public IReadOnlyList<StandardReading> Ratios(double? to = null)
        => F0 is { } f0
            ? [.. Samples.Where(s => s.Quencher <= (to ?? double.PositiveInfinity) && s.Signal.Value > 0).Select(s => new StandardReading(s.Quencher, f0 / s.Signal.Value, s.Code))]
            : [];

    /// <summary>The line of F0/F up to a level, or over the longest straight range; null without two levels.</summary>
    /// <param name="to">Highest level, µmol/L; null for the longest straight range.</param>
    public Linearity? LineTo(double? to = null)
    {
        var ratios = Ratios(to ?? Range?.Longest?.Top);
        return ratios.Select(r => r.Level).Distinct().Count() < 2 ? null : Linearity.Of(ratios);
    }

    /// <summary>The detection limit 3.3 s0 over the slope, on the line up to a level; null without blanks that scatter or without a slope.</summary>
    /// <param name="to">Highest level of the line, µmol/L; null for the longest straight range.</param>
    /// <param name="definition">Which definition.</param>
    public DetectionLimit? Limit(double? to = null, LimitDefinition definition = LimitDefinition.ThreePointThreeSd)
        => Blanks.Length > 1 && Blanks.All(b => b.Signal.Value > 0) && LineTo(to) is { } line && line.Line.SlopeAt(0) > 0
            ? SensorLimits.OnLine([.. Blanks.Select(b => b.Signal.Value)], line.Line.SlopeAt(0)).FirstOrDefault(l => l.Definition == definition)
            : null;

    /// <summary>True when every higher level was read after every lower one: level and time cannot be told apart.</summary>
    public bool IsInRisingOrder
        => Samples.GroupBy(s => s.Run, StringComparer.Ordinal).All(run => run.OrderBy(s => s.Order).Select(s => s.Quencher).ToArray() is var q && q.SequenceEqual(q.Order()))
            && Levels.Length > 2 && IsOrderKnown;

    /// <summary>True when some run holds three levels or more: vessels that come in files of their own have no order.</summary>
    public bool IsOrderKnown => Samples.GroupBy(s => s.Run, StringComparer.Ordinal).Any(run => run.Select(s => s.Quencher).Distinct().Count() > 2);

    /// <summary>Quenching constant by a Stern–Volmer fit up to a level, one over µmol/L, with its standard error; null where it cannot be fitted.</summary>
    /// <param name="to">Highest level, µmol/L.</param>
    public Estimate? ConstantTo(double to) => SensorFitting.Constant([.. Samples.Where(s => s.Quencher <= to)], "intensities");
}

/// <summary>Lifetimes at several levels of quencher.</summary>
/// <param name="Name">Name of the series.</param>
/// <param name="Samples">Vessels that count; their signal is the lifetime, ms.</param>
public sealed record LifetimeSeries(string Name, ImmutableArray<SensorSample> Samples)
{
    /// <summary>Highest level of quencher, µmol/L.</summary>
    public double Highest => Samples.Max(s => s.Quencher);

    /// <summary>Constant by a Stern–Volmer fit of the lifetimes, one over µmol/L; null where it cannot be fitted.</summary>
    public Estimate? Constant => SensorFitting.Constant(Samples, "lifetimes");

    /// <summary>Mean lifetime without quencher, ms; null without such a vessel.</summary>
    public double? WithoutQuencher => Samples.Where(s => s.Quencher == 0).Select(s => (double?)s.Signal.Value).Average();
}

/// <summary>A vessel without quencher that was read over the time of a series.</summary>
/// <param name="Name">Name of the series.</param>
/// <param name="Samples">Readings by time.</param>
/// <param name="Control">What it lost.</param>
public sealed record DriftRun(string Name, ImmutableArray<SensorSample> Samples, DriftControl Control);

/// <summary>Other ions, each against the response without them.</summary>
/// <param name="Name">Name of the series.</param>
/// <param name="Ions">What was found for each, with the quencher at which it was read, µmol/L, and the samples.</param>
/// <param name="WithoutIons">How many vessels without other ions they are compared with.</param>
/// <param name="Margin">Half-width of the margin used; no unit.</param>
public sealed record InterferenceSeries(string Name, ImmutableArray<IonEffect> Ions, int WithoutIons, double Margin);

/// <summary>One ion at one concentration.</summary>
/// <param name="Ion">Symbol.</param>
/// <param name="Concentration">Its concentration, µmol/L; null when not recorded.</param>
/// <param name="Quencher">Quencher beside it, µmol/L; 0 for the ion alone.</param>
/// <param name="Found">What was found.</param>
/// <param name="Factor">Largest inner-filter factor applied; null where no absorbance was recorded; no unit.</param>
/// <param name="Codes">Its samples.</param>
public sealed record IonEffect(string Ion, double? Concentration, double Quencher, Interference Found, double? Factor, ImmutableArray<string> Codes);

/// <summary>Known amounts added to one water.</summary>
/// <param name="Name">Name of the series.</param>
/// <param name="Samples">Its samples.</param>
/// <param name="Amounts">Added and found of each vessel, µmol/L.</param>
/// <param name="Water">What came back.</param>
/// <param name="ReadBack">True when the amounts were read on the sensor's own line here; false when they came worked out.</param>
public sealed record SpikedSeries(
    string Name, ImmutableArray<Studies.Sample> Samples, ImmutableArray<(double Added, double Found)> Amounts, SpikedWater Water, bool ReadBack);
