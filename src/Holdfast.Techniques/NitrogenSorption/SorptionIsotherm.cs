using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Porosity;
using Holdfast.Studies;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>One isotherm worked out: area, micropores, pore volume and sizes, each with what must be said beside it.</summary>
internal sealed record SorptionIsotherm
{
    /// <summary>Standard uncertainty of the mass where none came with it, g (common practice: 0.3 mg after degassing).</summary>
    public const double MassU = 0.0003;

    /// <summary>No cell for nitrogen holds more than this, g (common practice); and a mass that is not above its uncertainty is none.</summary>
    public const double LargestMass = 1000;

    /// <summary>Relative standard uncertainty of an area between portions of one powder where no second portion was measured (within one laboratory; common practice).</summary>
    public const double PortionU = 0.02;

    /// <summary>Setting that makes an isotherm the reference of the others: the known area of a non-porous solid of like surface, m²/g, stated in its own file.</summary>
    public const string ReferenceArea = "reference-area";

    /// <summary>What was measured.</summary>
    public required Measurement Measurement { get; init; }

    /// <summary>Why nothing is worked out, or null.</summary>
    public Finding? Refused { get; init; }

    /// <summary>Its branches.</summary>
    public SorptionBranches Branches { get; init; } = SorptionBranches.Of([], []);

    /// <summary>Mass of the sample, g; null where it is not known.</summary>
    public double? Mass { get; init; }

    /// <summary>BET analysis.</summary>
    public BetArea? Bet { get; init; }

    /// <summary>Area, m²/g, with fit, window, mass and portion; null where no window is consistent.</summary>
    public Measured? Area { get; init; }

    /// <summary>t-plots by each thickness curve over the usual range, then by the first curve over the moved ranges.</summary>
    public ImmutableArray<(ThicknessCurve Curve, LayerPlot Plot)> LayerPlots { get; init; } = [];

    /// <summary>The α_s-plot against the reference of the study; null without one, or for the reference itself.</summary>
    public LayerPlot? AlphaPlot { get; init; }

    /// <summary>Volume of micropores by the t-plot, cm³/g, with fit and range; null where the plot gives none.</summary>
    public Measured? MicroporeVolume { get; init; }

    /// <summary>Area outside micropores by the t-plot, m²/g, with fit and range; null where the plot gives none.</summary>
    public Measured? ExternalArea { get; init; }

    /// <summary>Pore volume at p/p0 0.95, cm³/g; null where the branch does not reach it.</summary>
    public Measured? PoreVolume { get; init; }

    /// <summary>The same at 0.99, which contains the voids between grains; null where the branch does not reach it.</summary>
    public double? VolumeWithVoids { get; init; }

    /// <summary>Pore sizes by the adsorption branch with the spread of each step; null with too few points.</summary>
    public (PoreSizes Sizes, ImmutableArray<double> Spread)? ByAdsorption { get; init; }

    /// <summary>Pore sizes by the desorption branch; null without one.</summary>
    public PoreSizes? ByDesorption { get; init; }

    /// <summary>Type and loop, as a suggestion.</summary>
    public IsothermShape? Shape { get; init; }

    /// <summary>What must be said beside the numbers.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Outgassing as stated, or null.</summary>
    public string? Degassing => string.Join(", ", Measurement.Settings.Where(s => s.Name.StartsWith("degas", StringComparison.Ordinal)).Select(s => s.Written)) is { Length: > 0 } said ? said : null;

    /// <summary>Works one out.</summary>
    /// <param name="measurement">An isotherm.</param>
    public static SorptionIsotherm Of(Measurement measurement)
    {
        var mass = MassOf(measurement);
        if (measurement.Setting("adsorptive") is { } gas && !SorptionWords.IsNitrogen(gas.Written))
            return new() { Measurement = measurement, Mass = mass, Refused = NotNitrogen(measurement, gas.Written) };
        var (branches, odd) = BranchesOf(measurement, mass);
        var up = branches.Adsorption;
        var bet = BetArea.Of(up, mass);
        var shape = IsothermShape.Of(branches, bet);
        Measured? area = bet.Chosen is { } chosen ? AreaOf(measurement, bet, chosen, mass) : null;
        var plots = ThicknessCurve.All.Select(c => (Curve: c, Plot: LayerPlot.ByThickness(up, c)))
            .Concat(LayerPlot.Moved.Select(m => (Curve: ThicknessCurve.HarkinsJura, Plot: LayerPlot.ByThickness(up, ThicknessCurve.HarkinsJura, m.From, m.To))))
            .Where(p => p.Plot is not null).Select(p => (p.Curve, p.Plot!)).ToImmutableArray();
        var usual = plots.FirstOrDefault(p => p.Curve == ThicknessCurve.HarkinsJura && p.Item2.From == LayerPlot.UsualFrom).Item2;
        ImmutableArray<LayerPlot> moved = [.. plots.Where(p => p.Curve == ThicknessCurve.HarkinsJura).Select(p => p.Item2)];
        var isLine = usual is { R2: >= LayerPlot.SmallestR2 };
        var volume = Porosity.PoreVolume.At(up, Porosity.PoreVolume.ReadAt) is { } v && !(branches.FallsAbove < Porosity.PoreVolume.ReadAt) ? v : (double?)null;
        var sizes = PoreSizes.WithSpread(up, measurement.Id);
        var byDesorption = PoreSizes.Of(branches.Desorption);
        return new()
        {
            Measurement = measurement,
            Branches = branches,
            Mass = mass,
            Bet = bet,
            Shape = shape,
            Area = area,
            LayerPlots = plots,
            MicroporeVolume = isLine ? Ranged(measurement.Id + " t-plot volume", "t-plot", usual!.MicroporeVolume, usual.MicroporeVolumeU, [.. moved.Select(m => m.MicroporeVolume)], usual.Points.Length, "cm3/g") : null,
            ExternalArea = isLine ? Ranged(measurement.Id + " t-plot area", "t-plot", usual!.ExternalArea, usual.ExternalAreaU, [.. moved.Select(m => m.ExternalArea)], usual.Points.Length, "m2/g") : null,
            PoreVolume = volume is { } known ? VolumeOf(measurement, known, mass) : null,
            VolumeWithVoids = branches.FallsAbove is null ? Porosity.PoreVolume.At(up, Porosity.PoreVolume.WithVoids) : null,
            ByAdsorption = sizes,
            ByDesorption = byDesorption,
            Findings = [.. mass is null && measurement.Setting("mass") is { Value: not null } stated ? [NoMass(measurement, stated)] : Array.Empty<Finding>(), .. odd, .. branches.Findings, .. bet.Findings, .. usual?.Findings(bet.Chosen?.Area) ?? [PorosityFindings.NoTPlot($"fewer than {LayerPlot.FewestPoints} points lie in its range")],
                .. Volumes(up, volume, bet.Chosen?.Area), .. Sizes(shape, sizes?.Sizes, byDesorption, bet.Chosen?.Area), .. shape.Findings],
        };
    }

    private static double? MassOf(Measurement measurement) => measurement.Settings.Where(s => s.Name == "mass").Select(s => s.Unit switch { "g" => s.Value, "mg" => s.Value / 1000, "kg" => s.Value * 1000, _ => null }).FirstOrDefault(m => m > 0) is > MassU and <= LargestMass and var mass ? mass : null;

    private static (SorptionBranches Branches, ImmutableArray<Finding> Findings) BranchesOf(Measurement measurement, double? mass)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var amounts = measurement.Column(SorptionReading.Amount)!;
        var unit = AmountUnit.In(amounts.Unit)!;
        var scale = unit.Mmol / (measurement.Setting(SorptionReading.AmountIs)?.Written == SorptionReading.WholeSample ? mass ?? double.NaN : 1);
        var x = RelativePressures(measurement, findings);
        var branch = measurement.Column(SorptionReading.BranchColumn)?.Words;
        var points = x.Select((value, i) => (Point: new SorptionPoint(value ?? double.NaN, (amounts.Numbers!.Value[i] ?? double.NaN) * scale), Branch: branch?[i] ?? "")).Where(p => double.IsFinite(p.Point.X) && double.IsFinite(p.Point.Amount)).ToList();
        return (points.Exists(p => p.Branch == SorptionReading.Desorption)
            ? SorptionBranches.Of([.. points.Where(p => p.Branch != SorptionReading.Desorption).Select(p => p.Point)], [.. points.Where(p => p.Branch == SorptionReading.Desorption).Select(p => p.Point)])
            : SorptionBranches.ByTurn([.. points.Select(p => p.Point)]), findings.ToImmutable());
    }

    private static double?[] RelativePressures(Measurement measurement, ImmutableArray<Finding>.Builder findings)
    {
        var saturation = measurement.Column(SorptionReading.Saturation);
        if (saturation is not null && PressureUnit.In(saturation.Unit) is { } unitOfP0 && saturation.Numbers!.Value.OfType<double>().Select(s => s * unitOfP0.Kilopascal).Where(k => k is < 95 or > 106).Cast<double?>().FirstOrDefault() is { } odd)
            findings.Add(PorosityFindings.OddSaturation(odd));
        if (measurement.Column(SorptionReading.Relative) is { } relative)
            return [.. relative.Numbers!.Value.Select(v => relative.Unit == "%" ? v / 100 : v)];
        var pressure = measurement.Column(SorptionReading.Pressure)!;
        if (saturation is not null)
        {
            // Two columns without a unit, or with one, share it; a unit of its own is converted.
            var ratio = PressureUnit.In(pressure.Unit) is { } p && PressureUnit.In(saturation.Unit) is { } s ? p.Kilopascal / s.Kilopascal : 1;
            return [.. pressure.Numbers!.Value.Zip(saturation.Numbers!.Value, (a, b) => b > 0 ? ratio * a / b : null)];
        }

        var p0 = measurement.Setting("p0");
        var factor = PressureUnit.In(pressure.Unit) is { } own && PressureUnit.In(p0?.Unit ?? "") is { } of ? own.Kilopascal / of.Kilopascal : 1;
        if (p0?.Value is { } value && PressureUnit.In(p0.Unit) is { } kept && value * kept.Kilopascal is var kilopascal and (< 95 or > 106))
            findings.Add(PorosityFindings.OddSaturation(kilopascal));
        return [.. pressure.Numbers!.Value.Select(v => p0?.Value is > 0 and var saturated ? factor * v / saturated : null)];
    }

    private static Measured AreaOf(Measurement measurement, BetArea bet, BetWindow chosen, double? mass)
        => Measured.From(chosen.Area,
        [
            .. One(new Source(measurement.Id + " fit", $"scatter about the BET line of {measurement.Id}", chosen.AreaU, chosen.Points - 2, Evaluation.Repetition, Unit: "m2/g"), chosen.AreaU),
            .. One(new Source(measurement.Id + " window", $"choice of the window of {measurement.Id}: half the range of the accepted areas", bet.WindowU, Shape: Amounts.Shape.Rectangular, Unit: "m2/g"), bet.WindowU),
            .. mass is { } m ? One(new Source(measurement.Id + " mass", $"mass of {measurement.Id}, taken as known to 0.3 mg", MassU, Unit: "g"), chosen.Area * MassU / m) : [],
            .. One(new Source(measurement.Id + " portion", "another portion of the same powder, taken as 2 % of the area: no second portion is counted here", PortionU * chosen.Area, Unit: "m2/g"), PortionU * chosen.Area),
        ]);

    private static Contribution[] One(Source source, double d) => d > 0 ? [new(source, d)] : [];

    private static Measured VolumeOf(Measurement measurement, double volume, double? mass)
        => Measured.From(volume,
        [
            new(new Source("density of liquid nitrogen", "density of liquid nitrogen, 0.806 to 0.809 g/cm3 in use", Porosity.PoreVolume.DensityU), Porosity.PoreVolume.DensityU * volume),
            .. mass is { } m ? One(new Source(measurement.Id + " mass", $"mass of {measurement.Id}, taken as known to 0.3 mg", MassU, Unit: "g"), volume * MassU / m) : [],
            .. One(new Source(measurement.Id + " portion volume", "another portion of the same powder, taken as 2 % of the volume", PortionU * volume), PortionU * volume),
        ]);

    // The range is a choice: half of what it moves the number by, over √3, beside the scatter.
    private static Measured Ranged(string id, string what, double value, double u, ImmutableArray<double> moved, int points, string unit)
    {
        var half = (moved.Max() - moved.Min()) / 2;
        return Measured.From(value,
        [
            .. One(new Source(id + " fit", $"scatter about the {what}", u, points - 2, Evaluation.Repetition, Unit: unit), u),
            .. One(TypeB.Tolerance(id + " range", $"range of the {what}, moved to both sides", half, unit: unit), half / Math.Sqrt(3)),
        ]);
    }

    private static IEnumerable<Finding> Volumes(ImmutableArray<SorptionPoint> up, double? volume, double? area)
    {
        if (up.IsEmpty)
            yield break;
        if (volume is null)
            yield return PorosityFindings.DoesNotReach(Porosity.PoreVolume.ReadAt, up[^1].X);
        else if (SorptionBranches.At(up, 0.90) is { } n90 && (SorptionBranches.At(up, 0.99) ?? up[^1].Amount) / n90 is var rise && rise >= Porosity.PoreVolume.NoPlateauFrom)
            yield return PorosityFindings.NoPlateau(rise - 1);
        if (volume is { } v && area is { } a && Porosity.PoreVolume.AverageDiameter(v, a) is var d and (< Porosity.PoreVolume.SmallestAverage or > Porosity.PoreVolume.LargestAverage))
            yield return PorosityFindings.OddAverage(d);
    }

    private static IEnumerable<Finding> Sizes(IsothermShape shape, PoreSizes? up, PoreSizes? down, double? area)
    {
        if (up is null)
            yield break;
        if (!shape.IsMesoporous)
            yield return PorosityFindings.NotForKelvin(shape.Type);
        if (down?.Mode is { Diameter: >= PoreSizes.ClosureFrom and <= PoreSizes.ClosureTo and var d } && !(up.Mode is { Diameter: >= PoreSizes.ClosureFrom and <= PoreSizes.ClosureTo }))
            yield return PorosityFindings.CavitationPeak(d);
        if (area is { } a && up.Area > 0 && Math.Abs(up.Area - a) > PoreSizes.AreasAgreeWithin * a)
            yield return PorosityFindings.AreasDisagree(up.Area, a);
    }

    private static Finding NoMass(Measurement measurement, MeasuredSetting stated)
        => Finding.Of("HF-720", Weight.Caution, string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"The mass of {measurement.Id}, {stated.Value:G4} {stated.Unit}, is not between {1000 * MassU:0.#} mg, what it is known to, and {LargestMass / 1000:0} kg: it is left aside. Correct it."), measurement.Id);

    private static Finding NotNitrogen(Measurement measurement, string gas)
        => Finding.Of("HF-719", Weight.Stop, $"{measurement.Id} was measured with {gas}, not nitrogen: neither area nor pores are worked out. Measure with nitrogen at 77 K.", measurement.Id);
}
