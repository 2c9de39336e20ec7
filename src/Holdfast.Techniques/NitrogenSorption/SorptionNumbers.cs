using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Porosity;
using Holdfast.Reports.Trails;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Trails of what isotherms give: "bet-area:M-0001", of a powder "bet-area:ZF-3", "pore-volume:", "external-area:", "micropore-volume:".</summary>
internal sealed class SorptionNumbers : IDerivedNumbers
{
    /// <summary>Address of the area of an isotherm or powder.</summary>
    /// <param name="of">Id or name.</param>
    public static string Area(string of) => "bet-area:" + of;

    /// <summary>Address of the pore volume of an isotherm.</summary>
    /// <param name="of">Id.</param>
    public static string Volume(string of) => "pore-volume:" + of;

    /// <summary>Address of the external area of an isotherm.</summary>
    /// <param name="of">Id.</param>
    public static string External(string of) => "external-area:" + of;

    /// <summary>Address of the micropore volume of an isotherm.</summary>
    /// <param name="of">Id.</param>
    public static string Micropores(string of) => "micropore-volume:" + of;

    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
    {
        var study = SorptionStudy.Of(evidence);
        return study.Isotherms.SelectMany(Of).Concat(study.Powders.Where(p => p.WithArea.Length > 0).Select(Of));
    }

    private static IEnumerable<NumberTrail> Of(SorptionIsotherm isotherm)
    {
        var (id, sample) = (isotherm.Measurement.Id, isotherm.Measurement.Sample);
        var from = isotherm.Measurement.Origin.ToString();
        var mass = isotherm.Mass is { } m ? new TrailInput("m", Measured.From(m, new Source(id + " mass", "mass, taken as known to 0.3 mg", SorptionIsotherm.MassU)), "g", isotherm.Measurement.Setting("mass") is { Row: > 0 and var row } ? string.Create(CultureInfo.InvariantCulture, $"{isotherm.Measurement.Origin.FileName}, line {row}") : "as answered") : null;
        if (isotherm.Area is { } area && isotherm.Bet!.Chosen is { } w)
        {
            yield return new(Area(id), $"BET area of {sample} ({id})", area, "m2/g", string.Create(CultureInfo.InvariantCulture, $"a = n_m·N_A·σ, n_m = 1/(slope + intercept), σ = {Nitrogen.CrossSection} nm2; window of most points among {isotherm.Bet.Accepted.Length} accepted of {isotherm.Bet.Windows.Length}"),
                [new("n_m", Measured.From(w.Monolayer, new Source(id + " fit", "scatter about the BET line", w.MonolayerU, w.Points - 2)), "mmol/g", from), .. mass is null ? [] : new[] { mass }], [])
            {
                Samples = [id],
                Fit = new TrailFit(string.Create(CultureInfo.InvariantCulture, $"straight line by least squares to {w.Points} points of the adsorption branch, R² {Plain(w.R2)}, C = {Plain(w.C)}"), "p/p0", "x/[n(1 − x)] (g/mmol)",
                    [.. isotherm.Branches.Adsorption.Skip(w.First).Take(w.Points).Select((p, i) => new TrailPoint($"{id} point {(w.First + i + 1).ToString(CultureInfo.InvariantCulture)}", p.X, p.X / (p.Amount * (1 - p.X)), w.Intercept + w.Slope * p.X, null))]),
            };
        }

        if (isotherm.PoreVolume is { } volume)
        {
            yield return new(Volume(id), $"pore volume of {sample} ({id}) at p/p0 {Plain(PoreVolume.ReadAt)}", volume, "cm3/g", $"V = n(0.95)·M/ρ, straight between its two neighbours; M = {Plain(Nitrogen.MolarMass)} g/mol, ρ = {Plain(Nitrogen.LiquidDensity)} g/cm3",
                [new("n(0.95)", Measured.From(volume.Value / Nitrogen.LiquidPerMmol, []), "mmol/g", from), .. mass is null ? [] : new[] { mass }], [])
            {
                Samples = [id],
            };
        }

        var line = isotherm.LayerPlots.FirstOrDefault(p => p.Plot.From == LayerPlot.UsualFrom && p.Curve == ThicknessCurve.HarkinsJura).Plot;
        if (line is null)
            yield break;
        var fit = new TrailFit(FormattableString.Invariant($"straight line by least squares to {line.Points.Length} points, Harkins–Jura thickness {Plain(line.From)} to {Plain(line.To)} nm, R² {Plain(line.R2)}"), "t (nm)", "V (cm3(STP)/g)",
            [.. line.Points.Select((p, i) => new TrailPoint($"{id} t-plot {(i + 1).ToString(CultureInfo.InvariantCulture)}", p.Layer, p.Volume, line.Intercept + line.Slope * p.Layer, null))]);
        if (isotherm.ExternalArea is { } external)
            yield return new NumberTrail(External(id), $"area of {sample} ({id}) outside micropores", external, "m2/g", $"slope of V on t, as liquid: {Plain(LayerPlot.AreaPerSlope)} m2 per cm3(STP)/nm", [], []) with { Samples = [id], Fit = fit };
        if (isotherm.MicroporeVolume is { } micropores)
            yield return new NumberTrail(Micropores(id), $"micropore volume of {sample} ({id})", micropores, "cm3/g", $"intercept of V on t, as liquid: {Plain(Nitrogen.LiquidPerMmol / Nitrogen.StpPerMmol)} cm3 per cm3(STP)", [], []) with { Samples = [id], Fit = fit };
    }

    private static NumberTrail Of(SorptionPowder powder)
        => new(Area(powder.Name), $"BET area of {powder.Name}", powder.Area!.Value, "m2/g", powder.WithArea.Length == 1 ? "one portion" : $"mean of {powder.WithArea.Length.ToString(CultureInfo.InvariantCulture)} portions",
            [.. powder.WithArea.Select(i => new TrailInput("a", i.Area!.Value, "m2/g", i.Measurement.Id, Area(i.Measurement.Id)))], [])
        {
            Samples = [.. powder.WithArea.Select(i => i.Measurement.Id)],
        };

    private static string Plain(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
