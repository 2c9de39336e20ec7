using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>The CSV and JSON of reference/nist-strd against the NIST text files themselves, where those are at hand.</summary>
public partial class NistFileTests
{
    public static TheoryData<string> Sets() => [.. NistSet.Names("nonlinear")];

    [Theory, MemberData(nameof(Sets))]
    public void Data_OfEachNonlinearSet_AreThoseOfTheNistFile(string name)
    {
        var lines = File.ReadAllLines(Repository.Verbatim("nist-strd", "nonlinear", name + ".dat"));
        var set = NistSet.Read("nonlinear", name);
        var header = lines.Select(l => DataLines().Match(l)).First(m => m.Success);
        var from = int.Parse(header.Groups["from"].Value, CultureInfo.InvariantCulture);
        var to = int.Parse(header.Groups["to"].Value, CultureInfo.InvariantCulture);
        var rows = lines[(from - 1)..Math.Min(to, lines.Length)].Where(l => l.Trim().Length > 0).Select(Numbers).ToArray();
        Assert.Equal(set.Y.Length, rows.Length);
        for (var i = 0; i < rows.Length; i++)
        {
            Assert.Equal(name == "Nelson" ? Math.Log(rows[i][0]) : rows[i][0], set.Y[i]);
            for (var k = 0; k < set.X.Length; k++)
                Assert.Equal(rows[i][k + 1], set.X[k][i]);
        }

        var certified = lines.Where(l => CertifiedLine().IsMatch(l)).Select(l => Numbers(l[(l.IndexOf('=', StringComparison.Ordinal) + 1)..])).ToArray();
        for (var j = 0; j < set.Certified.Length; j++)
            Assert.Equal([set.Numbers("start1")[j], set.Numbers("start2")[j], set.Certified[j], set.StandardDeviations[j]], certified[j]);
    }

    private static double[] Numbers(string line)
        => [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => double.Parse(t, CultureInfo.InvariantCulture))];

    [GeneratedRegex(@"^\s+Data\s+\(lines\s+(?<from>\d+)\s+to\s+(?<to>\d+)\)", RegexOptions.None, 1000)]
    private static partial Regex DataLines();

    [GeneratedRegex(@"^\s*b\d\s*=", RegexOptions.None, 1000)]
    private static partial Regex CertifiedLine();
}
