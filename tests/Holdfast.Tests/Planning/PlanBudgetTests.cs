using Holdfast.Planning;
using Holdfast.Solutions;
using Holdfast.Composition;
using Holdfast.Testing;

namespace Holdfast.Tests.Planning;

public class PlanBudgetTests
{
    // The INVENTED plan of the demo (the design of each series as its makers wrote it down): start concentrations, doses, replicates, blanks; 25 mL each.
    private static PlanBudget Series(string name) => name switch
    {
        "DOSE" => Vessels([20], [0.5, 1, 1.5, 2, 3, 4], 3, 2),
        "KIN-05" => Vessels([5], [2], 27, 2),
        "KIN-20" => Vessels([20], [2], 27, 2),
        "ISO-298" => Vessels([2, 5, 10, 15, 20, 30, 40, 60], [2], 3, 1),
        "PH" => Vessels([20], [2], 21, 14),
        "REUSE first load" => Vessels([20], [2], 2, 0),
        _ => Vessels([5, 10, 20, 30, 50], [2], 2, 1),
    };

    private static PlanBudget Vessels(double[] starts, double[] doses, int replicates, int blanks)
    {
        var all = PlanBudget.None;
        foreach (var start in starts)
        {
            foreach (var dose in doses)
            {
                for (var i = 0; i < replicates; i++)
                    all = all.With(start, 25, 25 * dose);
            }

            for (var i = 0; i < blanks; i++)
                all = all.With(start, 25, 0);
        }

        for (var i = 0; i < 2; i++)
            all = all.With(0, 25, 50);
        return all;
    }

    // reference/design/budget-check.csv: exact.
    [Fact]
    public void Budget_OfNineSeries_AgreesWithTheTable()
    {
        var rows = ReferenceTable.Read("design", "budget-check.csv");
        var total = PlanBudget.None;
        foreach (var row in rows.Take(9))
        {
            var series = Series(row["series"]);
            Same(row, series);
            total = total.Plus(series);
        }

        Same(rows[9], total);
        Agree.Relative(1e-9, rows[10].Number("nickel_mg"), total.StockVolume(1000));
        var salt = Formula.Parse("Ni(NO3)2.6H2O");
        Agree.Relative(2e-5, rows[11].Number("nickel_mg"), Stock.MassNeeded<Holdfast.Amounts.Number>(1000, total.StockVolume(1000) / 1000, salt.MassFraction("Ni").Value, 1).Value);
        Assert.Equal(rows[12].Number("absorbance_readings"), total.ReadingsWithChecks);
        Agree.Relative(1e-9, rows[13].Number("absorbance_readings"), total.InstrumentTime(12));
    }

    // Metal in is metal out: the check of planning.md 6.
    [Fact]
    public void Waste_OfVesselsBlanksAndControls_HoldsTheMetalThatWentIn()
    {
        var streams = PlanWaste.Of([(25, 20, 5, 50), (25, 20, 20, 0), (25, 0, 0, 50)], 0.3, 100, 0.2);
        Assert.Equal(1 + 0.3 + 0.2, streams.Sum(s => s.Metal), 12);
        Assert.Equal(0.375, streams[3].Metal, 12);
        Assert.Equal(50, streams[0].Volume);
        Assert.Equal(25, streams[2].Volume);
        Assert.Equal(100, streams[3].Solid);
    }

    private static void Same(ReferenceRow row, PlanBudget budget)
    {
        Assert.Equal(row.Number("vessels"), budget.Vessels);
        Assert.Equal(row.Number("sorbent_free_blanks"), budget.Blanks);
        Assert.Equal(row.Number("sorbent_only_controls"), budget.SorbentControls);
        Agree.Relative(1e-12, row.Number("volume_mL"), budget.Volume, row["series"]);
        Agree.Relative(1e-12, row.Number("nickel_mg"), budget.Metal, row["series"]);
        Agree.Relative(1e-12, row.Number("sorbent_mg"), budget.Sorbent, row["series"]);
        Assert.Equal(row.Number("absorbance_readings"), budget.Readings);
    }
}
