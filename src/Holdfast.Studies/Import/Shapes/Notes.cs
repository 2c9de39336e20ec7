using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;
using W = Holdfast.Studies.Import.Headings.HeadingWord;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>What the lines above and below a table say that holds for all its rows.</summary>
internal sealed partial class Notes
{
    private static readonly ImmutableArray<Property> Settings =
    [
        BatchProperties.Volume, BatchProperties.Mass, BatchProperties.InitialConcentration, BatchProperties.ContactTime, BatchProperties.Temperature,
        BatchProperties.StartPh, BatchProperties.EndPh, BatchProperties.Dose, BatchProperties.StirringSpeed,
    ];

    // A cuvette, a loop, a titrant hold amounts of their own, none of them a vessel's.
    private static readonly HashSet<string> OfTheInstrument = new(("cuvette cuvettes cuvet kuvette kuvetten cubeta cubetas cuve cuves cuvetta kuweta kyvett kyveta kuvet titrant titrans titrante titulant titration titriert titulacion "
        + "titolante loop injection injected injektion inyeccion injecao iniezione autosampler").Split(' '), StringComparer.Ordinal);

    /// <summary>Words that say that a line is of every vessel.</summary>
    internal static readonly HashSet<string> Each = new("all every each per alle jede jedes jeder je chaque toutes tous todos todas cada tutti tutte ogni elke kazda kazdy".Split(' '), StringComparer.Ordinal);

    private readonly List<NotedSetting> settings = [];
    private readonly List<NotedSetting> drawn = [];
    private readonly List<NotedUnit> units = [];
    private readonly List<string> lines = [];

    /// <summary>Nothing is noted.</summary>
    public static Notes None { get; } = new();

    /// <summary>Settings, each once; where two lines differ the property is in <see cref="Contradicted"/>.</summary>
    public ImmutableArray<NotedSetting> All => [.. Stated.GroupBy(s => s.Property).Where(g => g.Select(s => s.Value).Distinct().Count() == 1).Select(g => g.First())];

    /// <summary>Properties for which two lines state different values.</summary>
    public ImmutableArray<NotedSetting> Contradicted => [.. Stated.GroupBy(s => s.Property).Where(g => g.Select(s => s.Value).Distinct().Count() > 1).SelectMany(g => g)];

    /// <summary>The volume that a line says was drawn each time, where another is the vessel's; null for none.</summary>
    public NotedSetting? Drawn => drawn.Count > 0 && settings.Exists(s => s.Property == BatchProperties.Volume) ? drawn[0] : null;

    /// <summary>True for a volume that was drawn from a vessel, whatever it holds.</summary>
    /// <param name="note">One of <see cref="All"/>.</param>
    public bool IsDrawn(NotedSetting note) => drawn.Contains(note);

    // "25 mL aliquots" are what a vessel holds, unless a line states that in other words.
    private IEnumerable<NotedSetting> Stated => settings.Exists(s => s.Property == BatchProperties.Volume) ? settings : settings.Concat(drawn);

    /// <summary>What the last line says that tells whether results hold the dilution already; null for none, or where a line doubts it.</summary>
    public NotedDilution? DilutionApplied => IsDilutionDoubted ? null : dilutionApplied;

    private NotedDilution? dilutionApplied;
    /// <summary>True where a line doubts whether results hold the dilution.</summary>
    public bool IsDilutionDoubted { get; private set; }

    /// <summary>What the last line says that states a factor ("1 mL to 10 mL", "factor 20"); null for none.</summary>
    public NotedDilution? DilutionFactor { get; private set; }

    /// <summary>The time of the day at which a line says that contact began, as written ("09:15"), or null.</summary>
    public string? StartClock { get; private set; }

    /// <summary>The absorbance of a blank that a line states for subtraction, with the line; null for none.</summary>
    public (double Value, string Line)? Blank { get; private set; }

    /// <summary>The lines as written.</summary>
    public ImmutableArray<string> Lines => [.. lines];

    /// <summary>A calibration line that a line of text states, or null.</summary>
    public StatedLine? Line { get; private set; }

    /// <summary>Powder per volume of a suspension that a line states, mg/mL, with its row; null for none.</summary>
    public (double Strength, int Row)? Suspension { get; private set; }

    /// <summary>The unit that a line states for this kind of column, or null.</summary>
    public NotedUnit? UnitFor(UnitKind kind) => units.Find(u => u.Kind == kind);

    /// <summary>Reads lines.</summary>
    /// <param name="rows">Rows that are no part of a table.</param>
    /// <param name="analyte">The study's element, or null.</param>
    public static Notes Of(IEnumerable<GridRow> rows, string? analyte = null)
    {
        var notes = new Notes();
        foreach (var row in rows)
            notes.Read(row, analyte);
        return notes;
    }

    /// <summary>These and what another sheet says; a table's own lines come first.</summary>
    public Notes Or(Notes others)
    {
        var both = new Notes { dilutionApplied = dilutionApplied ?? others.dilutionApplied, IsDilutionDoubted = IsDilutionDoubted || others.IsDilutionDoubted, DilutionFactor = DilutionFactor ?? others.DilutionFactor, Line = Line ?? others.Line, StartClock = StartClock ?? others.StartClock, Blank = Blank ?? others.Blank, Suspension = Suspension ?? others.Suspension };
        both.lines.AddRange(lines.Concat(others.lines));
        both.settings.AddRange(settings);
        both.drawn.AddRange(drawn.Concat(others.drawn));
        both.settings.AddRange(others.settings.Where(o => !settings.Exists(s => s.Property == o.Property)));
        both.units.AddRange(units);
        both.units.AddRange(others.units);
        return both;
    }

    /// <summary>What is told, in words: settings, and the line that states a dilution.</summary>
    public ImmutableArray<string> Statements => [.. All.Select(n => $"{n.Property.Title} {n.Written}"), .. DilutionFactor is { } dilution ? [$"“{dilution.Written}”"] : Array.Empty<string>()];

    /// <summary>True where nothing is told that vessels or readings need.</summary>
    public bool IsEmpty => Statements.IsEmpty;

    /// <summary>The same, as said in another file than the table's.</summary>
    /// <param name="name">Name of that file.</param>
    /// <param name="sha256">Its fingerprint.</param>
    public Notes In(string name, string sha256)
    {
        var notes = new Notes().Or(this);
        for (var i = 0; i < notes.settings.Count; i++)
            notes.settings[i] = notes.settings[i] with { File = (name, sha256) };
        return notes;
    }

    /// <summary>The same without what vessels hold: what the lines say of the readings.</summary>
    public Notes OfReadings()
    {
        var notes = new Notes().Or(this);
        notes.settings.Clear();
        notes.drawn.Clear();
        return notes;
    }

    /// <summary>These and what another file says of the same vessels: where the two differ, both are stated.</summary>
    /// <param name="others">What the other file says.</param>
    public Notes And(Notes others)
    {
        var both = Or(others);
        both.settings.AddRange(others.settings.Where(o => settings.Exists(s => s.Property == o.Property) && !settings.Exists(s => s.Property == o.Property && s.Value.Equals(o.Value))));
        return both;
    }

    private void Read(GridRow row, string? analyte)
    {
        var cells = row.Cells.Where(c => !c.IsBlank).ToList();
        if (cells.Count == 0)
            return;
        // Words in several cells are clauses of their own, cut at their marks or written side by side; a number belongs to the words before it.
        var line = string.Join(cells.Skip(1).Any(TableLayout.IsNumberLike) ? " " : "; ", cells.Select(c => c.Text));
        if (Lexicon.Of(line).Contains(W.Planned))
            return;
        lines.Add(line);
        Line ??= StatedLine.In(line, row.Number);
        if (Clock().Matches(line) is [var clock] && Lexicon.Of(line) is var said && (said.Contains(W.Start) || said.Contains(W.Contact)))
            StartClock ??= clock.Value;
        if (Blank is null && Lexicon.Of(line).Contains(W.Blank) && BlankNoted().Match(line) is { Success: true } b && CellText.Read(b.Groups["number"].Value, b.Groups["number"].Value.Contains(',', StringComparison.Ordinal) ? DecimalMark.Comma : DecimalMark.Point) is CellText.Number blank)
            Blank = (blank.Value, line);
        var dilution = NotedDilution.In(line);
        dilutionApplied = dilution?.Applied is null ? dilutionApplied : dilution;
        IsDilutionDoubted |= NotedDilution.IsDoubt(line);
        DilutionFactor = dilution?.Factor is null ? DilutionFactor : dilution;
        // "Element | Cd | Unit | mg/L": pairs along a line.
        for (var i = 1; i + 1 < cells.Count; i++)
        {
            if (Lexicon.Tokens(cells[i].Text) is [var key] && Lexicon.OfToken(key).Contains(W.Unit))
                UnitStated(row.Number, $"{cells[i].Text}: {cells[i + 1].Text}");
        }

        // "Shaken for 24 h | 25 °C": there the first cell says something of its own.
        var isLabelled = cells.Count is >= 2 and <= 4 && char.IsLetter(cells[0].Text[0]) && !AmountLines.HoldsAmount(cells[0].Text);
        if (isLabelled && Pair(row.Number, cells, analyte))
            return;
        // "Read delay | 15 s": what is no setting by its label is none by its unit alone.
        if (isLabelled && cells.Count == 2 && CellParts.Split(cells[1].Text) is not null)
        {
            Clause(row.Number, $"{cells[0].Text} {cells[1].Text}", analyte);
            return;
        }

        foreach (var cell in cells)
        {
            foreach (var clause in Clauses().Split(WholeKey(cell.Text)))
                Clause(row.Number, clause, analyte);
        }
    }

    // "Cd at the start, measured: 35.2 mg/L": a comma before the colon parts no clauses.
    private static string WholeKey(string text)
        => text.IndexOfAny([':', '=']) is > 0 and var mark && !text.AsSpan(0, mark).ContainsAnyInRange('0', '9') ? text[..mark].Replace(',', ' ') + text[mark..] : text;

    // "Volume (mL) | 30", "C0 | 25 | mg/L", "Temperature: | 25 °C".
    private bool Pair(int row, List<Cell> cells, string? analyte)
    {
        var heading = HeadingReading.Of(cells[0].Text.TrimEnd(':', '=', ' '), cells.Count > 2 ? cells[2].Text : null);
        var (text, inCell) = CellParts.Split(cells[1].Text) is var (number, stated) ? (number, stated) : (cells[1].Text, null);
        if (CellText.Read(text, cells[1].Kind == CellKind.Number ? DecimalMark.Point : null) is not CellText.Number value)
        {
            // "Concentration unit | mg/L"
            if (heading.HasAny(W.Unit, W.Concentration, W.Mass, W.Volume, W.Time))
                UnitStated(row, cells[0].Text + ": " + cells[1].Text);
            return false;
        }

        var reading = inCell is null ? heading : heading with { Unit = inCell };
        return PropertyOf(reading) is { } property && Add(property, value.Value, reading.Unit,
            string.Join(' ', cells.Skip(1).Select(c => c.Text)) + (cells.Count == 2 && inCell is null && reading.Unit is UnitText.Known { Unit: { IsOne: false } unit } ? " " + unit.Plain : ""), row, analyte, isStated: true);
    }

    /// <summary>The setting that a label means, "start concentration", "V"; null for none.</summary>
    /// <param name="heading">The label.</param>
    public static Property? PropertyOf(HeadingReading heading)
    {
        if (heading.HasAny(W.Preparing, W.Limit, W.Standard, W.Blank, W.Dilution) && !heading.Has(W.Dose))
            return null;
        var listed = HeadingWords.Properties(heading.Key).FirstOrDefault(Settings.Contains);
        if (listed is not null && (heading.Unit is UnitText.Absent or UnitText.Ambiguous || listed.Unit.Length == 0 || heading.Unit is UnitText.Known known && UnitBridge.Between(known, listed, null) is not null))
            return listed;
        return ColumnGuess.Of(heading, default) is { Use: ColumnUse.Fact or ColumnUse.Signal, Property: { } guess } && Settings.Contains(guess) ? guess : null;
    }

    private void Clause(int row, string said, string? analyte)
    {
        // "one hour on the shaker"
        var clause = Counted().Replace(said, m => $"{History.Ordinal.Text((Array.IndexOf(Numerals, m.Groups["count"].Value.ToLowerInvariant()) / NumeralsOfEach) + 1)} {m.Groups["unit"].Value}");
        UnitStated(row, clause);
        if (Ph().Match(clause) is { Success: true } ph && CellText.Read(ph.Groups["number"].Value, null) is CellText.Number level)
            Add(Lexicon.Of(clause).Contains(W.End) ? BatchProperties.EndPh : BatchProperties.StartPh, level.Value, new UnitText.Absent(), ph.Groups["number"].Value, row, analyte, isStated: true);
        // What a match holds behind its unit are words about it, and about the next amount.
        var amounts = Amounts().Matches(clause).Select(m => (Match: m, Read: UnitOf(m.Groups["unit"].Value))).Select(a => (a.Match, a.Read, End: a.Match.Groups["unit"].Index + (a.Read?.Length ?? 0))).ToList();
        for (var i = 0; i < amounts.Count; i++)
        {
            var (m, read, end) = amounts[i];
            var before = clause[(i == 0 ? 0 : amounts[i - 1].End)..m.Index];
            if (before.TrimEnd().EndsWith('-') || before.TrimEnd().EndsWith('–') || before.TrimEnd().Split(' ')[^1] is "to" or "bis")
                continue;
            var after = clause[end..(i + 1 < amounts.Count ? amounts[i + 1].Match.Index : clause.Length)];
            // "Shaken 3 h, filtered": what follows the comma is another step.
            after = after.IndexOfAny([',', ';']) is >= 0 and var comma ? after[..comma] : after;
            if (after.TrimStart().StartsWith('-') || after.TrimStart().StartsWith('–') || CellText.Read(m.Groups["number"].Value, null) is not CellText.Number number)
                continue;
            if (read is not var (unit, _) || UnitKinds.Of(unit) is UnitKind.None or UnitKind.Other)
                continue;
            var words = Lexicon.Of(before).Union(Lexicon.Of(after)).Union(i == 0 ? [] : Lexicon.Of(clause[..m.Index]).Intersect([W.Preparing, W.Limit, W.Standard, W.Background]));
            if (UnitKinds.Of(unit) == UnitKind.Concentration && unit is UnitText.Known known && lines.Count > 0 && Lexicon.Of(lines[^1]).Contains(W.Suspension) && UnitBridge.Between(known, BatchProperties.Dose, analyte)?.Convert(number.Value) is { } strength)
            {
                // g/L are mg/mL.
                Suspension ??= (strength, row);
                continue;
            }

            // "20 mg/L Cu": what is named behind it is in the liquid.
            if (after.Split([' ', ',', '.', '('], StringSplitOptions.RemoveEmptyEntries).SkipWhile(w => w is "of" or "de" or "di" or "von" or "an" or "van").FirstOrDefault() is { } first && Composition.ElementNames.SymbolOf(first) is not null)
                words = words.Add(W.Metal);
            var spoken = Lexicon.Tokens(before).Concat(Lexicon.Tokens(after)).ToList();
            if (spoken.Exists(OfTheInstrument.Contains))
                continue;
            // "1 mL made up to 5 mL before the flame": volumes of a dilution.
            if (UnitKinds.Of(unit) == UnitKind.Volume && (NotedDilution.IsOfVolumes(clause) || NotedTitration.Speaks(lines[^1])))
                continue;
            // "shaken 24 h in the warm room": where it stood while it was shaken is no step of the powder's making.
            if (UnitKinds.Of(unit) == UnitKind.Time && Lexicon.Of(before) is var doing && doing.Contains(W.Contact) && !doing.Contains(W.Preparing))
                words = words.Remove(W.Preparing);
            // "coconut shell, ground - all bottles 60 mL": what is said of all of them is no step of the powder's making.
            if (UnitKinds.Of(unit) == UnitKind.Volume && spoken.Exists(Each.Contains))
                words = words.Remove(W.Preparing);
            var into = UnitKinds.Of(unit) == UnitKind.Volume && spoken.Exists(ColumnGuess.Drawn.Contains) ? drawn : settings;
            if (Setting(UnitKinds.Of(unit), into == drawn ? words.Remove(W.Preparing) : words, before, unit) is { } property)
                Add(property, number.Value, unit, clause[m.Index..end].Trim(), row, analyte, before.TrimEnd().EndsWith('=') || before.TrimEnd().EndsWith(':'), into);
        }
    }

    private static Property? Setting(UnitKind kind, ImmutableHashSet<W> words, string before, UnitText unit)
    {
        bool Any(params ReadOnlySpan<W> some)
        {
            foreach (var word in some)
            {
                if (words.Contains(word))
                    return true;
            }

            return false;
        }

        if (Any(W.Preparing, W.Limit, W.Standard, W.Blank, W.Check, W.Line))
            return null;
        // What stands before "=" names the amount, whatever else the line speaks of: "Effect of the dose (C0 = 20 mg/L".
        var isNamed = before.TrimEnd() is [.., '=' or ':'];
        var named = isNamed && Lexicon.Tokens(before) is [.., var last] ? Lexicon.OfToken(last).ToImmutableHashSet() : [];
        return kind switch
        {
            UnitKind.Concentration when named.Contains(W.Start) => BatchProperties.InitialConcentration,
            UnitKind.Volume => Any(W.Dilution, W.Background) || IsMadeUp(before) ? null : BatchProperties.Volume,
            UnitKind.Mass => Any(W.Background, W.Dilution) ? null : BatchProperties.Mass,
            UnitKind.Time => BatchProperties.ContactTime,
            UnitKind.Temperature => BatchProperties.Temperature,
            UnitKind.Speed => BatchProperties.StirringSpeed,
            UnitKind.Concentration when Any(W.Dose) || (Any(W.Sorbent) && unit is UnitText.Known { Unit.Plain: "g/L" }) => BatchProperties.Dose,
            UnitKind.Concentration when Any(W.Background, W.End, W.Control) => null,
            UnitKind.Concentration when Any(W.Start, W.Metal, W.Liquid) || before.TrimEnd().EndsWith('=') => BatchProperties.InitialConcentration,
            _ => null,
        };
    }

    // "Made up 1 L of 20 mg/L": so much was prepared, not put into a vessel.
    private static bool IsMadeUp(string before) => Lexicon.Tokens(before).Any(t => t is "made" or "prepared" or "stock" or "hergestellt" or "angesetzt" or "prepare" or "preparado" or "preparada" or "preparato");

    // The unit may be followed by a word: the longest beginning that is a unit counts.
    private static (UnitText Unit, int Length)? UnitOf(string text)
    {
        for (var end = text.Length; end > 0; end--)
        {
            if (end < text.Length && char.IsLetterOrDigit(text[end]) && char.IsLetterOrDigit(text[end - 1]))
                continue;
            if (HeadingReading.UnitOf(text[..end]) is (UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous) and var unit)
                return (unit, end);
        }

        return null;
    }

    private bool Add(Property property, double value, UnitText unit, string written, int row, string? analyte, bool isStated, List<NotedSetting>? into = null)
    {
        double? kept = unit switch
        {
            UnitText.Absent when property.Unit.Length == 0 => value,
            UnitText.Known known when property.Unit.Length > 0 => UnitBridge.Between(known, property, analyte)?.Convert(value),
            UnitText.Known { Unit.IsOne: true } => value,
            UnitText.Ambiguous several when property.Unit.Length > 0 => several.Candidates.Select(c => UnitBridge.Between(new UnitText.Known(c), property, analyte)).FirstOrDefault(b => b is not null)?.Convert(value),
            _ => null,
        };
        if (kept is not { } number || (property.Unit.Length == 0 && number is < 0 or > 14))
            return false;
        (into ?? settings).Add(new NotedSetting(property, number, written, row, isStated));
        return true;
    }

    private void UnitStated(int row, string clause)
    {
        var words = Lexicon.Of(clause);
        foreach (var (word, kind) in new[] { (W.Concentration, UnitKind.Concentration), (W.Mass, UnitKind.Mass), (W.Volume, UnitKind.Volume), (W.Time, UnitKind.Time) })
        {
            if (!words.Contains(word) && !(kind == UnitKind.Concentration && (words.Contains(W.Unit) || ((words.Contains(W.Result) || words.Contains(W.AsRead)) && !clause.Any(char.IsDigit)))))
                continue;
            foreach (var part in clause.Split([" en ", " in ", " em ", ": ", "= "], StringSplitOptions.RemoveEmptyEntries)[^1..].Concat(clause.Split([' ', ':', '=', '(', ')', '[', ']', ';', ','], StringSplitOptions.RemoveEmptyEntries)))
            {
                if (part.Length > 0 && !char.IsDigit(part[0]) && StatedUnit(part) is { } unit && UnitKinds.Of(new UnitText.Known(unit)) == kind && !UnitIsOfNumber(clause, part))
                {
                    units.Add(new NotedUnit(kind, unit, row));
                    break;
                }
            }
        }
    }

    // "All results in ppm": of a liquid, as results of dissolved metal are.
    private static Unit? StatedUnit(string part) => HeadingReading.UnitOf(part) switch
    {
        UnitText.Known { Unit.IsOne: false } known => known.Unit,
        UnitText.Ambiguous several when several.Text.StartsWith("pp", StringComparison.OrdinalIgnoreCase) => several.Candidates.FirstOrDefault(c => UnitKinds.Of(new UnitText.Known(c)) == UnitKind.Concentration),
        _ => null,
    };

    private static bool UnitIsOfNumber(string clause, string part)
    {
        var at = clause.IndexOf(part, StringComparison.Ordinal);
        return at > 0 && char.IsDigit(clause[..at].TrimEnd().LastOrDefault());
    }

    private const int NumeralsOfEach = 6;

    // Six languages for each number.
    private static readonly string[] Numerals = "one eine une una um een two zwei deux dos duas twee three drei trois tres três drie four vier quatre cuatro quatro".Split(' ');

    [GeneratedRegex(@"\b(?<count>one|eine|une|una|um|een|two|zwei|deux|dos|duas|twee|three|drei|trois|tres|três|drie|four|vier|quatre|cuatro|quatro) (?<unit>hours?|minutes?|Stunden?|Minuten?|heures?|horas?|minutos?|uur|uren|day|Tag|jour|d(í|i)a|dag)\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex Counted();

    [GeneratedRegex(@"[;|•·]|, |\. | and | und | et | y | e ", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Clauses();

    [GeneratedRegex(@"(?<number>\d+([.,]\d+)?)\s*(?<unit>[A-Za-zµμ°%]([^\d=:()]|-1|\^-1)*)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Amounts();

    [GeneratedRegex(@"\b(A|[Aa]bs\.?|E|[Ee]xt\.?)\s*[:=]?\s*(?<number>0[.,]\d+)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex BlankNoted();

    [GeneratedRegex(@"\b([01]?\d|2[0-3])[:h][0-5]\d\b", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Clock();

    [GeneratedRegex(@"\bp[hH]\s*(of|=|:|was|is|adjusted to|set to|auf|von|de)?\s*(?<number>\d{1,2}([.,]\d+)?)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Ph();
}
