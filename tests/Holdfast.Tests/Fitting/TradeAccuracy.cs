using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Scaleup;
using Holdfast.Speciation;
using Holdfast.Testing;
using Holdfast.Thermodynamics;

namespace Holdfast.Tests.Fitting;

/// <summary>Agreeing digits of what stands on the fits: temperature, metals in water, stages and beds. The worst number of each table, for docs/accuracy.md.</summary>
internal static class TradeAccuracy
{
    /// <summary>Name, what, agreeing digits, digits asked for.</summary>
    public static IEnumerable<(string Name, string What, double Digits, double Asked)> Cases()
        => new[] { Temperature(), Speciation(), StirredStages(), Beds() }.SelectMany(c => c);

    // reference/sorption/thermo-expected.csv (scipy 1.10.1, line also R 4.2.2 lm).
    private static IEnumerable<(string Name, string What, double Digits, double Asked)> Temperature()
    {
        var data = ReferenceTable.Read("sorption", "thermo-data.csv");
        var expected = ReferenceTable.Read("sorption", "thermo-expected.csv").Where(r => r["case"] == "synthetic").ToDictionary(r => r["quantity"], StringComparer.Ordinal);
        double[] kelvin = [.. data.Select(r => r.Number("T_K"))];
        Measured[] logarithms = [.. data.Select(r => (Measured)r.Number("lnK"))];
        var line = VantHoff.OfLogarithms(kelvin, logarithms).Value!;
        var rates = Arrhenius.Of(kelvin, [.. logarithms.Select(l => (Measured)Math.Exp(l.Value))]).Value!;
        var (heat, disorder) = (expected["dH_kJ_mol"], expected["dS_J_mol_K"]);
        yield return ("Van 't Hoff line", "ΔH° and ΔS°", Worst((heat.Number("value"), line.Enthalpy.Value), (disorder.Number("value"), line.Entropy.Value)), 8);
        yield return ("Van 't Hoff line", "standard errors", Worst((heat.Number("se"), line.Enthalpy.StandardError), (disorder.Number("se"), line.Entropy.StandardError)), 8);
        yield return ("Arrhenius line", "Ea and its standard error", Worst((heat.Number("value"), rates.ActivationEnergy.Value), (heat.Number("se"), rates.ActivationEnergy.StandardError)), 8);
    }

    // reference/measurement/speciation-check.csv (Newton in Python 3.11, 40-digit bisection; ten figures are printed).
    private static IEnumerable<(string Name, string What, double Digits, double Asked)> Speciation()
    {
        var rows = ReferenceTable.Read("measurement", "speciation-check.csv");
        yield return ($"{rows.Count} metals in water", "lg of the free activity", rows.Min(r => Agree.DigitsOf(
            r.Number("lg_free_activity"), new MetalInWater(MetalIon.Named(r["metal"])!, r.Number("C_mol_L"), r.Number("ionic_strength")).At(r.Number("pH")).LgFree)), 8.5);
    }

    // reference/sorption/stages.csv (scipy 1.10.1). Where the best split lies is flat: its place is known to fewer digits than its total.
    private static IEnumerable<(string Name, string What, double Digits, double Asked)> StirredStages()
    {
        foreach (var row in ReferenceTable.Read("sorption", "stages.csv").Where(r => r["case"].StartsWith("langmuir", StringComparison.Ordinal) || r["case"].StartsWith("freundlich", StringComparison.Ordinal)))
        {
            var langmuir = row["case"].StartsWith("langmuir", StringComparison.Ordinal);
            var model = langmuir ? Model.Of<Langmuir>() : Model.Of<Freundlich>();
            Measured[] p = langmuir ? [85, 0.065] : [9.5, 2.1];
            double inlet = row.Number("C_in"), target = row.Number("C_target");
            yield return ($"Stages, {model.Card.Name}", "doses of one stage, two fresh, two against, the floor", Worst(
                (row.Number("single_stage_dose"), SingleStage.Dose(model, p, inlet, target).Value), (row.Number("cross_total"), CrossCurrent.Of(model, p, inlet, target).Total.Value),
                (row.Number("counter_dose"), CounterCurrent.Of(model, p, inlet, target).Dose.Value), (row.Number("dose_floor_infinite_stages"), SingleStage.Floor(model, p, inlet, target).Value)), 8);
            yield return ($"Stages, {model.Card.Name}", "place of the best split", Agree.DigitsOf(row.Number("cross_intermediate_C"), CrossCurrent.Of(model, p, inlet, target).Between), 6);
        }
    }

    // reference/sorption/breakthrough-expected.csv and -data.csv (scipy 1.10.1).
    private static IEnumerable<(string Name, string What, double Digits, double Asked)> Beds()
    {
        var data = ReferenceTable.Read("sorption", "breakthrough-data.csv");
        var expected = ReferenceTable.Read("sorption", "breakthrough-expected.csv");
        yield return ("Breakthrough", "both curves at every time", data.Min(r => Worst(
            (r.Number("ratio_exact_logistic"), BreakthroughLogistic.Value<Number>(r.Number("t_min"), [0.02, 400]).Value),
            (r.Number("ratio_full_bohart_adams"), BohartAdams.Value<Number>(r.Number("t_min"), [0.02, 400]).Value))), 11);
        var fit = ColumnRun.Fit<BreakthroughLogistic>(new([.. data.Select(r => r.Number("t_min"))], [.. data.Select(r => r.Number("ratio_observed"))], "min", ""));
        ReferenceRow k = Row("logistic", "kYN_per_min"), tau = Row("logistic", "tau_min");
        yield return ("Breakthrough", "k and τ", Worst((k.Number("value"), fit["k"].Value), (tau.Number("value"), fit["τ"].Value)), 7);
        yield return ("Breakthrough", "standard errors of k and τ", Worst((k.Number("se"), fit["k"].StandardError!.Value), (tau.Number("se"), fit["τ"].StandardError!.Value)), 6);
        double[] depths = [5, 10, 15], times = [.. depths.Select(z => Row("depth-service time", FormattableString.Invariant($"t5_at_{z}_cm")).Number("value"))];
        var line = BedDepthServiceTime.Of(depths, times, 0.05, 50, 0.2).Value!;
        yield return ("Service time over depth", "N₀, k and critical depth", Worst(
            (Row("depth-service time", "N0_mg_per_L_bed").Number("value"), line.Capacity.Value), (Row("depth-service time", "k_L_mg_min").Number("value"), line.Rate.Value),
            (Row("depth-service time", "critical_depth_cm").Number("value"), line.CriticalDepth.Value)), 7);

        ReferenceRow Row(string model, string quantity) => expected.Single(r => r["model"] == model && r["quantity"] == quantity);
    }

    private static double Worst(params (double Expected, double Actual)[] pairs) => pairs.Min(p => Agree.DigitsOf(p.Expected, p.Actual));
}
