using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Cli;

/// <summary>Findings told so that they do not stack: three or more of a kind become one line with a count.</summary>
internal static class Remarks
{
    /// <summary>Tells why results are missing, each cause with the command that mends it.</summary>
    /// <param name="missing">The causes.</param>
    /// <param name="tell">Receives each line.</param>
    public static void Missing(IEnumerable<MissingResult> missing, Action<string> tell)
    {
        foreach (var cause in missing)
        {
            tell(cause.Sentence);
            tell("  " + Remedy.Command(cause));
        }
    }

    /// <summary>Tells findings.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="tell">Receives each line.</param>
    public static void Tell(IEnumerable<Finding> findings, Action<string> tell)
    {
        foreach (var kind in findings.DistinctBy(f => f.Sentence).GroupBy(f => f.Code, StringComparer.Ordinal).OrderByDescending(g => g.Max(f => f.Weight)))
        {
            var all = kind.ToArray();
            foreach (var finding in all.Length < 3 ? all : all[..1])
                tell($"{finding.Code} {finding.Sentence}");
            if (all.Length >= 3)
            {
                var concerned = all.SelectMany(f => f.Concerns).Distinct(StringComparer.Ordinal).ToArray();
                tell(string.Create(CultureInfo.InvariantCulture,
                    $"{kind.Key} and {all.Length - 1} more like it: {string.Join(", ", concerned.Take(8))}{(concerned.Length > 8 ? ", …" : "")}"));
            }
        }
    }
}
