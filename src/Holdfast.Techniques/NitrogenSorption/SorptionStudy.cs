using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Porosity;
using Holdfast.Statistics;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Every isotherm of a study worked out, and what the portions of one powder say together.</summary>
/// <param name="Isotherms">Isotherms in the order they came, struck ones left out.</param>
/// <param name="Powders">Powders in the order they came.</param>
internal sealed record SorptionStudy(ImmutableArray<SorptionIsotherm> Isotherms, ImmutableArray<SorptionPowder> Powders)
{
    /// <summary>The isotherm of the non-porous reference, or null.</summary>
    public SorptionIsotherm? Reference => Isotherms.FirstOrDefault(i => i.Refused is null && i.Measurement.Setting(SorptionIsotherm.ReferenceArea)?.Value > 0);

    private static readonly Analysis<SorptionStudy> Known = new(Work);

    /// <summary>The isotherms of a study.</summary>
    /// <param name="evidence">The study worked out.</param>
    public static SorptionStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The powder of this name, or null.</summary>
    /// <param name="name">Its name; null gives null.</param>
    public SorptionPowder? Powder(string? name) => name is null ? null : Powders.FirstOrDefault(p => PowderName.Same(p.Name, name));

    private static SorptionStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        ImmutableArray<SorptionIsotherm> isotherms = [.. study.Measurements.Where(m => m.Technique == NitrogenIsotherms.TechniqueName && !study.IsStruck(m)).Select(InRoom)];
        // A non-porous solid whose file states its area serves all others.
        if (new SorptionStudy(isotherms, []).Reference is { } reference)
        {
            var area = reference.Measurement.Setting(SorptionIsotherm.ReferenceArea)!.Value!.Value;
            isotherms = [.. isotherms.Select(i => i == reference || i.Refused is not null ? i : i with { AlphaPlot = LayerPlot.ByReference(i.Branches.Adsorption, reference.Branches.Adsorption, area) })];
        }

        return new(isotherms, [.. isotherms.GroupBy(i => i.Measurement.Sample, StringComparer.OrdinalIgnoreCase).Select(g => new SorptionPowder(g.First().Measurement.Sample, [.. g]))]);
    }

    private static SorptionIsotherm InRoom(Studies.Measurement measurement)
    {
        var outcome = Room.Of("the isotherm " + measurement.Id, () => SorptionIsotherm.Of(measurement), measurement.Id);
        return outcome.Value ?? new() { Measurement = measurement, Refused = outcome.Findings[0] };
    }
}

/// <summary>The portions of one powder together.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Isotherms">Its isotherms.</param>
internal sealed record SorptionPowder(string Name, ImmutableArray<SorptionIsotherm> Isotherms)
{
    /// <summary>Isotherms that gave an area.</summary>
    public ImmutableArray<SorptionIsotherm> WithArea { get; } = [.. Isotherms.Where(i => i.Area is not null)];

    /// <summary>
    /// Mean area over portions, m²/g; null where none gave one. Between portions the larger of their scatter and of what fit and mass carry in counts; the choice of
    /// the window is the same for all and is not averaged away.
    /// </summary>
    public Measured? Area => WithArea.Length switch
    {
        0 => null,
        1 => WithArea[0].Area,
        _ => Together(),
    };

    /// <summary>The same as an estimate, to be compared.</summary>
    public Estimate? Estimate => Area is { } area ? new("mean over portions with window and mass", area.Value, area.U, area.DegreesOfFreedom, WithArea.Length) : null;

    private Measured Together()
    {
        var n = WithArea.Length;
        double[] areas = [.. WithArea.Select(i => i.Bet!.Chosen!.Area)];
        var mean = areas.Average();
        var scatter = Math.Sqrt(areas.Sum(a => (a - mean) * (a - mean)) / (n - 1) / n);
        var carried = Math.Sqrt(WithArea.Sum(i => i.Bet!.Chosen!.AreaU * i.Bet.Chosen.AreaU + (i.Mass is { } m ? Math.Pow(i.Bet.Chosen.Area * SorptionIsotherm.MassU / m, 2) : 0))) / n;
        var window = WithArea.Average(i => i.Bet!.WindowU);
        return Measured.From(mean,
        [
            // Portions that happen to agree do not make few of them many: the degrees of freedom stay those of their scatter, beside the window too. Effective degrees
            // of freedom would grow just where two portions agree by chance; simulation then shows 90 % of 95.
            new Contribution(new Source(Name + " portions", scatter >= carried ? FormattableString.Invariant($"scatter of {n} portions of {Name}") : FormattableString.Invariant($"BET lines and masses of {n} portions of {Name}, which scatter less"), Math.Max(scatter, carried), n - 1, Evaluation.Repetition, Group: Name + " area", Unit: "m2/g"), Math.Max(scatter, carried)),
            .. window > 0 ? [new Contribution(new Source(Name + " window", $"choice of the window for {Name}", window, Shape: Amounts.Shape.Rectangular, Group: Name + " area", Unit: "m2/g"), window)] : Array.Empty<Contribution>(),
        ]);
    }
}
