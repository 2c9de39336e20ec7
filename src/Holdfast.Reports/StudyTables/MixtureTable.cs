using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Preference over each rival.</summary>
internal static class MixtureTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["n1"] = "one vessel gives no interval" };

    /// <summary>One row a rival.</summary>
    public static Table Of(MixtureStudy study, string metal)
        => new(
            "preference",
            $"Preference for {metal} over each rival",
            [
                new Column("rival", "Rival") { NamesRows = true },
                new Column("n", RichText.Parse("*n*")) { Spoken = "number of vessels" },
                new Column("start", "Each at the start") { Unit = "mmol/L" },
                new Column("analyte", $"{metal} left, mean") { Unit = "mmol/L" },
                new Column("left", "Rival left, mean") { Unit = "mmol/L" },
                new Column("alpha", RichText.Parse("*α*")) { Spoken = "selectivity coefficient" },
                new Column("low", "95 % from"),
                new Column("high", "to"),
            ],
            [.. study.Rivals.Select(One)],
            Codes)
        {
            Notes = ["α is the ratio of distribution coefficients in one vessel, by amount; geometric mean over vessels, interval by t on ln α. Above 1 the metal is preferred."],
        };

    private static Row One(RivalMetal rival)
    {
        var interval = rival.Preference?.Interval();
        return Row.Of(
            rival.Metal,
            new NumberCell(rival.Vessels.Length) { Decimals = 0 },
            new NumberCell(rival.Vessels.Average(v => v.Start)),
            new NumberCell(rival.Vessels.Average(v => v.AnalyteLeft)),
            new NumberCell(rival.Vessels.Average(v => v.RivalLeft)),
            new NumberCell(rival.Preference?.Value ?? rival.Vessels[0].Preference.Value) { Address = "alpha:" + (rival.Preference is null ? rival.Vessels[0].Sample.Code : rival.Metal) },
            interval is { } i && double.IsFinite(i.Low) ? new NumberCell(i.Low) : new MissingCell("n1"),
            interval is { } j && double.IsFinite(j.High) ? new NumberCell(j.High) : new MissingCell("n1"));
    }
}
