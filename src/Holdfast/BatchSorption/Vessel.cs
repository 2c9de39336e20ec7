using Holdfast.Amounts;

namespace Holdfast.BatchSorption;

/// <summary>One batch vessel worked out: its quantities and what must be said about them.</summary>
/// <param name="Removal">Removal, percent.</param>
/// <param name="Uptake">Uptake, mg/g.</param>
/// <param name="DistributionCoefficient">Kd, L/g; null when the end concentration is not above 0 or below its quantification limit.</param>
/// <param name="Significance">Whether anything was removed.</param>
/// <param name="UptakeIsWeak">True when the uptake must be marked and weighed down.</param>
/// <param name="Findings">Caveats, each naming the vessel.</param>
public sealed record Vessel(
    Measured Removal,
    Measured Uptake,
    Measured? DistributionCoefficient,
    Significance Significance,
    bool UptakeIsWeak,
    IReadOnlyList<Finding> Findings)
{
    /// <summary>A ratio whose denominator is known less well than this has no mean and no standard uncertainty, only quantiles; share.</summary>
    public const double LargestDenominatorU = 0.10;

    /// <summary>Works out a vessel.</summary>
    /// <param name="id">Its code, for the findings.</param>
    /// <param name="c0">Start concentration, mg/L, above 0.</param>
    /// <param name="c">Concentration at the end, mg/L; may be negative after blank subtraction.</param>
    /// <param name="volume">Volume of liquid, L.</param>
    /// <param name="mass">Mass of dry sorbent, g.</param>
    /// <param name="quantificationLimit">Quantification limit in the vessel's liquid, dilution included, mg/L; null when not known.</param>
    public static Vessel Of(string id, Measured c0, Measured c, Measured volume, Measured mass, double? quantificationLimit = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(c0.Value, nameof(c0));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume.Value, nameof(volume));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mass.Value, nameof(mass));
        var removal = BatchQuantities.Removal(c0, c);
        var uptake = BatchQuantities.Uptake(c0, c, volume, mass);
        var significance = Significance.Of(c0, c, volume.Value, mass.Value);
        var censored = c.Value <= 0 || c.Value < quantificationLimit;
        var weak = WorkingWindow.UptakeIsWeak(removal.Value, uptake);
        var findings = new List<Finding>();
        if (significance.Removed == Ruling.NotShownYet)
            Say("HF-482", Weight.Caution, $"{id}: removal is not detected; the uptake is under {Shown(significance.DetectableUptake)} mg/g. Use more sorbent or a lower start.");
        else if (significance.Removed == Ruling.Contradicted)
            Say("HF-483", Weight.Caution, $"{id} holds more solute at the end than at the start. Look for evaporation, carry-over or a wrong dilution.");
        else if (weak)
            Say("HF-484", Weight.Caution, $"{id}: removal {Shown(removal.Value)} %, u(q)/q {Shown(100 * uptake.RelativeU)} %. The uptake is weak; weigh it by its uncertainty.");
        if (censored)
            Say("HF-485", Weight.Caution, $"{id}: Ce lies below its quantification limit. It is kept as a limit, not plotted as a value; use less sorbent.");
        else if (c.RelativeU > LargestDenominatorU)
            Say("HF-486", Weight.Note, $"{id}: Ce is known to {Shown(100 * c.RelativeU)} % only. Give an interval for Kd, not a standard uncertainty.");
        return new(
            removal, uptake, censored ? null : BatchQuantities.DistributionCoefficient(c0, c, volume, mass), significance, weak, findings);

        void Say(string code, Weight weight, string sentence) => findings.Add(Finding.Of(code, weight, sentence, id));
    }

    private static string Shown(double value)
        => double.IsFinite(value) ? RoundedNumber.WithoutUncertainty(value, significant: 2).PlusMinus : "unknown";
}
