namespace Holdfast.DemoData;

/// <summary>What the invented student wants to write of the best pH and of the powder's stability: a sheet of its own.</summary>
public static class WaterClaims
{
    private const string Powder = "Ca9.8Eu0.2(PO4)6(OH)1.8O0.2";

    private static readonly string[] Columns = ["claim", "series", "ph", "formula", "wording", "remark"];

    private static readonly Sentence[] Sentences =
    [
        new("optimum-ph", "The best pH for nickel is 9.", "9", ("series", "PH")),
        new("stable-in-water", "The powder is stable in water at start pH 3.", "3", ("formula", Powder)),
        new("stable-in-water", "The powder is stable in water at start pH 5.", "5", ("formula", Powder)),
        new("stable-in-water", "The powder is stable in water at start pH 6.", "6", ("formula", Powder)),
    ];

    /// <summary>The sheet.</summary>
    public static DemoFile Sheet() => DemoFile.Text("claims-water.csv", [Dialect.Comma.Line([.. Columns]), .. Sentences.Select(Row)]);

    private static string Row(Sentence sentence) => Dialect.Comma.Line([.. Columns.Select(column => (object?)(column switch
    {
        "claim" => sentence.Rule,
        "wording" => sentence.Wording,
        "ph" => sentence.Ph,
        "remark" => "invented demo data",
        _ => sentence.Parameters.FirstOrDefault(p => p.Name == column).Words,
    }))]);

    private sealed record Sentence(string Rule, string Wording, string Ph, params (string Name, string Words)[] Parameters);
}
