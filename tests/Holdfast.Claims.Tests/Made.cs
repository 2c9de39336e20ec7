using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Tests;

/// <summary>Evidence made by hand from plain numbers, so that a rule can be asked without files.</summary>
internal static class Made
{
    private static readonly Origin Nowhere = new(null, "by hand", null, 0, null);

    /// <summary>Facts of a sample from numbers in their property's unit.</summary>
    public static ImmutableSortedDictionary<string, Fact> Facts(IEnumerable<(Property Property, double Value)> numbers, params (Property Property, string Words)[] words)
        => numbers.Select(n => new Fact(n.Property.Name, n.Value, null, null, null, "", Nowhere))
            .Concat(words.Select(w => new Fact(w.Property.Name, null, null, null, w.Words, w.Words, Nowhere)))
            .ToImmutableSortedDictionary(f => f.Property, f => f, StringComparer.Ordinal);

    /// <summary>A vessel with start and end concentration in mg/L and dose in g/L; the uncertainties are zero unless given.</summary>
    public static Vessel Vessel(
        string code, string series, double start, double end, double dose, double time = 1440, double? endPh = 6.7, string batch = "B1",
        SampleRole role = SampleRole.Vessel, double u = 0, double? detection = null, double? quantification = null, double? startPh = 6)
    {
        (Property, double)[] numbers =
        [
            (BatchProperties.InitialConcentration, start), (BatchProperties.ContactTime, time), (BatchProperties.Temperature, 298.15), (BatchProperties.Dose, dose),
            .. startPh is { } p ? [(BatchProperties.StartPh, p)] : Array.Empty<(Property, double)>(),
            .. endPh is { } e ? [(BatchProperties.EndPh, e)] : Array.Empty<(Property, double)>(),
        ];
        var sample = new Sample(code, role, Facts(numbers, (SampleProperties.Series, series), (SampleProperties.Batch, batch), (SampleProperties.Matrix, "0.01 mol/L NaNO3")));
        Measured left = u > 0 ? Measured.From(end, new Source("read/" + code, "reading of " + code, u)) : end;
        Measured initial = start;
        var control = role == SampleRole.Control;
        return new(
            sample, IsStruck: false, initial, new(left, detection, quantification, [], []), 25, control ? null : 25 * dose, control ? null : dose,
            100 * (initial - left) / initial, control ? null : (initial - left) / dose, null, []);
    }

    /// <summary>A series from levels.</summary>
    public static Series Series(string name, Property? varied, IEnumerable<(double X, Vessel[] Vessels)> levels, params Vessel[] controls)
        => new(name, varied, [.. levels.OrderBy(l => l.X).Select(l => new Analyses.Level(l.X, [.. l.Vessels]))], [.. controls], []);

    /// <summary>A study that holds the samples of the series.</summary>
    public static Study Study(IEnumerable<Series> series, params Sample[] others) => new()
    {
        Title = "made by hand",
        Analyte = "Ni",
        Samples = [.. series.SelectMany(s => s.Vessels.Concat(s.Controls)).Select(v => v.Sample), .. others],
    };

    /// <summary>Evidence with every curve fitted to the series in which time or start concentration was varied.</summary>
    public static Evidence Evidence(ImmutableArray<Series> series, ImmutableArray<CalibratedRun> runs = default, params Sample[] others) => new()
    {
        Study = Study(series, others),
        Series = series,
        Vessels = [.. series.SelectMany(s => s.Vessels.Concat(s.Controls))],
        Runs = runs.IsDefault ? [] : runs,
        Kinetics = [.. series.Where(s => s.Varied == BatchProperties.ContactTime).Select(s => Fitted(s, "Holdfast.Kinetics", v => v.Sample.Number(BatchProperties.ContactTime), "min"))],
        Isotherms = [.. series.Where(s => s.Varied == BatchProperties.InitialConcentration).Select(s => Fitted(s, "Holdfast.Isotherms", v => v.End?.Value?.Value, "mg/L"))],
    };

    /// <summary>Unweighted fits of uptake on time or on the concentration left.</summary>
    private static FittedSeries Fitted(Series series, string space, Func<Vessel, double?> x, string unit)
    {
        var vessels = series.Vessels.Where(v => v.Uptake is not null && x(v) is not null).ToArray();
        if (vessels.Length == 0)
            return new(series);
        var points = new Points([.. vessels.Select(v => x(v)!.Value)], [.. vessels.Select(v => v.Uptake!.Value.Value)], unit, "mg/g", ids: [.. vessels.Select(v => v.Code)]);
        return new(series) { Fits = [.. Model.AllIn(space).Select(m => m.Fit(points, null))] };
    }

    /// <summary>A claim with parameters.</summary>
    public static Claim Claim(string rule, params (string Name, string? Words)[] parameters) => Holdfast.Claims.Claim.Raised(rule, parameters);

    /// <summary>A run with standards and blanks.</summary>
    public static CalibratedRun Run(string id, IEnumerable<(double Known, double Signal)> standards, IEnumerable<double> blanks, params (string Key, string Words)[] details)
    {
        ImmutableArray<(double Known, double Signal)> all = [.. standards];
        ImmutableArray<double> none = [.. blanks];
        var top = details.FirstOrDefault(d => d.Key == "Calibrated to").Words is { } words ? Claim("", ("to", words)).Number("to") : null;
        return new(new Run(id, "absorbance", details.ToImmutableSortedDictionary(d => d.Key, d => d.Words, StringComparer.Ordinal), Nowhere), all, none, [])
        {
            Curve = all.IsEmpty ? null : CalibrationCurve.Of([.. all.Select(s => new StandardReading(s.Known, s.Signal))], none, new CalibrationOptions { Run = id, Top = top }).Value,
        };
    }
}
