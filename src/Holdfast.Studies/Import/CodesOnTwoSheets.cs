using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>The same codes on two sheets of one file: the same vessels where most of what both say agrees, others where it does not, and asked about where results alone differ.</summary>
/// <param name="source">The later table.</param>
/// <param name="known">Codes of the study.</param>
internal sealed class CodesOnTwoSheets(TableSource source, CodeIndex known)
{
    /// <summary>True where the rows are other vessels than those of the same codes.</summary>
    /// <param name="rows">The rows.</param>
    public bool AreOthers(List<SampleRow> rows)
    {
        if (source.Tables < 2 || AreReadingsAlone(rows) || !Differ(rows) || AreWorkedOutTwice(rows))
            return false;
        AskWhoseMasses(rows);
        return true;
    }

    // "tube | Ag after" as run 1 and run 2, beside one sheet that says how the tubes were made up: the same tubes, read again.
    private bool AreReadingsAlone(List<SampleRow> rows)
        => source.Layout.Notes.All.IsEmpty && rows.TrueForAll(r => r.Facts.Values.All(f => f.Value is null) && (known.Find(r.Written) is not [var code] || source.Known[code].Fact(BatchProperties.Mass)?.Origin.Original == source.Sha256));

    // The same codes on another sheet of this file, with other masses or results, are other vessels.
    private bool Differ(List<SampleRow> rows)
    {
        var (same, other, isOtherByReadingAlone) = (0, 0, true);
        var readHere = source.Study.Readings.Where(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name && r.Origin.Original == source.Sha256).Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            if (known.Find(row.Written) is not [var code] || source.Known[code] is not { Role: SampleRole.Vessel or SampleRole.Control } sample || sample.Facts.Values.All(f => f.Origin.Original != source.Sha256))
                continue;
            var facts = row.Facts.Values.Where(f => f.Value is not null && sample.Facts.GetValueOrDefault(f.Property)?.Value is not null).ToList();
            var differs = facts.Exists(f => !WrittenRounder.Agree(f, sample.Facts[f.Property]));
            var isReadAgain = readHere.Contains(code) && row.Signals.Exists(s => s.Column.Property == SpectrometryProperties.ReportedConcentration);
            isOtherByReadingAlone &= !differs && facts.Exists(f => f.Property == BatchProperties.Mass.Name);
            other += differs || isReadAgain ? 1 : 0;
            same += facts.Count > 0 && !differs && !isReadAgain ? 1 : 0;
        }

        // Weighed alike and filled alike, under one of many codes that are new: a vessel of before, read again.
        if (isOtherByReadingAlone && rows.Exists(r => known.Find(r.Written).Count == 0) && source.Layout.Notes.All.IsEmpty)
            return false;
        // A digit that differs in one row of many is a slip, and is asked about as one.
        return other > 0 && other >= same;
    }

    // Two sheets of readings with the same codes, and one list of weights: whose they are is not said.
    private void AskWhoseMasses(List<SampleRow> rows)
    {
        var weighed = rows.Where(r => !r.IsLeftOut && r.Signals.Count > 0 && !r.Facts.ContainsKey(BatchProperties.Mass.Name) && known.Find(r.Written) is [var code] && source.Known[code].Fact(BatchProperties.Mass) is { Origin.Original: { } file } && file != source.Sha256).ToList();
        if (weighed.Count == 0 || source.Layout.Grid.Sheet is not { } sheet || source.Layout.Notes.All.Any(n => n.Property == BatchProperties.Mass || n.Property == BatchProperties.Dose))
            return;
        var mass = source.Known[known.Find(weighed[0].Written)[0]].Fact(BatchProperties.Mass)!;
        var answer = source.Talk.Ask("whose-masses", Codes.Ambiguous, $"{mass.Origin.FileName} holds each mass once ({mass.Origin.Column}: {mass.Written} for {weighed[0].Written}), and {weighed[0].Written} stands in {sheet} and in another sheet with other values. Do the masses hold for the first sheet alone?", ["first-alone", "leave-out"], [.. weighed.Select(r => r.Written)]);
        foreach (var row in weighed)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
        }
    }

    // "Results" and "Results (2)": the same tubes worked out twice, with other end concentrations and nothing else that would make them others.
    private bool AreWorkedOutTwice(List<SampleRow> rows)
    {
        var own = new[] { BatchProperties.ReportedRemoval.Name, BatchProperties.ReportedUptake.Name };
        var again = rows.Where(r => !r.IsLeftOut && r.Signals.Count > 0 && own.Any(r.Facts.ContainsKey) && known.Find(r.Written) is [var code] && source.Known[code] is var sample && own.Any(sample.Facts.ContainsKey)
            && r.Facts.Values.All(f => own.Contains(f.Property) || f.Value is null || sample.Facts.GetValueOrDefault(f.Property) is not { Value: not null } before || WrittenRounder.Agree(f, before))).ToList();
        if (again.Count == 0 || again.Count * 2 < rows.Count || source.Layout.Notes.All.Length > 0 || source.Layout.Grid.Sheet is not { } sheet)
            return false;
        var first = again[0];
        var earlier = source.Study.Readings.Last(r => r.Sample == known.Find(first.Written)[0]);
        var answer = source.Talk.Ask("worked-out-twice:" + sheet, Codes.Duplicate, $"{first.Written} and {Ordinal.Text(again.Count - 1)} more stand in {earlier.Origin.Sheet} ({earlier.Written}) and in {sheet} ({first.Signals[0].Cell.Text}) with different {first.Signals[0].Column.Heading}. Leave {sheet} out, or are these other vessels? To use {sheet} instead, leave {earlier.Origin.Sheet} out.",
            ["leave-out", "other-vessels"], [.. again.Select(r => r.Written)]);
        if (answer is "other-vessels")
            return false;
        foreach (var row in rows)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is not null;
            // One question at a time: what follows from other readings differs as they do.
            row.Facts = row.Facts.RemoveRange(own);
        }

        return true;
    }
}
