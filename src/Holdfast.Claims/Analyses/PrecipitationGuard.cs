using System.Collections.Immutable;
using Holdfast.BatchSorption;
using Holdfast.Speciation;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// For every vessel with metal: could a solid have formed at its start concentration and the highest pH it reached? Removal above that pH is not shown to be
/// sorption.
/// </summary>
/// <remarks>
/// Controls without sorbent at the same pH and start concentration overrule the constants: a loss above 5 % contradicts, and no loss at the same recorded end
/// pH holds, since the solid did not form in that time. Phosphate, silicate, sulfate, buffers and what the sorbent gives off are not considered.
/// </remarks>
/// <param name="Ions">The ions that the metal may be; empty when nothing is known of it here.</param>
/// <param name="Vials">The vessels with sorbent that count, in the order they came.</param>
public sealed record PrecipitationGuard(IReadOnlyList<MetalIon> Ions, ImmutableArray<GuardedVial> Vials)
{
    /// <summary>The guard of a study, worked out once.</summary>
    public static readonly Analysis<PrecipitationGuard> Known = new(Work);

    /// <summary>Loss in controls without sorbent, %, above which the removal is not the sorbent's; common practice.</summary>
    public const double LargestLoss = 100 * ControlCorrection.LossWorthCorrecting;

    private const double AssumedPhU = 0.05;

    /// <summary>What the guard leaves out, in words.</summary>
    public static IReadOnlyList<string> NotConsidered { get; } =
    [
        "phosphate, carbonate, calcium and hydroxide given off by the sorbent", "sulfate, silicate and organic ligands", "buffers",
        "the pH at the surface of a basic sorbent, and drops of base before they mix",
    ];

    /// <summary>The guard of a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static PrecipitationGuard Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The vial of a vessel, or null.</summary>
    /// <param name="code">The vessel's code.</param>
    public GuardedVial? Named(string code) => Vials.FirstOrDefault(v => string.Equals(v.Vessel.Code, code, StringComparison.Ordinal));

    private static PrecipitationGuard Work(Evidence evidence)
    {
        var ions = MetalIon.Of(evidence.Study.Analyte ?? "");
        var known = new Dictionary<(double, double, double), SolidOnsets>();
        var u = evidence.Study.Apparatus.FirstOrDefault(i => i.Serves is "end-ph" or "start-ph")?.U ?? AssumedPhU;
        ImmutableArray<Vessel> controls = [.. StudyControls.All(evidence)];
        var vials = evidence.Series
            .SelectMany(s => s.Vessels)
            .Where(v => v.Start is not null && v.Removal is not null)
            .Select(v => One(v, controls, ions, u, known));
        return new(ions, [.. vials]);
    }

    private static GuardedVial One(
        Vessel vessel, ImmutableArray<Vessel> controls, IReadOnlyList<MetalIon> ions, double u, Dictionary<(double, double, double), SolidOnsets> known)
    {
        var air = AirContacts.Of(vessel);
        var highest = Highest(vessel);
        if (highest is not { } ph)
            return new(vessel, null, null, air, Ruling.NotShownYet, "No pH was recorded, so precipitation cannot be excluded.", []);
        var background = Background.Of(vessel.Sample.Words(SampleProperties.Matrix));
        var onsets = Onsets(vessel, ions, background, known);
        Vessel[] alike = [.. controls.Where(c => Alike(c, vessel, ph))];
        if (ByControls(alike, ph) is { } decided)
            return new(vessel, ph, onsets, air, decided.Ruling, decided.Reason, [.. decided.Controls.Select(c => c.Code)]);
        if (onsets is null)
        {
            return new(vessel, ph, null, air, Ruling.NotShownYet, ions.Count == 0
                ? "No constants of this metal are known here, so the calculation says nothing."
                : "The start concentration is not above 0, so no onset follows.", []);
        }

        if (background.HoldsChloride && ions.Any(i => i.NeedsChloride))
            return new(vessel, ph, onsets, air, Ruling.NotShownYet, "Chloride binds this metal and may precipitate it; its constants are not considered here.", []);
        var ruling = onsets.At(ph, u, air);
        if (ruling == Ruling.Holds && vessel.Sample.Number(BatchProperties.EndPh) is null)
            return new(vessel, ph, onsets, air, Ruling.NotShownYet, $"Only the start pH, {Phrase.Number(ph)}, is known; the sorbent may have raised it.", []);
        return new(vessel, ph, onsets, air, ruling, Why(onsets, ruling, ph, u, air), []);
    }

    private static string Why(SolidOnsets onsets, Ruling ruling, double ph, double u, AirContact air)
    {
        var reached = $"pH {Phrase.Number(ph)} at {Phrase.With(onsets.Concentration, "mg/L")}";
        if (ruling == Ruling.Contradicted)
        {
            var solid = onsets.Forms(ph - 2 * u, air)!;
            return $"{reached}: {solid.Solid.Name} forms at once from pH {Place(solid)}.";
        }

        if (ruling == Ruling.Holds)
            return onsets.SafeBelow(air) is { } safe ? $"{reached}: no listed solid can form below pH {Two(safe)}." : $"{reached}: no listed solid can form at any pH.";
        var first = onsets.Onsets.Where(o => o.Low <= ph + 2 * u && (o.Solid.Carbonates == 0 || air != AirContact.Excluded)).MinBy(o => o.Low)!;
        return $"{reached}: {first.Solid.Name} could form from pH {Place(first)}; run controls without sorbent at this end pH.";
    }

    private static string Place(PrecipitationOnset onset)
        => onset is { Ph: { } ph, U: { } u } ? $"{Two(ph)} (u {Two(u)})" : $"{Two(onset.Low ?? 14)} within two uncertainties";

    private static string Two(double ph) => Phrase.Number(Math.Round(ph, 2));

    private static SolidOnsets? Onsets(Vessel vessel, IReadOnlyList<MetalIon> ions, Background background, Dictionary<(double, double, double), SolidOnsets> known)
    {
        if (ions.Count == 0 || vessel.Start is not { Value: > 0 and var start })
            return null;
        var key = (start, background.IonicStrength, vessel.Sample.Number(BatchProperties.Temperature) ?? Constants.TableTemperature);
        if (!known.TryGetValue(key, out var onsets))
            known[key] = onsets = SolidOnsets.Of(ions, key.start, key.IonicStrength, key.Item3);
        return onsets;
    }

    // What controls at the same pH and start concentration say: a loss, or no loss where the control's own end pH was recorded.
    private static (Ruling Ruling, string Reason, Vessel[] Controls)? ByControls(Vessel[] alike, double ph)
    {
        if (Loss(alike) is { } loss && loss.LowerBound() > LargestLoss)
            return (Ruling.Contradicted, $"Controls without sorbent at this pH lose {Phrase.With(loss.Value, "%")}, surely more than {Phrase.With(LargestLoss, "%")}.", alike);
        Vessel[] followed = [.. alike.Where(c => c.Sample.Number(BatchProperties.EndPh) is { } end && Tolerances.SamePh(end, ph))];
        return Loss(followed) is { } none && none.UpperBound() < LargestLoss
            ? (Ruling.Holds, $"Controls without sorbent at the same end pH lose {Phrase.With(none.Value, "%")}, surely less than {Phrase.With(LargestLoss, "%")}: no solid formed in that time.", followed)
            : null;
    }

    private static Estimate? Loss(Vessel[] controls)
        => Setting.Of(0, controls, v => v.Removal) is { Values.IsEmpty: false } losses ? LargerUncertainty.Mean(losses) : null;

    private static bool Alike(Vessel control, Vessel vessel, double ph)
        => Highest(control) is { } own && Tolerances.SamePh(own, ph)
        && control.Start is { } a && vessel.Start is { } b && Tolerances.SameStart(b.Value, a.Value)
        && (control.Sample.Number(BatchProperties.ContactTime) ?? double.PositiveInfinity) >= (vessel.Sample.Number(BatchProperties.ContactTime) ?? 0);

    private static double? Highest(Vessel vessel)
    {
        var start = vessel.Sample.Number(BatchProperties.StartPh);
        var end = vessel.Sample.Number(BatchProperties.EndPh);
        return start is null || end is null ? start ?? end : Math.Max(start.Value, end.Value);
    }
}
