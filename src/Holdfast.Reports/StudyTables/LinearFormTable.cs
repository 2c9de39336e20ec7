using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Linearised;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>What the linear forms of the fitted curves would have said, beside the direct fit. For display only.</summary>
public static class LinearFormTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["nd"] = "not determined by these data" };

    /// <summary>One row a constant of a form; null when no form can be drawn.</summary>
    /// <param name="id">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="fitted">The series with its direct fits.</param>
    public static Table? Of(string id, string caption, FittedSeries fitted)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        Row[] rows = [.. RankingTable.Sorted(fitted.Fits).Where(f => f.IsFit).SelectMany(Rows)];
        return rows.Length == 0 ? null : new Table(
            id,
            caption,
            [
                new Column("plot", "Plot") { NamesRows = true },
                new Column("curve", "Curve"),
                new Column("parameter", "Constant"),
                new Column("line", "By the line"),
                new Column("direct", "By the direct fit"),
                new Column("unit", "Unit"),
                new Column("inside", "Inside the 95 % interval"),
                new Column("r_squared", RichText.Parse("*R*^2 of the line")),
                new Column("skipped", "Left out"),
            ],
            rows,
            Codes)
        {
            Notes =
            [
                "For display only: nothing in this report rests on these lines. The R² of a rearranged plot compares with nothing.",
                "A constant known beforehand (qm, qe and the like) is taken from the direct fit and not listed. Left out: readings that the rearrangement cannot show.",
            ],
        };
    }

    private static IEnumerable<Row> Rows(FitResult fit)
    {
        foreach (var form in LinearForms.Of(fit.Card.Name))
        {
            var given = form.Given is { } symbol && fit.Parameters.Any(p => p.Symbol == symbol) ? fit[symbol].Value : (double?)null;
            if (form.Display([.. fit.Points.X], [.. fit.Points.Y], given).Value is not { } line)
                continue;
            var first = true;
            for (var j = 0; j < fit.Parameters.Count && j < line.Parameters.Count; j++)
            {
                var direct = fit.Parameters[j];
                if (direct.Symbol == form.Given || !double.IsFinite(direct.Value))
                    continue;
                yield return Row.Of(
                    form.Name,
                    fit.Card.Name,
                    direct.Symbol,
                    double.IsFinite(line.Parameters[j]) ? new NumberCell(line.Parameters[j]) : new MissingCell("nd"),
                    direct.StandardError is { } se && double.IsFinite(se) ? new MeasuredCell(direct.Value, se) : new NumberCell(direct.Value),
                    UnitWords.Of(direct.Unit),
                    Inside(direct, line.Parameters[j]),
                    first && line.Line.RSquared is { } r ? new NumberCell(r) { Decimals = 4 } : "",
                    first ? new NumberCell(line.Skipped) { Decimals = 0 } : "");
                first = false;
            }
        }
    }

    private static string Inside(FittedParameter direct, double value)
        => direct.Profile is not { } p || !double.IsFinite(value) ? "not decided"
            : value < (p.Lower.Value ?? double.NegativeInfinity) || value > (p.Upper.Value ?? double.PositiveInfinity) ? "no" : "yes";
}
