using Holdfast.Claims.Analyses;
using Holdfast.Reports.Tables;
using Holdfast.Speciation;

namespace Holdfast.Reports.StudyTables;

/// <summary>Solids of the metal with the pH from which each forms, and how every vessel stands against them.</summary>
internal static class PrecipitationTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["nf"] = "does not form between pH 0 and 14 at this concentration",
        ["nr"] = "not recorded",
        ["ns"] = "not sure at any pH, within two standard uncertainties",
    };

    /// <summary>The solids at one concentration.</summary>
    /// <param name="onsets">The onsets.</param>
    public static Table Solids(SolidOnsets onsets)
        => new(
            "solids-onset",
            $"pH from which each solid forms at {InWords.Plain(onsets.Concentration, "mg/L")}, ionic strength {InWords.Plain(onsets.IonicStrength, "mol/L")}",
            [
                new Column("solid", "Solid") { NamesRows = true },
                new Column("kind", "Forms"),
                new Column("onset", "From pH"),
                new Column("low", "Not below"),
                new Column("high", "Surely above"),
                new Column("again", "Dissolves again above"),
                new Column("constant", "lg *K"),
                new Column("source", "Source"),
                new Column("status", "Constant is"),
            ],
            [.. onsets.Onsets.Select(o => Row.Of(
                o.Solid.Name, Kind(o.Solid.Kind), Ph(o.Ph, "nf"), Ph(o.Low, "nf"), Ph(o.High, "ns"), o.Ph is null ? new MissingCell("nf") : o.RedissolvesAt is { } again ? Number(again) : "14",
                new MeasuredCell(o.Solid.LgKs, o.Solid.U), o.Solid.Source, o.Solid.Status))],
            Codes)
        {
            Notes = ["Oxides and hydroxides without carbonate, carbonates open to air (420 ppm). Not below, surely above: two standard uncertainties of the constants. ± is the standard uncertainty."],
        };

    /// <summary>One row a vessel, or one for vessels that are alike in all of it.</summary>
    /// <param name="vials">The vessels.</param>
    /// <param name="together">True to put vessels that are alike into one row.</param>
    public static Table Vials(IEnumerable<GuardedVial> vials, bool together)
        => new(
            "precipitation",
            "Could a solid have formed? Each vessel at its start concentration and the highest pH recorded in it",
            [
                new Column("vessels", together ? "Vessels" : "Vessel") { NamesRows = true },
                Column.Of("c0", "C_0", "mg/L", "concentration at the start"),
                new Column("ph_highest", "Highest pH"),
                new Column("air", "Air"),
                new Column("sorption", "Sorption, not precipitation"),
                new Column("reason", "Why"),
            ],
            [.. vials
                .GroupBy(v => (together ? v.Vessel.Sample.Series : v.Vessel.Code, v.Vessel.Start?.Value, v.HighestPh, v.Air, v.Reason))
                .Select(g => Row.Of(
                    InWords.Some([.. g.Select(v => v.Vessel.Code)], 3),
                    g.First().Vessel.Start is { } start ? new NumberCell(start.Value) : new MissingCell("nr"),
                    Ph(g.First().HighestPh, "nr"), Air(g.First().Air), InWords.Of(g.First().Ruling), g.First().Reason))],
            Codes);

    private static Cell Ph(double? ph, string code) => ph is { } value ? Number(value) : new MissingCell(code);

    private static NumberCell Number(double ph) => new(ph) { Decimals = 2 };

    private static string Kind(SolidKind kind) => kind switch
    {
        SolidKind.Fresh => "at once",
        SolidKind.Intermediate => "in hours to days",
        SolidKind.Aged => "in days to years",
        _ => "with carbonate",
    };

    private static string Air(AirContact air) => air switch
    {
        AirContact.Open => "open",
        AirContact.Excluded => "kept out",
        _ => "closed or not recorded",
    };
}
