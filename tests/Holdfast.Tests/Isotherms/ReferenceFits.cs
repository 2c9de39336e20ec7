using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Isotherms;

/// <summary>The fits of reference/sorption: data, curve and expected parameters, errors, sum of squares and AICc.</summary>
internal static class ReferenceFits
{
    // Names of the tables, ours beside them.
    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal)
    {
        ["henry"] = "Henry",
        ["langmuir"] = "Langmuir",
        ["freundlich"] = "Freundlich",
        ["temkin"] = "Temkin",
        ["dubinin_radushkevich"] = "Dubinin-Radushkevich",
        ["sips"] = "Sips",
        ["redlich_peterson"] = "Redlich-Peterson",
        ["toth"] = "Toth",
        ["khan"] = "Khan",
        ["dual_langmuir"] = "Dual-site Langmuir",
        ["langmuir_partition"] = "Langmuir with partition",
        ["bet_liquid"] = "BET in liquid",
        ["pseudo_first"] = "Pseudo-first-order",
        ["pseudo_second"] = "Pseudo-second-order",
        ["general_order"] = "General order",
        ["mixed_order"] = "Mixed 1,2-order",
        ["elovich"] = "Elovich",
        ["avrami"] = "Avrami",
        ["double_exponential"] = "Double exponential",
        ["weber_morris"] = "Weber-Morris",
    };

    /// <summary>Every case and curve of a table that names a curve of ours and gives numbers for it.</summary>
    public static IEnumerable<(string Case, string Curve)> Pairs(string table)
        => ReferenceTable.Read("sorption", table).Where(r => Names.ContainsKey(r["curve"])).Select(r => (r["case"], r["curve"])).Distinct();

    /// <summary>The model behind a name of the tables.</summary>
    public static Model ModelOf(string curve) => Isotherm.Named(Names[curve]) ?? Kinetic.Named(Names[curve])!;

    /// <summary>The points of a case.</summary>
    public static Points PointsOf(string table, string name)
    {
        var rows = ReferenceTable.Read("sorption", table).Where(r => r["case"] == name).ToArray();
        return rows[0].Header.Contains("x")
            ? new([.. rows.Select(r => r.Number("x"))], [.. rows.Select(r => r.Number("y"))], "mg/L", "mg/g")
            : new([.. rows.Select(r => r.Number("t_min"))], [.. rows.Select(r => r.Number("q_mg_g"))], "min", "mg/g");
    }

    /// <summary>Holds a fit against the rows of its case (those with the given note, if any): exact data to nine digits, noisy values to seven, errors to six.</summary>
    public static void Check(string table, string name, string curve, FitResult fit, Func<string, double> value, Func<string, double?> error, string? note = null)
    {
        // Rows whose note begins so belong to the same draws on another scale (SOURCE.md) and are asked for by that note.
        var rows = ReferenceTable.Read("sorption", table).Where(r => r["case"] == name && r["curve"] == curve
            && r["note"].StartsWith("same ", StringComparison.Ordinal) == (note is not null)
            && (note is null || r["note"].StartsWith(note, StringComparison.Ordinal))).ToArray();
        Assert.NotEmpty(rows);
        Assert.True(fit.IsFit, $"{name} by {curve}: {fit.Stop}; {string.Join(' ', fit.Findings.Select(f => f.Sentence))}");
        var exact = name.EndsWith("-exact", StringComparison.Ordinal) || name == "edge-khan-falls";
        foreach (var row in rows)
        {
            var quantity = row["quantity"];
            var what = $"{name} by {curve}: {quantity}";
            switch (quantity)
            {
                case "rss" when exact:
                    Assert.True(fit.SumOfSquares < 1e-15, what);
                    break;
                case "rss":
                    Agree.Relative(1e-9, row.Number("value"), fit.SumOfSquares, what);
                    break;
                case "aicc" when exact:

                    // Nothing is left over but rounding, of which no criterion can be made.
                    Assert.False(row.Has("value"), what);
                    break;
                case "aicc" when row.Has("value"):
                    Assert.Equal(row.Number("value"), fit.Aicc!.Value, 8);
                    break;
                case "aicc":
                    Assert.Null(fit.Aicc);
                    break;
                default:
                    Agree.Relative(exact ? 1e-9 : 1e-7, row.Number("value"), value(quantity), what);
                    if (!exact && row.Has("se"))
                        Agree.Relative(1e-6, row.Number("se"), error(quantity)!.Value, what + ", standard error");
                    break;
            }
        }
    }
}
