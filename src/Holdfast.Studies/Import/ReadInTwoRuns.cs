using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>A vessel whose end concentration stands in two tables with values that no repeat explains: which holds is asked, never averaged.</summary>
internal static class ReadInTwoRuns
{
    /// <summary>Asks which table holds.</summary>
    /// <param name="rows">The rows of the later table, with their codes and dilutions.</param>
    /// <param name="source">The later table.</param>
    public static void Ask(List<SampleRow> rows, TableSource source)
    {
        var name = SpectrometryProperties.ReportedConcentration.Name;
        var earlier = source.Study.Readings.Where(r => r.Signal == name && r.Value is not null && !source.Study.IsStruck(r)).ToLookup(r => r.Sample, StringComparer.Ordinal);
        var least = SameCodeTwice.OfTheLargest * earlier.SelectMany(g => g).Select(InTheVessel).DefaultIfEmpty(0).Max();
        var differing = rows.Where(r => r is { IsLeftOut: false, IsUndecided: false, Code: { } code } && source.Known.GetValueOrDefault(code)?.Role is SampleRole.Vessel or SampleRole.Control && earlier[code].Any()
            && Mean(r) is { } now && earlier[code].Average(InTheVessel) is var before && Math.Abs(now - before) > Math.Max(SameCodeTwice.SameReadingWithin * Math.Max(now, before), least)).ToList();
        if (differing.Count == 0)
            return;
        var (first, read) = (differing[0], earlier[differing[0].Code!].First());
        var answer = source.Talk.Ask("read-again", Codes.Duplicate, $"{first.Code}{(differing.Count > 1 ? $" and {Ordinal.Text(differing.Count - 1)} more were" : " was")} read before ({read.Origin}: {read.Written}) and here with another result ({first.Signals[0].Cell.Text}), too far apart for a repeat. "
            + "Does the earlier hold, or count both? To use the later alone, leave the rows of the earlier out.", ["earlier", "both"], [.. differing.Select(r => r.Code!)]);
        foreach (var row in differing)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "earlier";
        }
    }

    private static double InTheVessel(Reading reading) => reading.Value!.Value * reading.Dilution;

    private static double? Mean(SampleRow row)
    {
        var values = row.Signals.Where(s => s.Column.Property == SpectrometryProperties.ReportedConcentration && s.Readout.Value is not null).Select(s => s.Readout.Value!.Value * (row.Dilution ?? 1)).ToList();
        return values.Count == 0 ? null : values.Average();
    }
}
