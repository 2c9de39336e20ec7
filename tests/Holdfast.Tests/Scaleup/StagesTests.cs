using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Scaleup;
using Holdfast.Testing;
using Holdfast.Tests.Isotherms;

namespace Holdfast.Tests.Scaleup;

public class StagesTests
{
    // Y = m·X^1.66 through (663, 4.3), the line that R. E. Treybal reads off his graph.
    private static readonly double[] Treybal = [663 / Math.Pow(4.3, 1 / 1.66), 1.66];

    // reference/sorption/stages.csv (scipy 1.10.1): every row and column, 1e-6. The best split itself is flat, so that its place is known to fewer digits.
    [Fact]
    public void Stages_OfFourIsotherms_AgreeInEveryRow()
    {
        foreach (var row in ReferenceTable.Read("sorption", "stages.csv"))
        {
            var (model, p) = Of(row["case"]);
            Measured[] exact = [.. p.Select(v => (Measured)v)];
            double inlet = row.Number("C_in"), target = row.Number("C_target");
            Agree.Digits(6, row.Number("q_at_target"), model.Value(target, p));
            Agree.Digits(6, row.Number("single_stage_dose"), SingleStage.Dose(model, exact, inlet, target).Value);
            var cross = CrossCurrent.Of(model, exact, inlet, target);
            Agree.Digits(6, row.Number("cross_intermediate_C"), cross.Between);
            Agree.Digits(6, row.Number("cross_dose_1"), cross.First.Value);
            Agree.Digits(6, row.Number("cross_dose_2"), cross.Second.Value);
            Agree.Digits(9, row.Number("cross_total"), cross.Total.Value);
            var counter = CounterCurrent.Of(model, exact, inlet, target);
            Agree.Digits(8, row.Number("counter_intermediate_C"), counter.Between.Value);
            Agree.Digits(8, row.Number("counter_dose"), counter.Dose.Value);
            Agree.Digits(8, row.Number("q_at_inlet"), model.Value(inlet, p));
            Agree.Digits(8, row.Number("dose_floor_infinite_stages"), SingleStage.Floor(model, exact, inlet, target).Value);
        }
    }

    // R. E. Treybal, Mass-Transfer Operations, illustration 11.2: 32.0, 19.82 and 12.8 kg per 1000 kg, read from a graph; within 0.5 %.
    [Fact]
    public void Stages_OfTreybalsIllustration_AgreeWithThePrint()
    {
        Measured[] p = [.. Treybal.Select(v => (Measured)v)];
        var model = Model.Of<Freundlich>();
        Agree.Relative(0.005, 32.0, 1000 * SingleStage.Dose(model, p, 9.6, 0.96).Value);
        Agree.Relative(0.005, 19.82, 1000 * CrossCurrent.Of(model, p, 9.6, 0.96).Total.Value);
        Agree.Relative(0.005, 12.8, 1000 * CounterCurrent.Of(model, p, 9.6, 0.96).Dose.Value);
        var rows = ReferenceTable.Read("sorption", "published", "treybal-decolour.csv");
        var line = Holdfast.Statistics.LinearTrend.Of([.. rows.Select(r => Math.Log(r.Number("X_units_per_kg")))], [.. rows.Select(r => Math.Log(r.Number("Y_units_per_kg")))]).Value!;
        Agree.Digits(8, 1.68645294297, line.Value);
        Agree.Digits(8, 0.0292015212673, line.StandardError);
    }

    // The covariance carried through each plan is that of small shifts of the parameters.
    [Fact]
    public void Doses_WithUncertainParameters_CarryTheirSlopes()
    {
        var model = Model.Of<Langmuir>();
        var qm = new Source("qm", "qm", 1.5);
        var k = new Source("K", "K", 0.004);
        Measured[] p = [Measured.From(85, qm), Measured.From(0.065, k)];
        Check(m => SingleStage.Dose(model, m, 50, 1).Value, SingleStage.Dose(model, p, 50, 1));
        Check(m => CrossCurrent.Of(model, m, 50, 1).Total.Value, CrossCurrent.Of(model, p, 50, 1).Total);
        Check(m => CounterCurrent.Of(model, m, 50, 1).Dose.Value, CounterCurrent.Of(model, p, 50, 1).Dose);
        Check(m => SingleStage.Floor(model, m, 50, 1).Value, SingleStage.Floor(model, p, 50, 1));

        static void Check(Func<Measured[], double> dose, Measured expected)
        {
            double Difference(double dq, double dk) => (dose([85 + dq, 0.065 + dk]) - dose([85 - dq, 0.065 - dk])) / 2;
            var u = Math.Sqrt(Math.Pow(Difference(1e-3, 0) * 1.5e3, 2) + Math.Pow(Difference(0, 1e-6) * 4e3, 2));
            Agree.Digits(5, u, expected.U);
        }
    }

    // Two stages never need more than one, the other way round less than cross-current, and none goes below the floor.
    [Theory, InlineData(50, 1), InlineData(50, 20), InlineData(10, 0.2)]
    public void Doses_OfOneIsotherm_AreOrdered(double inlet, double target)
    {
        var model = Model.Of<Langmuir>();
        Measured[] p = [85, 0.065];
        double single = SingleStage.Dose(model, p, inlet, target).Value, cross = CrossCurrent.Of(model, p, inlet, target).Total.Value;
        double counter = CounterCurrent.Of(model, p, inlet, target).Dose.Value, floor = SingleStage.Floor(model, p, inlet, target).Value;
        Assert.True(floor < counter && counter < cross && cross < single);
    }

    [Fact]
    public void Plan_BelowTheDataOrBeyondThem_SaysSo()
    {
        FlagCase.Check("E1", c => Stages.WithinData(c["C_target"], c["lowest_measured_Ce"]));
        var fit = Fit.Of<Langmuir>(new([1, 3, 8, 15, 30, 60], [5.1, 13.4, 28.9, 41.2, 55.6, 67.1], "mg/L", "mg/g"));
        Assert.Equal("HF-641", Assert.Single(Stages.Of(fit, "ISO", 50, 0.5, 1, 60).Findings).Code);
        var beyond = Stages.Of(fit, "ISO", 90, 2, 1, 60);
        Assert.Equal("HF-642", Assert.Single(beyond.Findings).Code);
        Assert.True(beyond.Value!.Counter.Dose.U > 0);
    }

    private static (Model Model, double[] P) Of(string name) => name.Split(' ')[0] switch
    {
        "treybal" => (Model.Of<Freundlich>(), Treybal),
        "langmuir" => (Model.Of<Langmuir>(), [85, 0.065]),
        "freundlich" => (Model.Of<Freundlich>(), [9.5, 2.1]),
        "henry" => (Model.Of<Henry>(), [0.8]),
        var other => throw new InvalidDataException(other),
    };
}
