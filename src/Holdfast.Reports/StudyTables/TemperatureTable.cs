using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;
using Holdfast.Thermodynamics;

namespace Holdfast.Reports.StudyTables;

/// <summary>Constants at several temperatures, and isosteric heats.</summary>
internal static class TemperatureTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["nf"] = "the Langmuir isotherm of this series did not settle",
        ["ns"] = "no standard state, because the molar mass of the metal is not known",
    };

    /// <summary>One row a temperature.</summary>
    public static Table Of(TemperatureFamily family)
        => new(
            "temperature-" + LevelTable.Id(family.Isotherms[0].Fitted.Series.Name),
            $"Langmuir constants of {family.Name}",
            [
                new Column("series", "Series") { NamesRows = true },
                Column.Of("temperature", "T", "K", "temperature"),
                new Column("constant", RichText.Parse("*K*")) { Spoken = "constant" },
                new Column("logarithm", RichText.Parse("ln *K*")) { Spoken = "logarithm of the constant" },
                new Column("free_energy", RichText.Parse("Δ*G*°")) { Unit = "kJ/mol", Spoken = "free energy by the constant at this temperature" },
            ],
            [.. family.Isotherms.Select(i => One(i, family.Choice is not null))],
            Codes)
        {
            Notes =
            [
                "± is the standard uncertainty that the fit of that isotherm gives.",
                family.Choice?.StandardState is { } state ? $"K = affinity in L/mg × molar mass × 1000 × 1 mol/L; standard state: {state}. Another standard state moves every ΔG° by an amount in proportion to T." : "K in L/mg: only its change with temperature means something.",
            ],
        };

    /// <summary>One row an uptake; null when there is none.</summary>
    public static Table? Heats(TemperatureFamily family)
        => family.Heats.IsEmpty ? null : new(
            "isosteric-" + LevelTable.Id(family.Isotherms[0].Fitted.Series.Name),
            $"Isosteric heat of {family.Name}",
            [
                Column.Of("uptake", "q", "mg/g", "uptake") with { NamesRows = true },
                new Column("heat", RichText.Parse("Δ*H*_q")) { Unit = "kJ/mol", Spoken = "isosteric heat" },
                new Column("low", "95 % from") { Unit = "kJ/mol" },
                new Column("high", "to") { Unit = "kJ/mol" },
            ],
            [.. family.Heats.Select(h => Row.Of(new NumberCell(h.Uptake) { Decimals = 2 }, new MeasuredCell(h.Heat.Value, h.Heat.StandardError), new NumberCell(h.Heat.Interval().Low) { Decimals = 1 }, new NumberCell(h.Heat.Interval().High) { Decimals = 1 }))])
        {
            Notes = ["± is the standard error by the scatter about the line of ln C on 1/T. Only uptakes that every temperature reached are shown; no standard state enters."],
        };

    private static Row One(IsothermAtTemperature isotherm, bool hasState)
    {
        if (isotherm.Constant is not { } k)
            return Row.Of(isotherm.Fitted.Series.Name, new NumberCell(isotherm.Temperature) { Decimals = 2 }, new MissingCell("nf"), new MissingCell("nf"), new MissingCell("nf"));
        var (log, free) = (Measured.Log(k), VantHoff.FreeEnergyOf(k, isotherm.Temperature));
        return Row.Of(
            isotherm.Fitted.Series.Name, new NumberCell(isotherm.Temperature) { Decimals = 2 }, new MeasuredCell(k.Value, k.U) { Address = "K:" + isotherm.Fitted.Series.Name }, new MeasuredCell(log.Value, log.U),
            hasState ? new MeasuredCell(free.Value, free.U) { Address = "dG:" + isotherm.Fitted.Series.Name } : new MissingCell("ns"));
    }
}
