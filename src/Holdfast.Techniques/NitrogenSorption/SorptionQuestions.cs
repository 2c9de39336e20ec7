using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Porosity;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>What is not clear in an isotherm's file: units, per gram or per sample, p0, the gas. What is plausible and may be wrong is asked, with what follows from each answer.</summary>
internal sealed class SorptionQuestions
{
    private const int StrayPoints = 3;
    private const double LargestRelative = 1.05;
    private const double LargestDisagreement = 0.05;

    // No two saturation pressures of a laboratory differ by more (common practice); units differ by 1.3 times and more.
    private const double AnotherUnit = 0.25;

    // Pores of powders rarely hold more than this of liquid, cm³/g (common practice); as much gas covers a few m²/g at most.
    private const double LargestPores = 3;

    private readonly MeasurementSource source;
    private IReadOnlyList<SorptionCurve> curves;

    /// <summary>Asks, in the order in which one answer needs another.</summary>
    /// <param name="source">The grid and where questions go.</param>
    /// <param name="settings">What the file states.</param>
    /// <param name="curves">Its curves; at least one.</param>
    public SorptionQuestions(MeasurementSource source, SorptionSettings settings, IReadOnlyList<SorptionCurve> curves)
    {
        (this.source, this.curves, Settings) = (source, curves, settings);
        var isNitrogen = SettleGas();
        Relative = SettleRelative();
        // Of another gas neither area nor pores follow: p0 of nitrogen and what an area would be are no question.
        Saturation = isNitrogen ? SettleSaturation() : null;
        Amount = SettleAmount();
        Disagreeing();
        if (isNitrogen && Amount is { IsOfSample: false } perGram)
        {
            Amount = new OwnWords(source, Settings).Settle(perGram.Unit, curves, unit => Worked(unit, false).Area) is { } settled ? (settled, false) : null;
            IsOpen |= Amount is null;
        }
    }

    private string? answeredPressure;

    /// <summary>True while something is left to answer: nothing is measured yet.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>The curves, their numbers swapped where the columns stand under each other's headings and that was answered.</summary>
    public IReadOnlyList<SorptionCurve> Curves => curves;

    /// <summary>What the file states and what was answered.</summary>
    public SorptionSettings Settings { get; private set; }

    /// <summary>Unit of the column of relative pressures: "" for p/p0, "%", or a unit of pressure that it turned out to be in; null without one.</summary>
    public string? Relative { get; }

    /// <summary>One saturation pressure for all rows; null where each row has its own or none is needed.</summary>
    public MeasuredSetting? Saturation { get; }

    /// <summary>Unit of the amounts and whether they are of the whole sample; null while it is asked about.</summary>
    public (AmountUnit Unit, bool IsOfSample)? Amount { get; }

    // p/p0 above 1 throughout is no p/p0: per cent, or a pressure.
    private string? SettleRelative()
    {
        double[] values = [.. curves.SelectMany(c => c.Rows).Select(r => r.Relative).OfType<double>()];
        if (values.Length == 0 || values.Count(v => v > LargestRelative) <= Math.Max(StrayPoints, values.Length / 20))
            return values.Length == 0 ? null : "";
        var heading = curves[0].Table.Written(curves[0].Series.Relative!.Value);
        if (FileWords.Plain(heading).Contains('%', StringComparison.Ordinal) && values.Max() <= 101)
            return "%";
        var (id, isSwapped) = (source.Question("pressure"), curves.SelectMany(c => c.Rows).All(r => r.Amount is >= 0 and <= LargestRelative));
        var answer = source.Talk.Ask(id, Codes.Ambiguous, $"“{heading}” should lie between 0 and 1 and goes up to {Shown(values.Max())}. What are its numbers?", [.. isSwapped ? ["swap"] : Array.Empty<string>(), "percent", "kPa", "mmHg", "mbar"], heading);
        source.Talk.Explain(id, [.. isSwapped ? ["the amounts: the two columns stand under each other's headings"] : Array.Empty<string>(), "p/p0 = number/100", "a pressure in kPa, to be divided by p0", "a pressure in mmHg, to be divided by p0", "a pressure in mbar, to be divided by p0"]);
        if (answer == "swap")
        {
            curves = [.. curves.Select(c => c with { Rows = [.. c.Rows.Select(r => r with { Relative = r.Amount, Amount = r.Relative!.Value })] })];
            return "";
        }

        IsOpen |= answer is null;
        return answer == "percent" ? "%" : answer;
    }

    // Two columns that say the same should agree: where they do not, one of them is in another unit or belongs to another run.
    private void Disagreeing()
    {
        if (Relative is not ("" or "%"))
            return;
        var scale = Relative == "%" ? 100 : 1;
        double[] ratios = [.. curves.SelectMany(c => c.Rows.Where(r => r is { Relative: > 0.02, Absolute: > 0, Saturation: > 0 }).Select(r => r.Absolute!.Value / r.Saturation!.Value / (r.Relative!.Value / scale) * UnitsOf(c))).Order()];
        if (ratios.Length == 0 || ratios[ratios.Length / 2] is var ratio && Math.Abs(ratio - 1) <= LargestDisagreement)
            return;
        if (Math.Abs(ratio - 1) > AnotherUnit)
        {
            source.Talk.Note(Codes.Ambiguous, Weight.Caution, $"p divided by p0 is {Shown(ratio)} times the p/p0 beside it: one of the columns is in another unit. p/p0 is used; check the file.");
            return;
        }

        // As many per cent as between two saturation pressures: one of them is not that of this run.
        const string written = "p/p0", divided = "p-by-p0";
        var (table, series) = (curves[0].Table, curves[0].Series);
        var id = source.Question("relative");
        var answer = source.Talk.Ask(id, Codes.Ambiguous, $"“{table.Written(series.Relative!.Value)}” does not agree with p divided by p0, which is {Shown(ratio)} times as large: another saturation pressure than the one under “{table.Written(series.Saturation!.Value)}” was used for it. Which holds?", [divided, written], table.Written(series.Relative.Value), table.Written(series.Saturation.Value));
        source.Talk.Explain(id, ["p/p0 = p divided by the p0 beside it", "p/p0 as it is written"]);
        IsOpen |= answer is null;
        if (answer == divided)
            curves = [.. curves.Select(c => c with { Rows = [.. c.Rows.Select(r => r is { Relative: not null, Absolute: { } p, Saturation: > 0 } ? r with { Relative = scale * p / r.Saturation * UnitsOf(c) } : r)] })];
    }

    // Pressure and saturation pressure may be in units of their own.
    private static double UnitsOf(SorptionCurve curve) => (PressureUnit.In(curve.Table.Written(curve.Series.Absolute!.Value))?.Kilopascal ?? 1) / (PressureUnit.In(curve.Table.Written(curve.Series.Saturation!.Value))?.Kilopascal ?? 1);

    // One saturation pressure for all rows, in the unit of the pressures; null where each row has its own or none is needed.
    private MeasuredSetting? SettleSaturation()
    {
        var isAbsolute = Relative is not (null or "" or "%");
        if (!isAbsolute && curves.All(c => c.Series.Relative is not null))
            return null;
        var stated = Settings["p0"] is { Value: > 0 } said ? said : null;
        var inRows = !isAbsolute && curves.All(c => c.Series.Relative is not null || c.Rows.All(r => r.Saturation is not null));
        if (!isAbsolute && curves[0].Series.Relative is null && (inRows ? OfColumn(curves[0]) : stated) is { } against && PressureName(curves[0]) is { } name)
        {
            answeredPressure = PressureReach.Unit(source, curves[0].Table.Written(curves[0].Series.Absolute!.Value), name, curves.SelectMany(c => c.Rows).Select(r => r.Absolute).OfType<double>().DefaultIfEmpty().Max(), against);
            IsOpen |= answeredPressure is null;
        }

        if (inRows || stated is not null)
            return inRows ? null : stated;
        var unit = Relative is { Length: > 0 } u && isAbsolute ? u : PressureName(curves[0]);
        if (unit is null)
        {
            unit = source.Talk.Ask(source.Question("pressure"), Codes.UnitMissing, $"The pressures under “{curves[0].Table.Written(curves[0].Series.Absolute!.Value)}” have no unit. Which one?", ["kPa", "mmHg", "mbar", "bar", "Pa"]);
            if (unit is null)
            {
                IsOpen = true;
                return null;
            }
        }

        var usual = 101.325 / PressureUnit.In(unit)!.Kilopascal;
        var id = source.Question("value:p0");
        var answer = source.Talk.Ask(id, Codes.UnitMissing, $"No saturation pressure p0 stands in the file. What was it, in {unit}?", [usual.ToString("G6", CultureInfo.InvariantCulture)]);
        source.Talk.Explain(id, ["as at sea level; every p/p0 is wrong by as many per cent as p0 is"]);
        if (answer is null)
        {
            IsOpen = true;
            return null;
        }

        return CellText.Read(answer, null) is CellText.Number { Value: > 0 } number ? new MeasuredSetting("p0", $"{answer} {unit}", number.Value, unit, 0) : throw Answers.Unknown(id, answer, $"a pressure above 0, in {unit}");
    }

    // The saturation pressure of a column, by its middle row, in its own unit or that of the pressures.
    private MeasuredSetting? OfColumn(SorptionCurve curve)
    {
        double[] all = [.. curve.Rows.Select(r => r.Saturation).OfType<double>().Order()];
        var unit = curve.Series.Saturation is { } column ? PressureUnit.In(curve.Table.Written(column))?.Name ?? PressureName(curve) : null;
        return all.Length == 0 || unit is null ? null : new("p0", $"{Shown(all[all.Length / 2])} {unit}", all[all.Length / 2], unit, 0);
    }

    /// <summary>Unit of the pressures of a curve, or null.</summary>
    /// <param name="curve">The curve.</param>
    public string? PressureName(SorptionCurve curve)
        => curve.Series.Absolute is not { } column ? null : answeredPressure ?? (PressureUnit.In(curve.Table.Written(column)) ?? (Settings["unit-of-pressure"] is { } said ? PressureUnit.In(said.Written) : null))?.Name;

    private (AmountUnit Unit, bool IsOfSample)? SettleAmount()
    {
        var curve = curves[0];
        var heading = curve.Table.Written(curve.Series.Amount);
        var unit = AmountUnit.In(heading) ?? (Settings["unit-of-amount"] is { } said ? AmountUnit.In(said.Written) : null);
        // Any note may say it once for all: "adsorbed volume in cm3/g".
        unit ??= Settings.All.Where(s => s.Name == "note").Select(s => AmountUnit.In(s.Written)).FirstOrDefault(u => u is { Per: AmountPer.Gram });
        if (unit is null)
        {
            var id = source.Question("amount-unit");
            var answer = source.Talk.Ask(id, Codes.UnitMissing, $"The amounts under “{heading}” have no unit. Which one?", [.. AmountUnit.Choices], heading);
            source.Talk.Explain(id, [.. AmountUnit.Choices.Select(c => Consequence(AmountUnit.In(c)!, isOfSample: AmountUnit.In(c)!.Per == AmountPer.Sample))]);
            if (answer is null)
            {
                IsOpen = true;
                return null;
            }

            unit = AmountUnit.In(answer)!;
            if (unit.Per == AmountPer.Sample)
                return WithMass(unit);
        }

        if (unit is { Per: AmountPer.Gram })
        {
            if (Contradicted(curve, unit) is { } other)
                return other.Unit is null ? null : other.Unit is { Per: AmountPer.Sample } whole ? WithMass(whole) : (other.Unit, false);
            if (Largest * unit.Mmol * Nitrogen.StpPerMmol > Nitrogen.LargestUptakeStp)
            {
                var id = source.Question("amount-unit");
                var answer = source.Talk.Ask(id, Codes.Ambiguous, $"“{heading}” goes up to {Shown(Largest)}, more nitrogen than any known solid holds in {unit.Name}. Which unit is it?", [.. AmountUnit.Choices.Where(c => c != unit.Name)], heading);
                source.Talk.Explain(id, [.. AmountUnit.Choices.Where(c => c != unit.Name).Select(c => Consequence(AmountUnit.In(c)!, isOfSample: AmountUnit.In(c)!.Per == AmountPer.Sample))]);
                IsOpen |= answer is null;
                return answer is null ? null : AmountUnit.In(answer)! is { Per: AmountPer.Sample } bare ? WithMass(bare) : (AmountUnit.In(answer)!, false);
            }

            return unit.SaysStp ? (unit, false) : GasOrLiquid(heading, unit) is { } volume ? (volume, false) : null;
        }

        return PerWhat(heading, unit);
    }

    // Volumes of gas, as usual; where they would be hardly any gas and are as large as pores, those of the liquid are as likely.
    private AmountUnit? GasOrLiquid(string heading, AmountUnit unit)
    {
        const string gas = "gas-stp", liquid = "liquid";
        var id = source.Question("volume-is");
        if (Largest * unit.Mmol * Nitrogen.StpPerMmol > LargestPores)
        {
            source.Talk.Assume(id, Codes.Ambiguous, $"“{heading}”: the volumes are taken as gas at 0 °C and 101.325 kPa (STP), as usual.", [gas], heading);
            return unit;
        }

        var filled = AmountUnit.In(unit.Name.Replace("STP", liquid, StringComparison.Ordinal))!;
        var answer = source.Talk.Ask(id, Codes.Ambiguous, $"“{heading}” goes up to {Shown(Largest)} only. Are these volumes of liquid nitrogen in the pores, or of gas at 0 °C and 101.325 kPa (STP)?", [liquid, gas], heading);
        source.Talk.Explain(id, [Consequence(filled, isOfSample: false), Consequence(unit, isOfSample: false)]);
        IsOpen |= answer is null;
        return answer is null ? null : answer == liquid ? filled : unit;
    }

    // The same amounts twice, and their units do not agree: one of the two headings is wrong, and the area with it. Null where nothing contradicts; no unit while it is asked.
    private AmountAnswer? Contradicted(SorptionCurve curve, AmountUnit unit)
    {
        if (curve.Series.Again is not { } again || AmountUnit.In(curve.Table.Written(again)) is not { Per: AmountPer.Gram } second)
            return null;
        double[] ratios = [.. curves.Where(c => c.Series.Again is not null).SelectMany(c => c.Rows).Where(r => r is { Amount: > 0, Again: > 0 }).Select(r => r.Again!.Value * second.Mmol / (r.Amount * unit.Mmol)).Order()];
        if (ratios.Length == 0 || Math.Abs(ratios[ratios.Length / 2] - 1) <= LargestDisagreement)
            return null;
        var (id, ratio) = (source.Question("amount-unit"), ratios[ratios.Length / 2]);
        var (heading, beside) = (curve.Table.Written(curve.Series.Amount), curve.Table.Written(again));
        var agreeing = AmountUnit.Choices.Select(c => AmountUnit.In(c)!).FirstOrDefault(c => c.Per == AmountPer.Gram && Math.Abs(ratio * unit.Mmol / c.Mmol - 1) <= LargestDisagreement);
        ImmutableArray<string> choices = [.. (agreeing is null ? [] : new[] { agreeing.Name }).Append(unit.Name).Concat(AmountUnit.Choices).Distinct()];
        var answer = source.Talk.Ask(id, Codes.Ambiguous,
            $"“{heading}” and “{beside}” contradict each other: as they are headed, the second is {Shown(ratio)} times the first.{(agreeing is null ? "" : $" They agree if “{heading}” is in {agreeing.Name}.")} Which unit is it?", choices, heading, beside);
        source.Talk.Explain(id, [.. choices.Select(c => Consequence(AmountUnit.In(c)!, isOfSample: AmountUnit.In(c)!.Per == AmountPer.Sample))]);
        IsOpen |= answer is null;
        return new(answer is null ? null : AmountUnit.In(answer));
    }

    // "Volume adsorbed (cm3 STP)": many write it for cm3/g, others for all the powder in the cell.
    private (AmountUnit, bool)? PerWhat(string heading, AmountUnit unit)
    {
        var id = source.Question("amount");
        var mass = Settings.Mass;
        if (mass is { } m && Largest * unit.Mmol / m * Nitrogen.StpPerMmol > Nitrogen.LargestUptakeStp)
        {
            var assumed = source.Talk.Assume(id, Codes.Ambiguous, $"“{heading}” is per gram: for the whole sample of {Shown(m)} g it would be more nitrogen than any known solid holds.", [SorptionReading.PerGram, SorptionReading.WholeSample], heading);
            return assumed == SorptionReading.PerGram ? (unit with { Per = AmountPer.Gram, Name = unit.Name + "/g" }, false) : WithMass(unit);
        }

        // The words beside the unit, or a note, may say what the unit does not.
        var words = string.Join(' ', Settings.All.Where(s => s.Name == "note").Select(s => s.Written).Prepend(heading));
        if (SorptionWords.PerWhat(words) is { } said)
        {
            var assumed = source.Talk.Assume(id, Codes.Ambiguous, $"“{heading}” is {(said == SorptionReading.PerGram ? "per gram" : "for the whole sample")}: the file says so.", said == SorptionReading.PerGram ? [SorptionReading.PerGram, SorptionReading.WholeSample] : [SorptionReading.WholeSample, SorptionReading.PerGram], heading);
            return assumed == SorptionReading.PerGram ? (unit with { Per = AmountPer.Gram, Name = unit.Name + "/g" }, false) : WithMass(unit);
        }

        var answer = source.Talk.Ask(id, Codes.Ambiguous, $"Is “{heading}” per gram of powder, or for the whole sample{(mass is { } g ? $" of {Shown(g)} g" : "")}?", [SorptionReading.PerGram, SorptionReading.WholeSample], heading);
        source.Talk.Explain(id, [Consequence(unit, isOfSample: false), Consequence(unit, isOfSample: true)]);
        if (answer is null)
        {
            IsOpen = true;
            return null;
        }

        return answer == SorptionReading.PerGram ? (unit with { Per = AmountPer.Gram, Name = unit.Name + "/g" }, false) : WithMass(unit);
    }

    private (AmountUnit, bool)? WithMass(AmountUnit unit)
    {
        if (OwnWords.MassesIn(Settings) is { } masses)
        {
            Settings = Settings.Weighing(masses.After);
            source.Talk.Note(Codes.Ambiguous, Weight.Caution, $"The amounts are for the whole sample: they are divided by the mass after outgassing, {masses.After.Written} (line {Shown(masses.After.Row)}), not by {masses.Before.Written}.", masses.After.Written);
        }

        if (Settings.Mass is not null)
            return (unit, true);
        var id = source.Question("value:mass");
        var answer = source.Talk.Ask(id, Codes.UnitMissing, $"“{curves[0].Table.Written(curves[0].Series.Amount)}” is for the whole sample, and no mass stands in the file{(Settings["mass"] is { } blank ? $" (it says “{blank.Written}”)" : "")}. What was the mass after degassing, in g?", []);
        if (answer is null)
        {
            IsOpen = true;
            return null;
        }

        if (CellText.Read(answer, null) is not CellText.Number { Value: > 0 } number)
            throw Answers.Unknown(id, answer, "a mass above 0, in g");
        Settings = Settings.With(new MeasuredSetting("mass", answer + " g", number.Value, "g", 0));
        return (unit, true);
    }

    private double Largest => curves.SelectMany(c => c.Rows).Max(r => r.Amount);

    private string Consequence(AmountUnit unit, bool isOfSample)
    {
        if (isOfSample && Settings.Mass is null)
            return "the mass is then needed";
        var (area, up) = Worked(unit, isOfSample);
        return area is { } a ? $"BET area about {Shown(a)} m2/g" : $"up to {Shown(up.Length == 0 ? 0 : up[^1].Amount)} mmol/g";
    }

    // What the first powder of the file would have for an area.
    private (double? Area, ImmutableArray<SorptionPoint> Up) Worked(AmountUnit unit, bool isOfSample)
    {
        var scale = unit.Mmol / (isOfSample ? Settings.Mass!.Value : 1);
        var powder = curves.Where(c => c.Series.Powder == curves[0].Series.Powder).SelectMany(c => c.Rows).ToList();
        SorptionPoint[] points = [.. powder.Select(r => new SorptionPoint(X(r) ?? double.NaN, r.Amount * scale)).Where(p => double.IsFinite(p.X))];
        var up = SorptionBranches.ByTurn(points).Adsorption;
        return (BetArea.Of(up) is { Chosen: { } chosen } ? chosen.Area : SorptionBranches.At(up, 0.3) is { } amount ? BetArea.SinglePoint(new(0.3, amount)) : null, up);
    }

    private double? X(SorptionRow row)
        => Relative is not null && row.Relative is { } r ? Relative switch { "" => r, "%" => r / 100, _ => r * PressureUnit.In(Relative)!.Kilopascal / Kilopascal }
            : row.Absolute is { } a ? row.Saturation is { } s ? a / s : Saturation is { Value: { } v } ? a / v : null
            : null;

    private double? Kilopascal => Saturation is { Value: { } v } && PressureUnit.In(Saturation.Unit) is { } unit ? v * unit.Kilopascal : null;

    // False for another gas.
    private bool SettleGas()
    {
        const string nitrogen = "nitrogen", other = "other";
        if (Settings["adsorptive"] is { } gas)
        {
            if (SorptionWords.IsNitrogen(gas.Written))
                return true;
            source.Talk.Note(Codes.MeaningLost, Weight.Caution, $"The gas is {gas.Written}, not nitrogen: the isotherm is kept, and neither area nor pores are worked out of it.", gas.Written);
            return false;
        }

        string[] said = [.. Settings.All.Select(s => s.Name + " " + s.Written).Append($"{source.Talk.FileName} {source.Grid.Sheet}".Replace('_', ' ')).Concat(curves.Select(c => c.Table.Written(c.Series.Amount)))];
        var id = source.Question("gas");
        string? answer;
        if (Array.Exists(said, SorptionWords.IsNitrogen))
        {
            answer = nitrogen;
        }
        else if (said.Select(SorptionWords.OtherGas).FirstOrDefault(g => g is not null) is { } named)
        {
            // It may be what the powder was made or activated with.
            answer = source.Talk.Ask(id, Codes.Ambiguous, $"The file names {named} and no nitrogen. Was the isotherm measured with nitrogen at 77 K?", [nitrogen, other]);
            source.Talk.Explain(id, ["area and pores are worked out", $"an isotherm of {named}: kept, and neither area nor pores are worked out"]);
            IsOpen |= answer is null;
        }
        else
        {
            answer = source.Talk.Assume(id, Codes.Ambiguous, "Nothing names the gas: nitrogen at 77 K is taken, as usual.", [nitrogen, other]);
            Settings = Settings.With(new MeasuredSetting("adsorptive", answer == nitrogen ? "nitrogen (assumed)" : "another gas (answered)", null, "", 0));
            return answer == nitrogen;
        }

        Settings = Settings.With(new MeasuredSetting("adsorptive", answer == other ? "another gas (answered)" : nitrogen, null, "", 0));
        return answer != other;
    }

    private static string Shown(double value) => value.ToString("G4", CultureInfo.InvariantCulture);

    // Null while it is asked.
    private readonly record struct AmountAnswer(AmountUnit? Unit);
}
