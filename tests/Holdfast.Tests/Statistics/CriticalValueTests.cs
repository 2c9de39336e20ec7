using System.Globalization;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

// reference/measurement/critical-values.csv, computed with scipy 1.10.1; Dixon simulated, good to 0.002.
public class CriticalValueTests
{
    public static TheoryData<string, int, double> Rows
    {
        get
        {
            var rows = new TheoryData<string, int, double>();
            foreach (var r in ReferenceTable.Read("measurement", "critical-values.csv").Where(r => r["table"] is not ("c4" or "d2")))
                rows.Add(r["table"], (int)r.Number("n"), r.Number("value"));
            return rows;
        }
    }

    [Theory, MemberData(nameof(Rows))]
    public void Table_EveryRow_AgreesWithComputation(string table, int n, double expected)
    {
        if (table.StartsWith("dixon", StringComparison.Ordinal))
        {
            Assert.Equal(expected, Dixon.CriticalValue(n), 0.002);
            return;
        }

        var alpha = table.Contains("0.05", StringComparison.Ordinal) ? 0.05 : 0.01;
        var found = table switch
        {
            _ when table.StartsWith("grubbs", StringComparison.Ordinal) => Grubbs.CriticalValue(n, alpha),
            _ when table.StartsWith("one-sided t", StringComparison.Ordinal) => StudentDistribution.Quantile(1 - alpha, n - 1),
            "sd interval 95 % factor low" => StandardDeviationFactor.At(0.025, n - 1),
            "sd interval 95 % factor high" => StandardDeviationFactor.At(0.975, n - 1),
            _ when table.StartsWith("detection factor", StringComparison.Ordinal)
                => NoncentralStudent.NoncentralityFor(StudentDistribution.Quantile(0.95, n - 1), n - 1, 0.95),
            _ => throw new InvalidOperationException(table),
        };
        Agree.Digits(8.5, expected, found, string.Create(CultureInfo.InvariantCulture, $"{table}, n {n}"));
    }
}
