using System.Globalization;
using System.Text;

namespace Holdfast.Mutants;

/// <summary>The page that says how many changes the tests noticed, and which they did not.</summary>
internal static class SurvivorPage
{
    private const string None = "no reason stated yet";

    /// <summary>The page as text.</summary>
    /// <param name="all">Changes there are.</param>
    /// <param name="tried">Changes that were tried, with how they ended.</param>
    /// <param name="reasons">Reasons why a survivor is let live, by file and change.</param>
    public static string Of(int all, IReadOnlyList<(Mutant Mutant, string Result)> tried, IReadOnlyDictionary<string, string> reasons)
    {
        int n = tried.Count, killed = tried.Count(t => t.Result == "killed");
        double share = (double)killed / n, error = Math.Sqrt(share * (1 - share) / n * (1 - (double)n / all));
        var text = new StringBuilder("""
            # Changes that no test noticed

            Written by `dotnet run -c Release --project bench/Holdfast.Mutants -- every=N from=K`, which tries every Nth change beginning with the Kth; the reasons alone are written by hand and kept. A change
            makes a limit larger by a fifth or by one, lets a comparison take or leave its equal case, or exchanges a sum and a difference, in `src/Holdfast.Claims` and the thresholds of `src/Holdfast`. The
            equal case is left out where no data can give it: a probability or an exponential beside a round limit, and a comparison with a slack for rounding. The tests are those of
            `tests/Holdfast.Claims.Tests`, its slow simulations left out. The bar: 85 % are noticed.


            """.ReplaceLineEndings("\n"));
        text.Append(CultureInfo.InvariantCulture, $"{n} of {all} changes tried, {killed} noticed: {100 * share:0.0} % ± {100 * error:0.0} % (binomial standard error of the sample). {tried.Count(t => t.Result == "not reached")} made no difference in any test, {tried.Count(t => t.Result == "survived")} made one that no test noticed.\n");
        foreach (var file in tried.Where(t => t.Result != "killed").GroupBy(t => t.Mutant.File).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {file.Key}\n\n");
            foreach (var (mutant, result) in file)
                text.Append(CultureInfo.InvariantCulture, $"- line {mutant.Line}, `{mutant.Change}`, {result}: {reasons.GetValueOrDefault(Name(mutant.File, mutant.Change), None)}\n");
        }

        return text.ToString();
    }

    /// <summary>The reasons that a page holds.</summary>
    /// <param name="page">Its file, which need not be there.</param>
    public static IReadOnlyDictionary<string, string> Reasons(string page)
    {
        var reasons = new Dictionary<string, string>(StringComparer.Ordinal);
        var file = "";
        foreach (var line in File.Exists(page) ? File.ReadAllLines(page) : [])
        {
            if (line.StartsWith("## ", StringComparison.Ordinal))
                file = line[3..];
            if (!line.StartsWith("- line ", StringComparison.Ordinal))
                continue;
            int open = line.IndexOf('`', StringComparison.Ordinal), close = line.LastIndexOf('`'), colon = line.IndexOf(": ", close, StringComparison.Ordinal);
            if (line[(colon + 2)..] is var reason && reason != None)
                reasons[Name(file, line[(open + 1)..close])] = reason;
        }

        return reasons;
    }

    private static string Name(string file, string change) => $"{file} {change}";
}
