using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>What new samples are for, where no column says it: told from a line of text, their labels, their remarks, what they read, and what was weighed.</summary>
internal sealed class SampleRoles
{
    /// <summary>A reading below this share of the highest is none of a vessel's kin.</summary>
    private const double NextToNothing = 0.02;

    private readonly TableSource source;
    private readonly bool describes;
    private readonly Column? mass;
    private readonly bool weighed;
    private readonly double highest;
    private readonly Dictionary<string, string> explained;
    private readonly List<string> guessed = [];

    /// <summary>For one table.</summary>
    /// <param name="source">The table.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="rows">Its rows.</param>
    /// <param name="describes">True for a sheet that says how vessels were made up.</param>
    public SampleRoles(TableSource source, ImmutableArray<Column> columns, List<SampleRow> rows, bool describes)
    {
        (this.source, this.describes) = (source, describes);
        mass = columns.FirstOrDefault(c => c.Use == ColumnUse.Fact && c.Property == BatchProperties.Mass);
        weighed = rows.Exists(r => r.Facts.GetValueOrDefault(BatchProperties.Mass.Name)?.Value > 0);
        highest = rows.Select(Read).DefaultIfEmpty(0).Max();
        explained = ExplainedIn(source.Layout.Notes.Lines);
    }

    /// <summary>What was told, each in words.</summary>
    public List<string> Told => guessed;

    /// <summary>Gives a row the role that a line of text explains its label with, or leaves it out.</summary>
    /// <param name="row">A row without a role.</param>
    public void Explain(SampleRow row)
    {
        if (row.Role is null && (explained.GetValueOrDefault(row.Written) ?? explained.GetValueOrDefault(row.Written.TrimEnd("0123456789 -_".ToCharArray()))) is { } words)
            Explain(row, words);
    }

    /// <summary>Notes that a row is the recovery check of another.</summary>
    /// <param name="row">The row.</param>
    /// <param name="vessel">The other.</param>
    public void TellSpike(SampleRow row, string vessel) => guessed.Add($"{row.Written} as spike of {vessel}");

    /// <summary>Gives a row of a sample that the study does not know the role that everything about it tells.</summary>
    /// <param name="row">The row.</param>
    public void Tell(SampleRow row)
    {
        // "sample" is what many a list of a run says of everything; the label knows better.
        if (row.Role == SampleRole.Vessel && !describes && RoleWords.Guess(row.Written) is SampleRole.StartSolution)
            row.Role = null;
        if (row.Role is null && RoleWords.Guess(row.Written) is { } guess)
        {
            row.Role = guess;
            guessed.Add($"{row.Written} as {Words(guess)}");
        }
        row.Role ??= row.Facts.ContainsKey(SpectrometryProperties.StandardConcentration.Name) && !row.Facts.ContainsKey(BatchProperties.Mass.Name) ? SampleRole.Standard : null;
        if (row.Role is SampleRole.Standard or SampleRole.CheckStandard && !row.Facts.ContainsKey(SpectrometryProperties.StandardConcentration.Name) && StandardIn(row.Written) is { } level)
            row.Facts = row.Facts.SetItem(SpectrometryProperties.StandardConcentration.Name, new Fact(SpectrometryProperties.StandardConcentration.Name, level, null, null, null, row.Written, source.At(row.Row.Number, null)));
        // "controllo, 4 mg/L" among standards is read to check them, and holds no vessel's water.
        if (row.Role == SampleRole.Control && row.Facts.ContainsKey(SpectrometryProperties.StandardConcentration.Name) && !row.Facts.ContainsKey(BatchProperties.Volume.Name))
            row.Role = SampleRole.CheckStandard;
        if (row.Role is null && !describes && row.Facts.GetValueOrDefault(SampleProperties.Remark.Name)?.Words is { } said && Lexicon.Of(said) is var solution && solution.Contains(HeadingWord.Start) && solution.Overlaps([HeadingWord.Liquid, HeadingWord.Sorbent]))
        {
            row.Role = SampleRole.StartSolution;
            guessed.Add($"{row.Written} as start solution, by its remark");
        }

        if (row.Role is null && !describes && ReadsAsItIsCalled(row))
        {
            row.Role = SampleRole.CheckStandard;
            guessed.Add($"{row.Written} as check standard, since it reads what it is called");
        }

        if (row.Role is null && !describes && RoleWords.SaysWaterAlone(row.Written) && ReadsNextToNothing(row))
        {
            row.Role = SampleRole.Blank;
            guessed.Add($"{row.Written} as blank, since it is water and reads next to nothing");
        }

        if (row.Role is null && source.IsOfStartSolutions && !describes)
            row.Role = SampleRole.StartSolution;
        if (row.Role is null && source.IsOfStandards)
            row.Role = SampleRole.Standard;
        // Where others were weighed and this was not, its remark says why.
        if (row.Role is null && weighed && row.Facts.GetValueOrDefault(BatchProperties.Mass.Name) is not { Value: not 0 } && row.Facts.GetValueOrDefault(SampleProperties.Remark.Name)?.Words is { } remark && RoleWords.SaysWithoutPowder(remark))
        {
            row.Role = SampleRole.Control;
            row.Facts = row.Facts.Remove(BatchProperties.Mass.Name);
            guessed.Add($"{row.Written} as control, by its remark");
        }

        if (row.Role is null && (row.Facts.GetValueOrDefault(BatchProperties.Mass.Name)?.Value is 0 || (weighed && mass is not null && RoleWords.SaysNothing(row.Row.At(mass.Index).Text))))
        {
            row.Role = SampleRole.Control;
            guessed.Add($"{row.Written} as control, since it holds no powder");
        }
    }

    // "DI = rinse water, ignore": what a line of text says that a label stands for.
    private static Dictionary<string, string> ExplainedIn(IEnumerable<string> lines)
    {
        var explained = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var parts in lines.SelectMany(l => l.Split(['.', ';'], StringSplitOptions.TrimEntries)).Select(c => c.Split(['='], 2, StringSplitOptions.TrimEntries)).Where(p => p.Length == 2 && p[1].Any(char.IsLetter)))
            explained.TryAdd(parts[0].TrimStart('#', '*', '!', ' '), parts[1]);
        return explained;
    }

    private void Explain(SampleRow row, string words)
    {
        var said = Lexicon.Of(words);
        if (NotToUse.Says(words))
        {
            row.IsLeftOut = source.Talk.Assume("unused:" + row.Written, Codes.OddCell, $"{row.Written} is left out, as a line says: “{words}”.", ["leave-out", "take"], row.Written) == "leave-out";
            return;
        }

        // "KO-10 = control solution of 10 mg/L": what holds a known amount checks the instrument, not the powder.
        row.Role = said.Contains(HeadingWord.Check) || (said.Contains(HeadingWord.Control) && AmountLines.HoldsAmount(words)) ? SampleRole.CheckStandard : said.Contains(HeadingWord.Control) ? SampleRole.Control
            : said.Contains(HeadingWord.Start) && said.Contains(HeadingWord.Liquid) ? SampleRole.StartSolution : said.Contains(HeadingWord.Blank) ? SampleRole.Blank : null;
        if (row.Role is { } role)
            guessed.Add($"{row.Written} as {Words(role)}, as a line says");
    }

    // "Kontrolle 1000" that reads 1008.
    private bool ReadsAsItIsCalled(SampleRow row)
    {
        if (!Lexicon.Of(row.Written).Overlaps([HeadingWord.Control, HeadingWord.Check]) || row.Signals.Count == 0 || row.Written.Split(' ')[^1] is not { Length: > 1 } label
            || !double.TryParse(label, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var called) || called <= 0)
            return false;
        return CellText.Read(row.Signals[0].Cell.Text, row.Signals[0].Cell.Kind == CellKind.Number ? DecimalMark.Point : source.Mark) is CellText.Number read && Tolerances.SameSolution(read.Value, called);
    }

    // Water with the metal in it, kept without powder, would read as a start does.
    private bool ReadsNextToNothing(SampleRow row) => row.Signals.Exists(s => s.Readout.Value is not null) && Read(row) <= NextToNothing * highest;

    private static double Read(SampleRow row) => row.Signals.Select(s => s.Readout.Value).OfType<double>().DefaultIfEmpty(0).Max();

    // "STD 0.25 mg/L" says how much it holds.
    private static double? StandardIn(string label)
    {
        var at = label.IndexOf(' ', StringComparison.Ordinal);
        return at > 0 && CellParts.Split(label[at..].Trim()) is (var number, UnitText.Known unit) && CellText.Read(number, null) is CellText.Number value
            ? UnitBridge.Between(unit, SpectrometryProperties.StandardConcentration, null)?.Convert(value.Value) : null;
    }

    private static string Words(SampleRole role) => role switch
    {
        SampleRole.CheckStandard => "check standard",
        SampleRole.StartSolution => "start solution",
        _ => role.ToString().ToLowerInvariant(),
    };
}
