using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Porosity;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Numbers of every isotherm, and its pore distribution.</summary>
internal sealed class SorptionTables : IStudyTables
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["nw"] = "not worked out; the findings say why",
        ["nr"] = "not recorded",
    };

    /// <inheritdoc/>
    public string Name => NitrogenIsotherms.TechniqueName;

    /// <inheritdoc/>
    public IEnumerable<Table> Of(Evidence evidence)
    {
        var study = SorptionStudy.Of(evidence);
        if (study.Isotherms.IsEmpty)
            yield break;
        yield return Numbers(study);
        foreach (var isotherm in study.Isotherms.Where(i => i.ByAdsorption is not null))
            yield return Distribution(isotherm);
    }

    /// <summary>One row an isotherm.</summary>
    /// <param name="study">The isotherms.</param>
    public static Table Numbers(SorptionStudy study)
        => new(
            "nitrogen-sorption",
            "Nitrogen sorption at 77 K: area, micropores and pore volume",
            [
                new Column("measurement", "Isotherm") { NamesRows = true },
                new Column("powder", "Powder"),
                new Column("mass", "Mass") { Unit = "g" },
                new Column("area", "BET area") { Unit = "m2/g" },
                new Column("lowest", "Lowest accepted") { Unit = "m2/g" },
                new Column("highest", "Highest accepted") { Unit = "m2/g" },
                new Column("monolayer", "Full layer") { Unit = "mmol/g" },
                new Column("c", "C"),
                new Column("from", "p/p0 from"),
                new Column("to", "p/p0 to"),
                new Column("windows", "Windows accepted of tested"),
                new Column("usual", "Area 0.05 to 0.30") { Unit = "m2/g" },
                new Column("external", "External area, t-plot") { Unit = "m2/g" },
                new Column("micropores", "Micropore volume, t-plot") { Unit = "cm3/g" },
                new Column("volume", "Pore volume at 0.95") { Unit = "cm3/g" },
                new Column("voids", "at 0.99, with voids between grains") { Unit = "cm3/g" },
                new Column("average", "4V/A") { Unit = "nm" },
                new Column("type", "Type, as a suggestion"),
                new Column("points", "Points up, down"),
            ],
            [.. study.Isotherms.Select(One)],
            Codes)
        {
            Notes =
            [
                string.Create(CultureInfo.InvariantCulture, $"Value ± standard uncertainty. Area: window with most points among those that meet all criteria of consistency; scatter about the line, choice of the window, mass and {100 * SorptionIsotherm.PortionU} % for another portion are in it. Cross section {Nitrogen.CrossSection} nm2."),
                string.Create(CultureInfo.InvariantCulture, $"External area and micropore volume: Harkins–Jura thickness {LayerPlot.UsualFrom:0.00} to {LayerPlot.UsualTo:0.00} nm, the range moved to both sides is in the uncertainty. Volumes as liquid of {Nitrogen.LiquidDensity} g/cm3. The area over {BetArea.FixedFrom:0.00} to {BetArea.FixedTo:0.00} stands only where C is above 0 and R² at least {BetWindow.SmallestR2}."),
            ],
        };

    /// <summary>One row a step of the distribution by the adsorption branch.</summary>
    /// <param name="isotherm">The isotherm.</param>
    public static Table Distribution(SorptionIsotherm isotherm)
    {
        var (sizes, spread) = isotherm.ByAdsorption!.Value;
        return new(
            "pore-sizes-" + LevelTable.Id(isotherm.Measurement.Id),
            $"Pore sizes of {isotherm.Measurement.Sample} ({isotherm.Measurement.Id}) by the adsorption branch",
            [
                new Column("diameter", "Diameter") { Unit = "nm", NamesRows = true },
                new Column("from", "from") { Unit = "nm" },
                new Column("to", "to") { Unit = "nm" },
                new Column("volume", "Volume") { Unit = "cm3/g" },
                new Column("density", "dV/dlog d") { Unit = "cm3/g" },
            ],
            [.. sizes.Steps.Select((s, i) => Row.Of(new NumberCell(s.Diameter), new NumberCell(2 * s.SmallestRadius), new NumberCell(2 * s.LargestRadius), new NumberCell(s.Volume), new MeasuredCell(s.Density, spread[i])))],
            Codes)
        {
            Notes = [string.Create(CultureInfo.InvariantCulture, $"dV/dlog d ± its spread when every amount has an error of {100 * PoreSizes.AmountError:0.#} % ({PoreSizes.Repeats} repeats). {sizes.Empty} steps open no pore.")],
        };
    }

    private static Row One(SorptionIsotherm i)
    {
        var (chosen, usual) = (i.Bet?.Chosen, i.Bet?.Fixed is { IsPositive: true, IsLine: true } u ? u : null);
        var id = i.Measurement.Id;
        return Row.Of(
            id, i.Measurement.Sample, i.Mass is { } m ? new MeasuredCell(m, SorptionIsotherm.MassU) : new MissingCell("nr"),
            i.Area is { } a ? MeasuredCell.Of(a) with { Address = SorptionNumbers.Area(id) } : new MissingCell("nw"),
            Number(chosen is null ? null : i.Bet!.Lowest), Number(chosen is null ? null : i.Bet!.Highest),
            chosen is null ? new MissingCell("nw") : new MeasuredCell(chosen.Monolayer, chosen.MonolayerU), chosen is null ? new MissingCell("nw") : new MeasuredCell(chosen.C, chosen.CU),
            Number(chosen?.From), Number(chosen?.To), i.Bet is { } bet ? string.Create(CultureInfo.InvariantCulture, $"{bet.Accepted.Length} of {bet.Windows.Length}") : "",
            usual is null ? new MissingCell("nw") : new MeasuredCell(usual.Area, usual.AreaU),
            i.ExternalArea is { } e ? MeasuredCell.Of(e) with { Address = SorptionNumbers.External(id) } : new MissingCell("nw"),
            i.MicroporeVolume is { } v ? MeasuredCell.Of(v) with { Address = SorptionNumbers.Micropores(id) } : new MissingCell("nw"),
            i.PoreVolume is { } p ? MeasuredCell.Of(p) with { Address = SorptionNumbers.Volume(id) } : new MissingCell("nw"),
            Number(i.VolumeWithVoids), Number(i.PoreVolume is { } whole && chosen is not null ? PoreVolume.AverageDiameter(whole.Value, chosen.Area) : null),
            i.Shape is { } s ? s.Type + (s.Loop is { } loop && !s.Type.Contains(loop, StringComparison.Ordinal) ? ", loop " + loop : "") : "",
            string.Create(CultureInfo.InvariantCulture, $"{i.Branches.Adsorption.Length}, {i.Branches.Desorption.Length}"));
    }

    private static Cell Number(double? value) => value is { } known ? new NumberCell(known) : new MissingCell("nw");
}
