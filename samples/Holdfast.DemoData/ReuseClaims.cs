namespace Holdfast.DemoData;

/// <summary>What the invented student wants to write of temperature, rivals, exchange, reuse and use: a sheet of its own.</summary>
public static class ReuseClaims
{
    private static readonly string[] Columns = ["claim", "series", "direction", "over", "cycles", "cycle", "ion", "ratio", "dose", "limit", "wording", "remark"];

    private static readonly Sentence[] Sentences =
    [
        new("spontaneous-and-endothermic", "The uptake of nickel is spontaneous and endothermic.", ("series", "TEMP-298, TEMP-308, TEMP-318"), ("direction", "endothermic")),
        new("selective", "The powder is selective for nickel."),
        new("selective", "The powder prefers nickel over zinc.", ("over", "Zn")),
        new("selective", "The powder prefers nickel over sodium, magnesium, calcium, manganese, cobalt and cadmium.", ("over", "Na, Mg, Ca, Mn, Co, Cd")),
        new("ion-exchange", "Nickel is taken up in exchange for calcium, one for one.", ("ion", "Ca"), ("ratio", "1")),
        new("regenerated-better", "After one regeneration the powder works better than fresh.", ("series", "REUSE"), ("cycle", "2")),
        new("reusable", "The powder keeps 80 % of its uptake over five cycles.", ("series", "REUSE"), ("cycles", "5")),
        new("outlet-meets-limit", "One stage with 2 g/L brings the rinse water below the discharge limit.", ("series", "WATER-rinse"), ("dose", "2 g/L"), ("limit", "2.38 mg/L")),
    ];

    /// <summary>The sheet.</summary>
    public static DemoFile Sheet() => DemoFile.Text("claims-reuse.csv", [Dialect.Comma.Line([.. Columns]), .. Sentences.Select(Row)]);

    private static string Row(Sentence sentence) => Dialect.Comma.Line([.. Columns.Select(column => (object?)(column switch
    {
        "claim" => sentence.Rule,
        "wording" => sentence.Wording,
        "remark" => "invented demo data",
        _ => sentence.Parameters.FirstOrDefault(p => p.Name == column).Words,
    }))]);

    private sealed record Sentence(string Rule, string Wording, params (string Name, string Words)[] Parameters);
}
