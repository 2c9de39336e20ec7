using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Competition;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>What released ions say of exchange: amounts released less the sorbent-only control, against amounts sorbed.</summary>
/// <param name="Ions">One for each released ion, in the order they came.</param>
public sealed record ExchangeStudy(ImmutableArray<ExchangedIon> Ions)
{
    // A concentration that came without its uncertainty is taken as good to 4 %: what another laboratory's flame leaves unsaid (common practice).
    private const double AssumedU = 0.04;

    private static readonly Analysis<ExchangeStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ExchangeStudy Of(Evidence evidence) => Known.Of(evidence);

    private static ExchangeStudy Work(Evidence evidence)
    {
        if (AtomicMass.Of(evidence.Study.Analyte) is not { } analyte)
            return new([]);
        var ions = evidence.Study.Samples.Select(IonOf).OfType<string>().Distinct(StringComparer.Ordinal);
        return new([.. ions.Select(ion => One(ion, evidence, analyte)).OfType<ExchangedIon>()]);
    }

    private static string? IonOf(Sample sample)
        => sample.Number(StabilityProperties.DissolvedCalcium) is not null ? "Ca"
            : sample.Number(ExchangeProperties.Released) is not null ? sample.Words(ExchangeProperties.ReleasedIon) : null;

    private static Finding[] Assumed(string ion, Vessel[] loaded)
        => loaded.All(v => v.Sample.Fact(StabilityProperties.DissolvedCalcium)?.U is > 0 || v.Sample.Fact(ExchangeProperties.Released)?.U is > 0) ? []
            : [Finding.Of("HF-657", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"{ion} came without an uncertainty: {100 * AssumedU:0.#} % of each concentration is assumed (common practice). Record one with the readings."), [.. loaded.Select(v => v.Code)])];

    private static ExchangedIon? One(string ion, Evidence evidence, double analyteMass)
    {
        if (AtomicMass.Of(ion) is not { } mass)
            return null;
        var loaded = evidence.Vessels
            .Where(v => v.Sample.Role == SampleRole.Vessel && !v.IsStruck && v.Uptake is not null && v.Dose is not null && IonOf(v.Sample) == ion)
            .ToArray();
        if (loaded.Length == 0)
            return null;
        double[] starts = [.. loaded.Select(v => v.Sample.Number(BatchProperties.StartPh)).OfType<double>()];
        double[] ends = [.. loaded.Select(v => v.Sample.Number(BatchProperties.EndPh)).OfType<double>()];
        var blanks = evidence.Study.Samples.Where(s => s.Role == SampleRole.SorbentBlank && !evidence.Study.IsStruck(s) && IonOf(s) == ion).ToArray();
        Sample[] atEnd = [.. blanks.Where(s => s.Number(BatchProperties.EndPh) is { } p && ends.Length > 0 && Tolerances.SamePh(p, ends.Average()))];
        Sample[] control = atEnd.Length > 0 ? atEnd : [.. blanks.Where(s => s.Number(BatchProperties.StartPh) is { } p && starts.Length > 0 && Tolerances.SamePh(p, starts.Average()))];
        double[] alone = [.. control.Select(Released)];
        (double Value, double U) fromControl = alone.Length == 0 ? (0, 0) : (alone.Average(), Summary.Of(alone).Sd is { } sd and > 0 ? sd / Math.Sqrt(alone.Length) : AssumedU * alone.Average());

        // mmol per gram of powder: dose cancels the volume.
        var points = loaded.Select(v =>
        {
            var (released, dose) = (Released(v.Sample), v.Dose!.Value.Value);
            var u = Math.Sqrt(Math.Pow(v.Sample.Fact(StabilityProperties.DissolvedCalcium)?.U ?? v.Sample.Fact(ExchangeProperties.Released)?.U ?? AssumedU * released, 2) + fromControl.U * fromControl.U);
            return new ExchangePoint(
                v, v.Uptake!.Value / analyteMass, Measured.From((released - fromControl.Value) / mass / dose, new Source("released:" + v.Code, $"{ion} released in {v.Code}", u / mass / dose)));
        }).ToImmutableArray();
        // A weight needs an uncertainty on both axes: an uptake that is 0 without one says nothing of a ratio.
        var weighed = points.Select(p => (Point: p, U: p.Sorbed.U > 0 ? p.Sorbed.U : AssumedU * Math.Abs(p.Sorbed.Value))).Where(p => p.U > 0 && p.Point.Released.U > 0).ToArray();
        var slope = ExchangeRatio.Of(
            [.. weighed.Select(p => p.Point.Sorbed.Value)], [.. weighed.Select(p => p.Point.Released.Value)],
            [.. weighed.Select(p => p.U)], [.. weighed.Select(p => p.Point.Released.U)]);
        return new(ion, points, [.. control], atEnd.Length > 0, slope.Value, [.. slope.Findings, .. Assumed(ion, loaded)]);

        double Released(Sample s) => s.Number(StabilityProperties.DissolvedCalcium) ?? s.Number(ExchangeProperties.Released)!.Value;
    }
}

/// <summary>One released ion.</summary>
/// <param name="Ion">Its symbol.</param>
/// <param name="Points">Vessels with both amounts.</param>
/// <param name="Control">Sorbent-only samples whose release was subtracted; none when there are none at that pH.</param>
/// <param name="ControlAtEndPh">True when the control was at the end pH of the vessels, not only at their start pH.</param>
/// <param name="Ratio">Slope of released on sorbed, or null.</param>
/// <param name="Findings">Caveats.</param>
public sealed record ExchangedIon(
    string Ion, ImmutableArray<ExchangePoint> Points, ImmutableArray<Sample> Control, bool ControlAtEndPh, ExchangeRatio? Ratio, ImmutableArray<Finding> Findings)
{
    /// <summary>How many different loadings there are: start concentrations, where they are recorded.</summary>
    public int Loadings => Points.Select(p => p.Vessel.Start?.Value ?? p.Sorbed.Value).Distinct().Count();
}

/// <summary>One vessel.</summary>
/// <param name="Vessel">The vessel.</param>
/// <param name="Sorbed">Metal sorbed, mmol/g.</param>
/// <param name="Released">Ion released less the control, mmol/g.</param>
public sealed record ExchangePoint(Vessel Vessel, Measured Sorbed, Measured Released);
