using System.Globalization;
using Holdfast.Testing;

namespace Holdfast.Tests.Isotherms;

public class FunctionValueTests
{
    // reference/sorption/function-values.csv: every curve at small, ordinary and huge abscissa and near its limits (order 1.000001, f2 0.999999),
    // 17 digits by 40-digit arithmetic.
    public static TheoryData<string, string, string, string> Rows()
    {
        var rows = new TheoryData<string, string, string, string>();
        foreach (var row in ReferenceTable.Read("sorption", "function-values.csv"))
            rows.Add(row["curve"], row["parameters"], row["x"], row["y"]);
        return rows;
    }

    [Theory, MemberData(nameof(Rows))]
    public void Value_OfEveryCurve_AgreesToThirteenDigits(string curve, string parameters, string x, string y)
    {
        var at = double.Parse(x, CultureInfo.InvariantCulture);
        var p = CurveCase.Parameters(parameters);

        // Next to its pole BET loses what 1 − KL·C loses: the double nearest to KL = 0.01 is itself that far from it.
        var tolerance = curve == "bet_liquid" ? Math.Max(1e-13, 2.2e-16 * p[2] * at / Math.Abs(1 - p[2] * at)) : 1e-13;
        Agree.Relative(tolerance, double.Parse(y, CultureInfo.InvariantCulture), CurveCase.Named(curve).Value(at, p), curve);
    }

    // The rows above and the curves that the table has not.
    public static TheoryData<string, string, string, string> SlopeRows()
    {
        var rows = Rows();
        foreach (var x in new[] { "0.02", "0.7", "12", "90" })
        {
            rows.Add("henry", "Kd=0.8", x, "");
            rows.Add("dual_langmuir", "q1=30 K1=0.6 q2=70 K2=0.02", x, "");
            rows.Add("weber_morris", "ki=2.4 c=6", x, "");
            rows.Add("sphere_diffusion", "qe=41 B=0.05", x, "");
        }

        rows.Add("dubinin_radushkevich", "qs=90 b=0.074", "0.0004", "");
        rows.Add("dubinin_radushkevich", "qs=90 b=0.074", "0.9", "");
        return rows;
    }

    // The slopes against a fourth-order central difference of the value, whose own error is near 1e-10 of the largest change.
    [Theory, MemberData(nameof(SlopeRows))]
    public void Slopes_OfEveryCurve_AgreeWithDifferences(string curve, string parameters, string x, string y)
    {
        _ = y;
        var model = CurveCase.Named(curve);
        var p = CurveCase.Parameters(parameters);
        var at = double.Parse(x, CultureInfo.InvariantCulture);
        var slopes = model.Slopes(at, p);
        for (var i = 0; i < p.Length; i++)
        {
            var size = p[i] == 0 ? 1 : Math.Abs(p[i]);
            var h = 1e-3 * size;
            if (model.Card.Parameters[i].Below is { } bound)
                h = Math.Min(h, (bound - p[i]) / 4);
            if (curve == "bet_liquid" && i == 2)
                h = Math.Min(h, (1 / at - p[i]) / 100);
            if (curve == "general_order" && i > 0 && p[2] < 1 && 1 + (p[2] - 1) * p[1] * at <= 0)
                h = Math.Min(h, 1e-4);
            double Moved(double step) => model.Value(at, [.. p.Select((v, j) => j == i ? v + step : v)]);
            var difference = (8 * (Moved(h) - Moved(-h)) - (Moved(2 * h) - Moved(-2 * h))) / (12 * h);
            var scale = Math.Max(Math.Abs(difference), 1e-4 * Math.Abs(model.Value(at, p)) / size);
            Assert.True(Math.Abs(slopes[i] - difference) <= 2e-7 * scale + 1e-300, string.Create(CultureInfo.InvariantCulture,
                $"{curve} {parameters} at {x}, {model.Card.Parameters[i].Symbol}: slope {slopes[i]:R}, difference {difference:R}"));
        }
    }
}
