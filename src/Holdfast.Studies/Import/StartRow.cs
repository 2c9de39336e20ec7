using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>A row whose reading is the start concentration: a line of text says so of its code or of the controls, or its contact time is zero where nothing else gives C0.</summary>
internal static class StartRow
{
    private const int FewestVessels = 3;

    /// <summary>Gives it its role, where that is not declined.</summary>
    /// <param name="rows">The rows, with their codes and roles.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Settle(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var vessels = rows.Where(r => r is { IsLeftOut: false, Code: not null, Role: null or SampleRole.Vessel or SampleRole.Control } && r.Signals.Exists(s => s.Column.Property == SpectrometryProperties.ReportedConcentration || s.Column.Property == SpectrometryProperties.Absorbance)).ToList();
        if (vessels.Count < FewestVessels || rows.Exists(r => r.Role == SampleRole.StartSolution) || vessels.Exists(r => HasStart(r, r.Code!, source)))
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
        List<SampleRow> zero = [.. vessels.Where(r => r.Facts.GetValueOrDefault(BatchProperties.ContactTime.Name)?.Value is 0)];
        // "S0 (no powder)", read with the others: the solution as it went in, where nothing else says what that was.
        if (zero.Count == 0 && vessels.Where(r => r.Role == SampleRole.Control).ToList() is { Count: > 0 } without && IsNumberedNought(without) && without.TrueForAll(c => vessels.TrueForAll(r => r.Role == SampleRole.Control || Highest(r) <= Highest(c))))
            Take(without, "held no powder, and nothing else gives the start", source);
        if (zero is [var start] && !vessels.Exists(r => r != start && Highest(r) > Highest(start)))
            Take([start], "its contact time is zero and its reading the highest", source);
    }

    /// <summary>Gives their role to rows that a line of text, or a remark of the vessel sheet, names as start solutions; before the others are looked up by their codes.</summary>
    /// <param name="rows">The rows as written.</param>
    /// <param name="source">The table.</param>
    public static void SaidInWords(List<SampleRow> rows, TableSource source)
    {
        var read = rows.Where(r => r is { IsLeftOut: false, Role: null or SampleRole.Vessel } && r.Signals.Count > 0).ToList();
        if (read.Count < FewestVessels || rows.Exists(r => r.Role == SampleRole.StartSolution) || read.Exists(r => HasStart(r, r.Written, source)) || source.Layout.Notes.All.Any(n => n.Property == BatchProperties.InitialConcentration))
            return;
        var said = source.Layout.Notes.Lines.Concat(source.Known.Values.Select(s => s.Words(SampleProperties.Remark)).OfType<string>().Distinct(StringComparer.Ordinal)).SelectMany(l => l.Split([". ", "; "], StringSplitOptions.TrimEntries));
        foreach (var line in said)
        {
            List<SampleRow> named = [.. read.Where(r => IsNamedStart(line, r.Written))];
            if (named.Count == 0 || named.Count == read.Count)
                continue;
            Take(named, $"“{line}”", source);
            return;
        }
    }

    private static void Take(List<SampleRow> rows, string why, TableSource source)
    {
        var names = string.Join(" and ", rows.Select(r => r.Written).Distinct(StringComparer.Ordinal).Take(4));
        if (source.Talk.Assume("start-row", Codes.Ambiguous, $"{names} {(rows.Count == 1 ? "is taken as the start solution, so its reading is C0" : "are taken as the start solution, so their mean is C0")}: {why}.", ["start-solution", "vessel"], [.. rows.Select(r => r.Written)]) != "start-solution")
            return;
        rows.ForEach(Become);
    }

    private static bool HasStart(SampleRow row, string code, TableSource source)
        => row.Facts.ContainsKey(BatchProperties.InitialConcentration.Name) || source.Known.GetValueOrDefault(code)?.Fact(BatchProperties.InitialConcentration) is not null;

    private static void Become(SampleRow row)
    {
        row.Role = SampleRole.StartSolution;
        row.Facts = row.Facts.Remove(BatchProperties.Mass.Name).Remove(BatchProperties.ContactTime.Name);
    }

    // "Use the mean of the controls (no powder) as C0".
    private static bool IsOfControls(string line)
        => Lexicon.Of(line).Contains(HeadingWord.Control) && line.Split([' ', ',', ';', ':', '(', ')', '=', '.'], StringSplitOptions.RemoveEmptyEntries).Any(w => w is "C0" or "c0" or "Co" or "C₀");

    // "S0", "0 (no powder)", "K0-a": counted from nought, before the vessels.
    private static bool IsNumberedNought(List<SampleRow> rows) => rows.TrueForAll(r => Words(r.Written)[0].TrimStart("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz-_".ToCharArray()) is ['0', .. var rest] && !rest.Any(char.IsDigit));

    private static double Highest(SampleRow row) => row.Signals.Select(s => s.Readout.Value * (row.Dilution ?? 1)).OfType<double>().DefaultIfEmpty(0).Max();

    // "B0 without powder, its reading is C0", "S0-a = start solution", "start solution of all: S0-a and S0-b"; but not "read before S1".
    private static bool IsNamedStart(string line, string code)
    {
        if (code.Length < 2)
            return false;
        if (line.Split([':', '='], 2) is [var left, var right])
            return (Holds(left, code) && SaysStart(right)) || (Holds(right, code) && SaysStart(left));
        return line.StartsWith(code, StringComparison.Ordinal) && Holds(line, code) && SaysStart(line);
    }

    private static bool Holds(string text, string code) => Words(text).Contains(code, StringComparer.Ordinal);

    private static bool SaysStart(string text) => Words(text).Any(w => w is "C0" or "c0" or "Co" or "C₀") || (Lexicon.Of(text) is var said && said.Contains(HeadingWord.Start) && said.Contains(HeadingWord.Liquid));

    private static string[] Words(string text) => text.Split([' ', ',', ';', ':', '(', ')', '='], StringSplitOptions.RemoveEmptyEntries);
}
