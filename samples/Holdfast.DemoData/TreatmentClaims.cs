namespace Holdfast.DemoData;

/// <summary>What the invented student wants to write of beds and of cost: a sheet of its own.</summary>
public static class TreatmentClaims
{
    private static readonly string[] Columns =
    [
        "claim", "rule", "run", "time", "limit", "c0", "water", "isotherm", "price", "uses", "disposal", "eluent", "eluent-price", "eluent-uses", "energy", "labour", "rival", "currency",
        "wording", "remark",
    ];

    private static readonly Sentence[] Sentences =
    [
        new("bed-of-4-cm", "outlet-meets-limit", "A bed of 4 cm keeps the outlet below the discharge limit for 400 min.", ("run", "BED-4a"), ("time", "400 min"), ("limit", "2.38 mg/L")),
        new("bed-of-6-cm", "outlet-meets-limit", "A bed of 6 cm keeps the outlet below the discharge limit for 700 min.", ("run", "BED-6"), ("time", "700 min"), ("limit", "2.38 mg/L")),
        new("low-cost-rinse-water", "low-cost", "The powder is a low-cost way to treat rinse water.",
            ("limit", "2.38 mg/L"), ("c0", "6.8 mg/L"), ("water", "plating-rinse water"), ("isotherm", "ISO-298"), ("price", "40 to 60"), ("uses", "1 to 5"), ("disposal", "0.5 to 1.5"),
            ("eluent", "5 to 10"), ("eluent-price", "0.05 to 0.10"), ("eluent-uses", "1 to 3"), ("energy", "0.05 to 0.15"), ("labour", "0.5 to 1.5"), ("rival", "2 to 6"),
            ("currency", "invented coins of 2026")),
    ];

    /// <summary>The sheet.</summary>
    public static DemoFile Sheet() => DemoFile.Text("claims-treatment.csv", [Dialect.Comma.Line([.. Columns]), .. Sentences.Select(Row)]);

    private static string Row(Sentence sentence) => Dialect.Comma.Line([.. Columns.Select(column => (object?)(column switch
    {
        "claim" => sentence.Id,
        "rule" => sentence.Rule,
        "wording" => sentence.Wording,
        "remark" => "invented demo data",
        _ => sentence.Parameters.FirstOrDefault(p => p.Name == column).Words,
    }))]);

    private sealed record Sentence(string Id, string Rule, string Wording, params (string Name, string Words)[] Parameters);
}
