using static Holdfast.Verdicts.SimulatedStudy;

namespace Holdfast.Verdicts;

/// <summary>Rules that judge curves: whole studies from readings through calibration, work-up and fits to the verdict with its ground.</summary>
internal static class StudyConditions
{
    private static readonly SimulatedStudy Sound = new();
    private static readonly SimulatedStudy Spread = Sound with { Uptake = c => 14 * Math.Pow(0.35 * c, 0.7) / (1 + Math.Pow(0.35 * c, 0.7)) };
    private static readonly SimulatedStudy Sigmoid = Sound with { Uptake = c => 14 * 0.01 * c * c / (1 + 0.01 * c * c) };
    private static readonly SimulatedStudy Partition = Sound with { Uptake = c => 0.4 * c };
    private static readonly SimulatedStudy Power = Sound with { Uptake = c => 3 * Math.Pow(Math.Max(c, 0), 0.45) };

    private static readonly (string Name, SimulatedStudy Study)[] Mute =
    [
        ("five vessels", Sound with { Vessels = 1, Starts = [2, 5, 15, 30, 60], Rate = null }),
        ("random removal", Sound with { Removed = (chance, _) => chance.Uniform(), Rate = null }),
        ("noise", Sound with { Removed = (chance, _) => Math.Clamp(0.5 + 0.5 * chance.Normal(), -0.3, 0.99), Rate = null }),
        ("no uptake", Sound with { Removed = (_, _) => 0, Rate = null }),
        ("all below the detection limit", Sound with { Removed = (_, _) => 0.99999, Rate = null }),
        ("30 % leak, seen by controls", Sound with { Leak = 0.3 }),
        ("30 % leak, no controls", Sound with { Leak = 0.3, Controls = null }),
        ("25 % drift, seen by checks", Sound with { Drift = -0.25 }),
        ("25 % drift, no checks", Sound with { Drift = -0.25, Checks = false }),
    ];

    /// <summary>All of them.</summary>
    public static IEnumerable<Condition> All()
    {
        yield return Of(Sound, "Langmuir truth, 8 × 3 vessels", Truth.True, Claim("best-isotherm", ("model", "Langmuir")));
        yield return Of(Spread, "Sips truth, exponent 0.7", Truth.False, Claim("best-isotherm", ("model", "Langmuir")));
        yield return Of(Power, "Freundlich truth", Truth.False, Claim("best-isotherm", ("model", "Langmuir")));
        yield return Of(Partition, "Henry truth, Langmuir claimed", Truth.Margin, Claim("best-isotherm", ("model", "Langmuir")));
        yield return Of(Sound, "Langmuir truth", Truth.True, Claim("favourable"));
        yield return Of(Partition, "Henry truth", Truth.Margin, Claim("favourable"));
        yield return Of(Sigmoid, "S-shaped truth", Truth.False, Claim("favourable"));
        yield return Of(Sound, "Langmuir truth, stated as it is", Truth.True, Claim("capacity", ("capacity", "14 mg/g")));
        yield return Of(Sound, "Langmuir truth, stated 10 % too high", Truth.Margin, Claim("capacity", ("capacity", "15.56 mg/g")));
        yield return Of(Sound, "Langmuir truth, stated 30 % too high", Truth.False, Claim("capacity", ("capacity", "18.2 mg/g")));
        yield return Of(Spread, "Sips truth, its own capacity stated, asked of Langmuir", Truth.Mute, Claim("capacity", ("capacity", "14 mg/g")));
        yield return Of(Sigmoid, "S-shaped truth, its own capacity stated, asked of Langmuir", Truth.Mute, Claim("capacity", ("capacity", "14 mg/g")));
        yield return Of(Sound, "Langmuir truth, room for one layer", Truth.True, Claim("monolayer", ("surface-area", "73.4 m2/g"), ("ion-radius", "0.40 nm")));
        yield return Of(Spread, "Sips truth, exponent 0.7", Truth.False, Claim("monolayer", ("surface-area", "73.4 m2/g"), ("ion-radius", "0.40 nm")));
        yield return Of(Sound, "first-order truth, ten times × 3 vessels", Truth.True, ClaimOn("KIN", "best-kinetic-model", ("model", "PFO"), ("rival", "PSO, Elovich")));
        yield return Of(Sound, "first-order truth, second order claimed", Truth.False, ClaimOn("KIN", "best-kinetic-model", ("model", "PSO"), ("rival", "PFO")));
        foreach (var (name, study) in Mute)
        {
            foreach (var claim in new[] { Claim("best-isotherm", ("model", "Langmuir")), Claim("favourable"), Claim("capacity", ("capacity", "14 mg/g")), Claim("removal-falls-with-concentration"), Claim("monolayer", ("surface-area", "73.4 m2/g"), ("ion-radius", "0.40 nm")) })
                yield return Of(study, name, Truth.Mute, claim);
        }
    }

    private static Condition Of(SimulatedStudy study, string name, Truth truth, Holdfast.Studies.StatedClaim claim)
        => new(claim.Rule, name, truth, seed => (study with { Claims = [claim] }).Judge(seed)[0].Ruling);
}
