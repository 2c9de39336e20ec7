using System.Collections.Immutable;
using System.Security.Cryptography;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Shapes;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Studies.Import;

/// <summary>One file on its way in: read into tables, told what each is, understood against a study.</summary>
internal sealed class FileUnderstanding
{
    private const int RowsShown = 12;
    private static readonly ImmutableArray<string> LayoutQuestions = ["unit:", "column:", "share:", "same:"];
    private readonly string sha256;
    private readonly long length;
    private readonly Answers answers;
    private readonly ImmutableArray<Grid> grids;
    private ImmutableArray<(TableLayout Layout, TableKind Kind)> tables;
    private ReviewTaken? review;

    private FileUnderstanding(string fileName, string sha256, long length, IFileReader? reader, Answers answers, ImmutableArray<Grid> grids, Finding? refusal, string? analyte)
    {
        (FileName, this.sha256, this.length, this.answers, this.grids) = (fileName, sha256, length, answers, grids);
        tables = [.. grids.SelectMany(TablesOf).Select(t => Turned(t, analyte))];
        (Reader, Refusal) = (reader, refusal);
    }

    /// <summary>The file's name.</summary>
    public string FileName { get; }

    /// <summary>What read it, or null.</summary>
    public IFileReader? Reader { get; }

    /// <summary>Why it was not read, or null.</summary>
    public Finding? Refusal { get; }

    /// <summary>True for a text without a table: notes about the vessels of the files beside it.</summary>
    public bool IsNotes => Refusal is null && !tables.IsEmpty && tables.All(t => t.Kind == TableKind.Unknown && t.Layout.Grid.Sheet is null) && Prose.In(tables) is null;

    /// <summary>True where a table says how vessels were made up.</summary>
    public bool HasSamples => tables.Any(t => t.Kind == TableKind.Samples);

    /// <summary>True where a table holds readings of samples.</summary>
    public bool HasReadings => tables.Any(t => t.Kind == TableKind.Readings);

    /// <summary>What its lines say.</summary>
    /// <param name="analyte">The study's element, or null.</param>
    public Notes Said(string? analyte) => Notes.Of(tables.SelectMany(t => t.Layout.Grid.Rows).Where(r => !r.IsBlank).Distinct(), analyte).In(FileName, sha256);

    /// <summary>
    /// Samples are needed before their readings, and the sheet that says most about them before the others: lower ranks are understood first.
    /// </summary>
    public (int Kind, int Columns) Rank => tables.Select(t => ((int)(t.Kind == TableKind.Samples && TableKinds.IsLogOfPh(t.Layout) ? TableKind.Readings : t.Kind), -TableLayout.KnownHeadings(t.Layout.Heading ?? new GridRow(0, []))))
        .DefaultIfEmpty(((int)TableKind.Unknown, 0)).Min();

    /// <summary>Reads a file into tables with one row a sample; a file that cannot be read says why.</summary>
    /// <param name="fileName">Its name.</param>
    /// <param name="bytes">All of it.</param>
    /// <param name="answers">Answers to questions.</param>
    /// <param name="analyte">The study's element, or null: a report of many elements is read for one.</param>
    /// <param name="cancel">Stops it.</param>
    public static FileUnderstanding Of(string fileName, byte[] bytes, Answers answers, string? analyte, CancellationToken cancel)
    {
        var sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        var own = answers.For(fileName);
        FileUnderstanding Refused(Finding why, IFileReader? by = null) => new(fileName, sha256, bytes.Length, by, own, [], why, null);
        if (bytes.Length > Limits.File && FileReaders.Largest(bytes) is var largest && bytes.Length > largest)
            return Refused(AsFinding(Store.PlainFile.TooLarge(fileName, bytes.Length, largest), fileName));
        if (bytes.Length == 0)
            return Refused(Finding.Of(Codes.Unreadable, Weight.Stop, $"{fileName} is empty: 0 bytes. Nothing is taken in. Export it again.", fileName));
        if (ReviewFile.Is(bytes))
            return OfReview();
        if (FileReaders.For(bytes) is not { } reader)
            return Refused(Finding.Of(Codes.Unreadable, Weight.Stop, $"{fileName} is of no kind that is read here, so nothing is taken in from it. Export it as CSV or XLSX.", fileName));
        try
        {
            return new(fileName, sha256, bytes.Length, reader, own, reader.Read(bytes, fileName, own, cancel), null, analyte);
        }
        catch (StudyException e)
        {
            return Refused(AsFinding(e, fileName), reader);
        }

        FileUnderstanding OfReview()
        {
            try
            {
                return new(fileName, sha256, bytes.Length, null, own, [], null, null) { review = ReviewFile.Read(bytes, fileName) };
            }
            catch (StudyException e)
            {
                return Refused(AsFinding(e, fileName));
            }
        }
    }

    /// <summary>The refusal of a file that could not even be opened.</summary>
    public static FileUnderstanding Unopened(string fileName, StudyException why)
        => new(fileName, "", 0, null, Answers.None, [], AsFinding(why, fileName), null);

    /// <summary>A file that fell while it was read or understood: the others are not touched by that.</summary>
    public static Understanding Fallen(IncomingFile file, Finding why)
        => new() { FileName = file.Name, Sha256 = Convert.ToHexStringLower(SHA256.HashData(file.Bytes)), Bytes = file.Bytes.Length, Findings = [why] };

    /// <summary>True where a table holds standards.</summary>
    public bool HasStandards => tables.Any(t => t.Kind is TableKind.Samples or TableKind.Readings && OwnEvaluation.HasStandards(t.Layout));

    /// <summary>Codes of what was read in it; see <see cref="OwnEvaluation.Read"/>.</summary>
    /// <param name="analyte">The study's element, or null.</param>
    /// <param name="calibrated">True where the drop holds standards.</param>
    public IEnumerable<string> CodesRead(string? analyte, bool calibrated) => tables.Where(t => t.Kind is TableKind.Readings or TableKind.Samples && IsUsed(t.Layout.Grid)).SelectMany(t => OwnEvaluation.Read(t.Layout, analyte, calibrated));

    /// <summary>Understands the tables against a study.</summary>
    /// <param name="study">The study as it would be after the files before this one.</param>
    /// <param name="taken">Fingerprints of files of the same drop that came before.</param>
    /// <param name="beside">What notes in the same drop say of its vessels.</param>
    /// <param name="servesOthers">True for notes that others in the drop use.</param>
    /// <param name="readElsewhere">Codes whose readings stand in the drop; see <see cref="OwnEvaluation"/>.</param>
    public Understanding Against(Study study, IReadOnlyDictionary<string, string> taken, Notes beside, bool servesOthers, IReadOnlySet<string> readElsewhere)
    {
        var elsewhere = tables.Where(t => t.Kind is TableKind.Unknown).Aggregate(Notes.None, (n, t) => n.Or(Notes.Of(t.Layout.Grid.Rows.Where(r => !r.IsBlank), study.Analyte)));
        tables = [.. tables.Select(t => (t.Layout with { Notes = t.Layout.Notes.Or(elsewhere).And(beside) }, Answered(t.Layout, t.Kind, study)))];
        if (tables.Select(t => t.Layout).FirstOrDefault(l => SettingsOfSheets.Are(l, tables.Select(t => t.Layout))) is { } settings)
            tables = [.. tables.Select(t => t.Kind == TableKind.Measurement ? t : t.Layout == settings ? t with { Kind = TableKind.Unknown } : t with { Layout = t.Layout with { Notes = t.Layout.Notes.Or(SettingsOfSheets.Of(settings, t.Layout.Grid.Sheet, study.Analyte)) } })];
        var understood = new Understanding { FileName = FileName, Sha256 = sha256, Bytes = length, Reader = Reader?.Name };
        if (Refusal is not null)
            return understood with { Findings = [Refusal] };
        if (Duplicate(study, taken) is { } duplicate)
            return understood with { Findings = [duplicate] };
        if (review is not null)
        {
            return understood with
            {
                Reader = "remarks of a reader",
                Tables = [new() { Kind = TableKind.Remarks, Rows = new(review.Remarks.Length, 0, 0, 0), Settings = [$"by {review.By}", $"on entry {Ordinal.Text(review.On)}"] }],
                Proposal = new TakenIn { Files = [new TakenFile(sha256, FileName, length)], Reviews = [review] },
            };
        }

        var layoutKnown = tables.Select(t => t.Layout.Signature).FirstOrDefault(study.Layouts.ContainsKey);
        var talk = new Dialogue(FileName, answers.Remembering(layoutKnown is null ? null : study.Layouts[layoutKnown]));
        var brings = new TakenIn { Files = [new TakenFile(sha256, FileName, length)] };
        var shown = ImmutableArray.CreateBuilder<TableUnderstanding>();
        var points = ImmutableArray.CreateBuilder<PointsTable>();
        var used = tables.Where(t => IsUsed(t.Layout.Grid) && t.Kind is not (TableKind.Unknown or TableKind.Points)).ToList();
        var runs = new Dictionary<string, string>(StringComparer.Ordinal);
        var ofOthers = OtherMetals.In([.. used.Select(t => t.Layout)], study.Analyte);
        foreach (var (layout, kind) in tables.OrderBy(t => t.Kind == TableKind.Readings ? t.Layout.Part > 0 ? 2 : 1 : 0))
        {
            if (layout.Part == 0)
                talk.Note(layout.Grid.Findings);
            if (layout.Grid.Sheet is { } unwanted && layout.Part == 0 && IsDisowned(layout.Grid))
                talk.Assume("sheet:" + unwanted, Codes.MeaningLost, $"Sheet {unwanted} is left out, as it says itself ({Ordinal.Text(layout.Grid.Rows.Length)} rows).", ["leave-out", "take"], unwanted);
            else if (layout.Grid.Sheet is { } sheet && layout.Part == 0 && (layout.Grid.IsHidden || answers.To("sheet:" + sheet) is not null))
                talk.Assume("sheet:" + sheet, Codes.MeaningLost, layout.Grid.IsHidden ? $"Sheet {sheet} is hidden and left out ({Ordinal.Text(layout.Grid.Rows.Length)} rows)." : $"Sheet {sheet} is read.", layout.Grid.IsHidden ? ["leave-out", "take"] : ["take", "leave-out"], sheet);
            if (ofOthers.TryGetValue(layout, out var metal) && talk.Assume("metal:" + metal, Codes.Ambiguous, $"“{Settings.TitleOf(layout)}” is of {metal} and left out: the study is of {study.Analyte}.", ["leave-out", "take"], metal) != "take")
            {
                shown.Add(Show(layout, kind) with { LeftOut = $"of {metal}, {Ordinal.Text(layout.Body.Length)} rows left out" });
                continue;
            }

            if (kind == TableKind.Samples && Plans.DoneIn(layout, [.. tables.Where(t => t.Kind == TableKind.Readings).Select(t => t.Layout)]) is { } done
                && talk.Assume("plan", Codes.Ambiguous, $"{Plans.Name(layout)} is a plan and left out: {Plans.Name(done)} says what was done to the same samples.", ["leave-out", "take"], Plans.Name(layout)) != "take")
            {
                shown.Add(Show(layout, kind) with { LeftOut = $"a plan, {Ordinal.Text(layout.Body.Length)} rows left out" });
                continue;
            }

            if (kind is TableKind.Samples or TableKind.Readings && MeansAlone.AreLeftOut(layout, study, readElsewhere, talk))
            {
                shown.Add(Show(layout, kind) with { LeftOut = $"means, {Ordinal.Text(layout.Body.Length)} rows left out" });
                continue;
            }

            if (!IsUsed(layout.Grid))
            {
                shown.Add(Show(layout, kind) with { LeftOut = $"{(layout.Grid.IsHidden ? "hidden" : "not used")}, {Ordinal.Text(layout.Grid.Rows.Length)} rows left out" });
                continue;
            }
            if (kind == TableKind.Measurement)
            {
                var (measured, of) = Measure(layout, study, talk);
                shown.Add(of);
                brings = Join(brings, measured);
                study = Fold.After(study, measured, study.Version, default, "");
                continue;
            }

            if (kind is TableKind.Unknown or TableKind.Points && layout.Part == 0)
                AskWhetherMeasured(layout.Grid, talk);
            var source = new TableSource(layout, study, talk, sha256) { SeveralSheets = used.Select(t => t.Layout.Grid.Sheet).Distinct().Count() > 1, Tables = used.Count, RunsHere = runs, ReadElsewhere = readElsewhere };
            var (draft, table) = Understand(source, kind);
            shown.Add(table);
            if (draft is null)
                continue;
            if (draft.Points is not null)
                points.Add(draft.Points);
            brings = Join(brings, draft.Brings);
            study = Fold.After(study, draft.Brings, study.Version, default, "");
        }
        if (servesOthers && Said(study.Analyte) is { IsEmpty: false } said)
        {
            talk.Note(Codes.MeaningLost, Weight.Note, $"{FileName} is read as notes: {string.Join("; ", said.Statements)}. What the vessel sheet itself does not say is taken from here.", FileName);
            return understood with { Tables = shown.ToImmutable(), Questions = talk.Questions, Findings = talk.Findings, Proposal = brings };
        }

        if (tables.All(t => t.Kind == TableKind.Unknown))
        {
            talk.Note(Codes.Unreadable, Weight.Caution, Prose.In(tables) is { } sentence
                ? $"{FileName} holds sentences and no table: “{sentence}”. Sentences are not read. Put what it says into a table, one row a vessel: code, mass, volume, C0, Ce."
                : $"{FileName} was read, but no column of it is understood. It stays in the tray and nothing is taken in.", FileName);
        }
        return understood with
        {
            Tables = shown.ToImmutable(),
            Points = points.ToImmutable(),
            Questions = talk.Questions,
            Findings = talk.Findings,
            RememberedLayout = layoutKnown,
            Proposal = used.Count == 0 ? null : brings with { Layouts = Remember(talk, used) },
        };
    }

    // A grid that a technique recognises is one measurement, whatever tables its lines may look like.
    private IEnumerable<(TableLayout Layout, TableKind Kind)> TablesOf(Grid grid)
    {
        if (TechniqueOf(grid) is not null)
            return [(TableLayout.Whole(grid), TableKind.Measurement)];
        var layouts = TableLayout.In(grid);
        var told = layouts.Select(l => (Layout: l, Kind: TableKinds.Of(l))).ToList();
        // "solution | 50 | mg/L" heads no table, whatever else its words are.
        var isTable = told.Exists(t => t.Layout.Turned is not null || LongItems.Turn(t.Layout) is not null || (t.Kind is not (TableKind.Unknown or TableKind.Points) && t.Layout.Heading is { } heading && !heading.Cells.Any(TableLayout.IsNumeric)
            && !(grid.Sheet is null && t.Layout.Body.Count(r => !r.IsBlank) < 2 && heading.Cells.Any(c => Shapes.AmountLines.HoldsAmount(c.Text)))));
        // "701 = S2", line by line: names, and no table whatever its title's words are.
        isTable &= !(grid.Sheet is null && grid.Rows.Count(r => r.Cells.Any(c => c.Text == "=")) >= 2);
        return !isTable && Prose.IsNotes(grid) ? [(TableLayout.Whole(Prose.AsLines(grid)), TableKind.Unknown)] : told;
    }

    // Reports, wide tables and the like become one row a sample, before anything is told of the drop as a whole.
    private static (TableLayout Layout, TableKind Kind) Turned((TableLayout Layout, TableKind Kind) table, string? analyte)
    {
        if (table.Kind == TableKind.Measurement)
            return table;
        if ((LongReport.Turn(table.Layout, analyte) ?? LongItems.Turn(table.Layout) ?? WideSeries.Turn(table.Layout) ?? ReplicatesAside.Turn(table.Layout) ?? NamedResults.Turn(table.Layout)) is { } turned)
            return (turned, TableKinds.Of(turned));
        return table.Kind == TableKind.Unknown && TableKinds.IsReadOf(table.Layout, analyte) ? table with { Kind = TableKind.Readings } : table;
    }

    private ITechnique? TechniqueOf(Grid grid)
    {
        var recognised = TechniqueList.For(grid);
        if (answers.To(TechniqueQuestion(grid)) is { } answer)
            return string.Equals(answer, TechniqueList.Table, StringComparison.OrdinalIgnoreCase) ? null : recognised.Select(r => r.Technique).FirstOrDefault(t => string.Equals(t.Name, answer, StringComparison.OrdinalIgnoreCase));
        return recognised is [(var technique, { IsCertain: true })] ? technique : null;
    }

    private string TechniqueQuestion(Grid grid) => grid.Sheet is { } sheet && grids.Length > 1 ? "technique:" + sheet : "technique";

    private (TakenIn Brings, TableUnderstanding Shown) Measure(TableLayout layout, Study study, Dialogue talk)
    {
        var grid = layout.Grid;
        var technique = TechniqueOf(grid)!;
        var says = TechniqueList.For(grid).First(r => r.Technique == technique).Says;
        talk.Assume(TechniqueQuestion(grid), Codes.Ambiguous, $"{grid.Sheet ?? FileName} is read as {technique.Title}: {says.Evidence}.", [technique.Name, TechniqueList.Table]);
        var draft = technique.Read(new MeasurementSource(grid, grids, study, talk, sha256));
        ImmutableArray<Measurement> measured = [.. draft.Measurements.Select((m, i) => m with { Id = "M-" + (study.MeasurementsEver + i + 1).ToString("0000", System.Globalization.CultureInfo.InvariantCulture) })];
        return (new TakenIn { Measurements = measured.IsEmpty ? null : measured }, Show(layout, TableKind.Measurement) with
        {
            HeadingLine = draft.HeadingLine ?? layout.Heading?.Number,
            UnitsLine = draft.UnitsLine ?? (draft.HeadingLine is null ? layout.Units?.Number : null),
            Decimal = draft.Decimal,
            DecimalReason = draft.DecimalReason,
            Columns = draft.Columns,
            Rows = draft.Rows,
            Settings = draft.Settings,
            FirstRows = draft.FirstRows.IsEmpty ? draft.HeadingLine is { } line ? [.. grid.Rows.Where(r => r.Number > line && !r.IsBlank).Take(RowsShown)] : [.. layout.Body.Take(RowsShown)] : [.. draft.FirstRows.Take(RowsShown)],
        });
    }

    // Two bare columns may be a scan or anything else: nothing is taken in before it is said.
    private void AskWhetherMeasured(Grid grid, Dialogue talk)
    {
        if (TechniqueList.For(grid) is not { IsEmpty: false } possible)
            return;
        talk.Ask(TechniqueQuestion(grid), Codes.Ambiguous, $"{grid.Sheet ?? FileName} may be {string.Join(" or ", possible.Select(p => $"{p.Technique.Title} ({p.Says.Evidence})"))}. Is it?",
            [.. possible.Select(p => p.Technique.Name), TechniqueList.Table]);
        talk.Explain(TechniqueQuestion(grid), [.. possible.Select(p => "read as " + p.Technique.Title), "left as it is: not used in the study"]);
    }

    private static (Draft? Draft, TableUnderstanding Shown) Understand(TableSource source, TableKind kind)
    {
        var table = Show(source.Layout, kind);
        if (kind == TableKind.Unknown)
            return (null, table with { Columns = [.. source.Layout.Headings.Select((h, i) => Unread(source.Layout, i, h))] });
        var columns = kind is TableKind.Samples or TableKind.Readings ? Columns.Read(source) : [];
        var numbers = columns.IsEmpty
            ? PointsColumns.Numeric(source.Layout)
            : [.. columns.Where(c => c.Use is ColumnUse.Signal or ColumnUse.Dilution or ColumnUse.Uncertainty or ColumnUse.WeighedFull or ColumnUse.WeighedFilled or ColumnUse.WeighedEmpty or ColumnUse.DilutedFrom or ColumnUse.DilutedTo or ColumnUse.Titre or ColumnUse.BuretteStart or ColumnUse.BuretteEnd or ColumnUse.Aliquot or ColumnUse.TakenOut || c is { Use: ColumnUse.Fact or ColumnUse.WithoutUnit, Property.Holds: Holds.Number }).Select(c => c.Index)];
        var evidence = DecimalEvidence.Of(source.Layout, numbers);
        var mark = evidence.Settle(source.Talk, mayBeBoth: true);
        var draft = kind switch
        {
            TableKind.Claims => ClaimsTable.Understand(source, mark),
            TableKind.Margins => MarginsTable.Understand(source, mark),
            TableKind.Apparatus => ApparatusTable.Understand(source, mark),
            TableKind.Spectra => SpectraTable.Understand(source, mark),
            TableKind.Points => PointsColumns.Understand(source, mark),
            _ => SampleTable.Understand(source, columns, mark),
        };
        // Columns without codes may be wanted for a fit of their own as well.
        if (draft.Points is null && kind is TableKind.Samples or TableKind.Readings && !columns.Any(c => c.Use == ColumnUse.Code))
            draft = draft with { Points = PointsColumns.Understand(source with { Talk = new Dialogue(source.Talk.FileName, source.Talk.Answers) }, mark).Points };
        var reason = source.Talk.Answers.To("decimal") is null ? evidence.Reason : "as you answered";
        return (draft, table with { Columns = draft.Columns, Rows = draft.Rows, Decimal = mark, DecimalReason = reason });
    }

    // A table that nothing is understood of shows what it has, so that its columns can be given a meaning.
    private static ColumnUnderstanding Unread(TableLayout layout, int index, string heading)
    {
        var column = new Column(index, heading, ColumnUse.NotUnderstood, null, null, "Not understood: it stays in the original only.");
        foreach (var row in layout.Body.Take(RowsShown))
            column.Show(row.At(index));
        return column.Understood();
    }

    // Once a column of it was given a meaning, it is a table of samples.
    private TableKind Answered(TableLayout layout, TableKind kind, Study study)
    {
        if (kind is not (TableKind.Unknown or TableKind.Points))
            return kind;
        var known = answers.Remembering(study.Layouts.GetValueOrDefault(layout.Signature));
        var meant = Columns.ReadHeadings(layout).Select(h => known.To("column:" + h.Name)).Where(a => a is not (null or "leave-out")).Select(a => ColumnChoices.Named(a!)).ToList();
        return meant.Count == 0 ? kind : meant.Exists(p => p is { IsSignal: true }) ? TableKind.Readings : TableKind.Samples;
    }

    private Finding? Duplicate(Study study, IReadOnlyDictionary<string, string> taken)
    {
        if (study.Originals.FirstOrDefault(o => string.Equals(o.Sha256, sha256, StringComparison.Ordinal)) is { } original)
        {
            var first = study.Readings.FirstOrDefault(r => string.Equals(r.Origin.Original, sha256, StringComparison.Ordinal))?.Id;
            var when = original.When.ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture);
            return Finding.Of(Codes.Duplicate, Weight.Caution, $"{FileName} was already taken in on {when} as {original.FileName}{(first is null ? "" : ", from " + first)}. It is left out.", FileName);
        }
        return taken.TryGetValue(sha256, out var twin)
            ? Finding.Of(Codes.Duplicate, Weight.Caution, $"{FileName} has the same bytes as {twin}, which is taken in. It is left out.", FileName)
            : null;
    }

    private bool IsUsed(Grid grid) => answers.To("sheet:" + grid.Sheet) switch
    {
        "leave-out" => false,
        "take" => true,
        null => !grid.IsHidden && !IsDisowned(grid),
        var other => throw Answers.Unknown("sheet:" + grid.Sheet, other, "take or leave-out"),
    };

    // "OLD first try - do not use", beside sheets that are used.
    private bool IsDisowned(Grid grid) => grid.Sheet is { } name && grids.Length > 1 && (NotToUse.Says(name) || (grid.Rows.FirstOrDefault(r => !r.IsBlank) is { Filled: 1 } title && NotToUse.Says(title.Cells.First(c => !c.IsBlank).Text)));

    private static TableUnderstanding Show(TableLayout layout, TableKind kind) => new()
    {
        Sheet = layout.Grid.Sheet,
        IsHidden = layout.Grid.IsHidden,
        Kind = kind,
        Encoding = layout.Grid.Encoding,
        Separator = layout.Grid.Separator,
        HeadingLine = layout.Heading?.Number,
        UnitsLine = layout.Units?.Number,
        Details = layout.Details,
        RawLines = layout.Grid.RawLines,
        FirstRows = [.. layout.Body.Take(RowsShown)],
        Turned = layout.Turned,
        Settings = [.. layout.Notes.All.Select(n => $"{n.Property.Title} {n.Written} (line {Ordinal.Text(n.Row)})")],
    };

    // What is answered about a layout holds for the next file of it; what is answered about a sample does not.
    private static ImmutableArray<LayoutAnswer> Remember(Dialogue talk, List<(TableLayout Layout, TableKind Kind)> used)
        => [.. used.Select(t => t.Layout.Signature).Distinct(StringComparer.Ordinal).SelectMany(signature => talk.Questions
            .Where(q => q.Answer is not null && talk.Answers.Given(q.Id) is not null && IsAboutLayout(q.Id))
            .Select(q => new LayoutAnswer(signature, q.Id, q.Answer!)))];

    private static bool IsAboutLayout(string id) => id is "decimal" or "date" or "dilution" or "codes" || LayoutQuestions.Any(q => id.StartsWith(q, StringComparison.Ordinal));

    private static TakenIn Join(TakenIn a, TakenIn b) => a with
    {
        Samples = a.Samples.AddRange(b.Samples),
        Runs = a.Runs.AddRange(b.Runs),
        Readings = a.Readings.AddRange(b.Readings),
        Measurements = b.Measurements is { } more ? (a.Measurements ?? []).AddRange(more) : a.Measurements,
        Claims = a.Claims.AddRange(b.Claims),
        Margins = a.Margins.AddRange(b.Margins),
        Apparatus = a.Apparatus.AddRange(b.Apparatus),
    };

    /// <summary>What stands in the way of a file, as a finding.</summary>
    public static Finding AsFinding(StudyException e, string fileName) => Finding.Of(e.Code, Weight.Stop, e.Message, fileName);
}
