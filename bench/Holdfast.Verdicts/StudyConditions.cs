using Holdfast.Studies;
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

    // Twice the vessels: what the rule advises after a study of three a level (TellingConcentrations.ForSpread).
    private static readonly SimulatedStudy Doubled = Sound with { Vessels = 6 };

    /// <summary>All of them. Claims about one kind of study are judged on the same studies.</summary>
    public static IEnumerable<Condition> All()
    {
        var layer = Claim("monolayer", ("surface-area", "73.4 m2/g"), ("ion-radius", "0.40 nm"));
        var langmuir = Claim("best-isotherm", ("model", "Langmuir"));
        (string, Truth, StatedClaim)[] sound =
        [
            ("Langmuir truth, 8 × 3 vessels", Truth.True, langmuir), ("Langmuir truth", Truth.True, Claim("favourable")),
            ("Langmuir truth, stated as it is", Truth.True, Claim("capacity", ("capacity", "14 mg/g"))), ("Langmuir truth, stated 10 % too high", Truth.Margin, Claim("capacity", ("capacity", "15.56 mg/g"))),
            ("Langmuir truth, stated 30 % too high", Truth.False, Claim("capacity", ("capacity", "18.2 mg/g"))),
            ("first-order truth, ten times × 3 vessels", Truth.True, ClaimOn("KIN", "best-kinetic-model", ("model", "PFO"), ("rival", "PSO, Elovich"))),
            ("first-order truth, second order claimed", Truth.False, ClaimOn("KIN", "best-kinetic-model", ("model", "PSO"), ("rival", "PFO"))),
        ];
        (string, Truth, StatedClaim)[] mute =
        [
            ("", Truth.Mute, langmuir), ("", Truth.Mute, Claim("favourable")), ("", Truth.Mute, Claim("capacity", ("capacity", "14 mg/g"))), ("", Truth.Mute, Claim("removal-falls-with-concentration")), ("", Truth.Mute, layer),
        ];
        return
        [
            .. Of(Sound, sound),
            .. Of(Doubled, ("Langmuir truth, room for one layer, 8 × 6 vessels as the rule advises after 8 × 3", Truth.True, layer)),
            .. Of(
                Spread, ("Sips truth, exponent 0.7", Truth.False, langmuir), ("Sips truth, exponent 0.7", Truth.False, layer),
                ("Sips truth, its own capacity stated, asked of Langmuir", Truth.Mute, Claim("capacity", ("capacity", "14 mg/g")))),
            .. Of(Power, ("Freundlich truth", Truth.False, langmuir)),
            .. Of(Partition, ("Henry truth, Langmuir claimed", Truth.Margin, langmuir), ("Henry truth", Truth.Margin, Claim("favourable"))),
            .. Of(
                Sigmoid, ("S-shaped truth", Truth.False, Claim("favourable")),
                ("S-shaped truth, its own capacity stated, asked of Langmuir", Truth.Mute, Claim("capacity", ("capacity", "14 mg/g")))),
            .. Mute.SelectMany(m => Of(m.Study, [.. mute.Select(c => (m.Name, c.Item2, c.Item3))])),
        ];
    }

    private static IEnumerable<Condition> Of(SimulatedStudy study, params (string Name, Truth Truth, StatedClaim Claim)[] conditions)
    {
        var judged = new Dictionary<ulong, Ruling[]>();
        var asked = study with { Claims = [.. conditions.Select((c, i) => c.Claim with { Id = FormattableString.Invariant($"{c.Claim.Id}-{i}") })] };
        Ruling[] Rulings(ulong seed)
        {
            if (!judged.TryGetValue(seed, out var rulings))
            {
                var verdicts = asked.Judge(seed);
                judged[seed] = rulings = [.. asked.Claims.Select(c => verdicts.Single(v => v.Claim.Id == c.Id).Ruling)];
            }

            return rulings;
        }

        return conditions.Select((c, i) => new Condition(c.Claim.Rule, c.Name, c.Truth, seed => Rulings(seed)[i]));
    }
}
