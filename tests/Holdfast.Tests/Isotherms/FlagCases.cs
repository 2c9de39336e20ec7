using System.Globalization;
using Holdfast.Testing;

namespace Holdfast.Tests.Isotherms;

/// <summary>Rows of reference/sorption/flag-cases.csv: inputs of a rule and the verdict it must give.</summary>
internal sealed record FlagCase(IReadOnlyDictionary<string, string> Inputs, Ruling Expected, string Text)
{
    public double this[string input] => double.Parse(Inputs[input], CultureInfo.InvariantCulture);

    public bool Has(string input) => Inputs.ContainsKey(input);

    public static IReadOnlyList<FlagCase> Of(string rule)
    {
        var rows = ReferenceTable.Read("sorption", "flag-cases.csv").Where(r => r["rule"] == rule).ToArray();
        Assert.NotEmpty(rows);
        return [.. rows.Select(r => new FlagCase(
            r["inputs"].Split("; ").Select(p => p.Split('=')).Where(p => p.Length == 2).ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal),
            r["verdict"] switch
            {
                "holds" => Ruling.Holds,
                "not shown yet" => Ruling.NotShownYet,
                "weak" or "favoured" => Ruling.NotShownYet,
                "not contradicted" => Ruling.NotShownYet,
                "contradicted" => Ruling.Contradicted,
                var other => throw new InvalidDataException(other),
            },
            r["inputs"]))];
    }

    /// <summary>Holds every row of a rule against the rule.</summary>
    public static void Check(string rule, Func<FlagCase, Ruling> judge)
        => Assert.All(Of(rule), c => Assert.Equal((c.Text, c.Expected), (c.Text, judge(c))));
}
