using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>A row whose reading is the start concentration: a line of text says so of its code or of the controls, or its contact time is zero where nothing else gives C0.</summary>
internal static class StartRow
{
    /// <summary>Gives it its role, where that is not declined.</summary>
    /// <param name="rows">The rows, with their codes and roles.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Settle(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var vessels = rows.Where(r => r is { IsLeftOut: false, Code: not null, Role: null or SampleRole.Vessel or SampleRole.Control } && r.Signals.Exists(s => s.Column.Property == SpectrometryProperties.ReportedConcentration || s.Column.Property == SpectrometryProperties.Absorbance)).ToList();
        if (vessels.Count < 3 || rows.Exists(r => r.Role == SampleRole.StartSolution) || vessels.Exists(r => r.Facts.ContainsKey(BatchProperties.InitialConcentration.Name) || source.Known.GetValueOrDefault(r.Code!)?.Fact(BatchProperties.InitialConcentration) is not null))
            return;
        if (source.Layout.Notes.Lines.FirstOrDefault(IsOfControls) is { } line && vessels.Where(r => r.Role == SampleRole.Control).ToList() is { Count: > 0 } controls)
        {
            if (source.Talk.Assume("start-row", Codes.Ambiguous, $"C0 is the mean of {string.Join(", ", controls.Take(4).Select(r => r.Written))}, as a line says: “{line}”.", ["start-solution", "vessel"], [.. controls.Select(r => r.Written)]) != "start-solution")
                return;
            foreach (var control in controls)
                Become(control);
            return;
        }

        if (source.Layout.Notes.All.Any(n => n.Property == BatchProperties.InitialConcentration))
            return;
        var (start, why) = (vessels.Find(r => source.Layout.Notes.Lines.Any(l => IsNamedStart(l, r.Written))), "a line says so");
        if (start is null)
        {
            List<SampleRow> zero = [.. vessels.Where(r => r.Facts.GetValueOrDefault(BatchProperties.ContactTime.Name)?.Value is 0)];
            if (zero is not [var only] || vessels.Exists(r => r != only && Highest(r) > Highest(only)))
                return;
            (start, why) = (only, "its contact time is zero and its reading the highest");
        }

        if (source.Talk.Assume("start-row", Codes.Ambiguous, $"{start.Written} is taken as the start solution, so its reading is C0: {why}.", ["start-solution", "vessel"], start.Written) != "start-solution")
            return;
        Become(start);
    }

    private static void Become(SampleRow row)
    {
        row.Role = SampleRole.StartSolution;
        row.Facts = row.Facts.Remove(BatchProperties.Mass.Name).Remove(BatchProperties.ContactTime.Name);
    }

    // "Use the mean of the controls (no powder) as C0".
    private static bool IsOfControls(string line)
        => Lexicon.Of(line).Contains(HeadingWord.Control) && line.Split([' ', ',', ';', ':', '(', ')', '=', '.'], StringSplitOptions.RemoveEmptyEntries).Any(w => w is "C0" or "c0" or "Co" or "C₀");

    private static double Highest(SampleRow row) => row.Signals.Select(s => s.Readout.Value * (row.Dilution ?? 1)).OfType<double>().DefaultIfEmpty(0).Max();

    // "B0 without powder, its reading is C0".
    private static bool IsNamedStart(string line, string code)
    {
        var words = line.Split([' ', ',', ';', ':', '(', ')', '='], StringSplitOptions.RemoveEmptyEntries);
        return code.Length > 1 && words.Contains(code, StringComparer.Ordinal) && (words.Any(w => w is "C0" or "c0" or "Co" or "C₀") || Lexicon.Of(line) is var said && said.Contains(HeadingWord.Start) && said.Contains(HeadingWord.Liquid));
    }
}
