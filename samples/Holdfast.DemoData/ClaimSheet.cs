namespace Holdfast.DemoData;

/// <summary>What the invented student wants to write: one row for each sentence, with what it is about.</summary>
public static class ClaimSheet
{
    private static readonly string[] Columns =
        ["claim", "series", "run", "to", "time", "dose", "model", "rival", "capacity", "published", "ph", "ksp", "limit", "against", "c0", "wording", "remark"];

    private static readonly StudentClaim[] Claims =
    [
        new("linear-calibration", "The calibration is linear to 4 mg/L.", ("run", "aas-run1"), ("to", "4 mg/L")),
        new("linear-calibration", "The calibration is linear to 2 mg/L.", ("run", "aas-run1"), ("to", "2 mg/L")),
        new("detection-limit", "The method detects nickel at the drinking-water value.", ("run", "aas-run1"), ("limit", "0.020 mg/L")),
        new("optimum-dose", "3 g/L is the optimum dose.", ("series", "DOSE"), ("dose", "3 g/L")),
        new("smallest-sufficient-dose", "3 g/L is the smallest dose that suffices.", ("series", "DOSE"), ("dose", "3 g/L")),
        new("equilibrium-reached", "Equilibrium is reached within 120 min at 5 mg/L.", ("series", "KIN-05"), ("time", "120 min")),
        new("equilibrium-reached", "Equilibrium is reached within 120 min at 20 mg/L.", ("series", "KIN-20"), ("time", "120 min")),
        new("removal-falls-with-concentration", "Removal falls as the concentration rises.", ("series", "ISO-298")),
        new("capacity", "The capacity is 13.5 mg/g.", ("series", "ISO-298"), ("model", "Langmuir"), ("capacity", "13.5 mg/g")),
        new("best-kinetic-model", "Uptake follows the pseudo-second-order form at 5 mg/L.", ("series", "KIN-05"), ("model", "Pseudo-second-order")),
        new("best-kinetic-model", "Uptake follows the pseudo-second-order form at 20 mg/L.", ("series", "KIN-20"), ("model", "Pseudo-second-order")),
        new("chemisorption", "Since the second-order form fits, nickel is bound by chemisorption.", ("series", "KIN-20")),
        new("best-isotherm", "The Langmuir isotherm fits better than the Freundlich isotherm.", ("series", "ISO-298"), ("model", "Langmuir"), ("rival", "Freundlich")),
        new("monolayer", "Nickel forms a monolayer on a homogeneous surface.", ("series", "ISO-298")),
        new("favourable", "The uptake is favourable, since the separation factor lies between 0 and 1.", ("series", "ISO-298")),
        new("not-precipitation", "At pH 6 nickel is sorbed, not precipitated.", ("series", "PH"), ("ph", "6"), ("ksp", "5.48e-16")),
        new("not-precipitation", "At pH 8 nickel is sorbed, not precipitated.", ("series", "PH"), ("ph", "8"), ("ksp", "5.48e-16")),
        new("not-precipitation", "At pH 9 nickel is sorbed, not precipitated.", ("series", "PH"), ("ph", "9"), ("ksp", "5.48e-16")),
        new("mass-balance", "The mass balance closes.", ("series", "DIGEST"), ("against", "ISO-298"), ("c0", "20 mg/L")),
        new("meets-limit", "Treated rinse water meets the discharge limit.", ("series", "WATER-rinse"), ("limit", "2.38 mg/L")),
        new("meets-limit", "Treated rinse water meets the drinking-water value.", ("series", "WATER-rinse"), ("limit", "0.020 mg/L")),
        new("meets-limit", "Treated roof water meets the drinking-water value.", ("series", "WATER-roof"), ("limit", "0.020 mg/L")),
        new("reproducible", "The powder's uptake is reproducible.", ("series", "ISO-298")),
        new("better-than-published", "The powder takes up more than a published one.", ("series", "ISO-298"), ("published", "11.0 mg/g")),
    ];

    /// <summary>The sheet.</summary>
    public static DemoFile Of() => DemoFile.Text("claims.csv", [Dialect.Comma.Line([.. Columns]), .. Claims.Select(Row)]);

    private static string Row(StudentClaim claim) => Dialect.Comma.Line([.. Columns.Select(column => (object?)(column switch
    {
        "claim" => claim.Rule,
        "wording" => claim.Wording,
        "remark" => "invented demo data",
        _ => claim.Parameters.FirstOrDefault(p => p.Name == column).Words,
    }))]);

    private sealed record StudentClaim(string Rule, string Wording, params (string Name, string Words)[] Parameters);
}
