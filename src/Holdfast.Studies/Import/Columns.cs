using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>What the columns of a table of samples mean: by an answer, by a listed heading, by the words of the heading and its unit, by its values.</summary>
internal sealed partial class Columns
{
    private const int FewestDilutions = 2, FewestWeighings = 3;

    // A boat weighs more than what lies in it.
    private const double LargestShareOfPowder = 0.5;
    private static readonly Unit Wavelengths = Unit.Parse("nm");
    private readonly TableSource source;
    private readonly TableLayout layout;
    private readonly Dialogue talk;
    private readonly string? analyte;
    private readonly ImmutableArray<HeadingReading> headings;
    private readonly ImmutableArray<bool> inCells;
    private readonly TableTraits traits;
    private readonly Dictionary<string, HashSet<int>> fractions = new(StringComparer.Ordinal);

    private Columns(TableSource source)
    {
        this.source = source;
        (layout, talk, analyte) = (source.Layout, source.Talk, source.Study.Analyte);
        headings = WithUnitsInCells(layout);
        inCells = [.. ReadHeadings(layout).Select((h, i) => h.Unit is UnitText.Absent && headings[i].Unit is not UnitText.Absent)];
        if (UnitOfResults() is var (result, ofAll))
            headings = headings.SetItem(result, headings[result] with { Unit = ofAll });
        traits = new(
            headings.Any(h => h.Has(HeadingWord.Absorbance) || HeadingWords.Properties(h.Key).Concat(HeadingWords.Properties(HeadingWords.Unnumbered(h.Key))).Any(p => p.IsSignal && p != SpectrometryProperties.ReportedConcentration)),
            layout.Preamble.Any(r => r.Cells.Any(c => Lexicon.Of(c.Text).Contains(HeadingWord.Concentration))) || headings.Any(h => UnitKinds.Of(h.Unit) == UnitKind.Concentration),
            layout.Notes.UnitFor(UnitKind.Concentration) is not null,
            analyte);
    }

    /// <summary>The headings of a table, taken apart.</summary>
    /// <param name="layout">The table.</param>
    public static ImmutableArray<HeadingReading> ReadHeadings(TableLayout layout)
        => [.. layout.Headings.Select((text, i) => HeadingReading.Of(text, layout.UnitUnder(i))).Select(h => h.Unit is UnitText.Absent && Shapes.UnitsByName.Of(h, layout.Notes.Lines) is { } unit ? h with { Unit = unit } : h).Select(h => h.Words.IsEmpty && Legend(h.Name, layout) is { } words ? h with { Tokens = Lexicon.Tokens(words), Words = Lexicon.Of(words) } : h)];

    /// <summary>The same, with the unit that stands in the cells where the heading has none.</summary>
    /// <param name="layout">The table.</param>
    public static ImmutableArray<HeadingReading> WithUnitsInCells(TableLayout layout)
        => [.. ReadHeadings(layout).Select((h, i) => h.Unit is UnitText.Absent && !h.Has(HeadingWord.Dilution) && UnitInCells(layout, i) is { } unit ? h with { Unit = unit } : h)];

    // "Ck - final concentration": a line under or over the table says what a heading stands for.
    private static string? Legend(string name, TableLayout layout)
        => name.Length == 0 ? null : layout.Notes.Lines.SelectMany(l => l.Split([',', ';'], StringSplitOptions.TrimEntries)).Select(l => l.Split([" - ", " – ", " = ", ": "], 2, StringSplitOptions.TrimEntries))
            .FirstOrDefault(p => p is [var stands, { Length: > 0 } words] && string.Equals(stands, name, StringComparison.Ordinal) && !words.Any(char.IsDigit))?[1];

    /// <summary>Reads the headings, the line of units and the answers about them.</summary>
    /// <param name="source">The table, the study and where questions go.</param>
    public static ImmutableArray<Column> Read(TableSource source) => new Columns(source).All();

    private ImmutableArray<Column> All()
    {
        var code = CodeColumns.Of(layout, headings, source.Known.Keys, source.Aliases.Keys);
        var columns = new Column[headings.Length];
        for (var i = 0; i < columns.Length; i++)
        {
            columns[i] = i == code && talk.Answers.To("column:" + headings[i].Name) is null
                ? new Column(i, headings[i].Text, ColumnUse.Code, SampleProperties.Code, null, null) { Evidence = "it names the rows" }
                : Understand(i, headings[i]);
        }

        if (code >= 0 && IsListOfNames(layout, headings, code))
        {
            columns[1 - code] = new Column(1 - code, headings[1 - code].Text, ColumnUse.Fact, SampleProperties.Alias, null, null) { Evidence = "another name of each sample, and nothing else beside it" };
            return [.. columns];
        }

        StartSolutions(columns);
        Counts(columns);
        var signals = columns.Where((c, i) => c.Use == ColumnUse.Signal && !IsMean(headings[i])).Select(c => c.Property!.Name).ToHashSet(StringComparer.Ordinal);
        ReadingBesideStandards(columns);
        RepeatedReadings(columns);
        var standards = columns.Any(c => c is { Use: ColumnUse.Signal, Property: { } p } && p != SpectrometryProperties.ReportedConcentration);
        for (var i = 0; i < columns.Length; i++)
        {
            var column = columns[i];
            if (column.Use == ColumnUse.Signal && IsMean(headings[i]) && signals.Contains(column.Property!.Name))
                columns[i] = column.Become(ColumnUse.LeftOut, column.Property, "A mean of columns that are read themselves.");
            else if (column.Use == ColumnUse.Signal && standards && column.Property == SpectrometryProperties.ReportedConcentration && !IsAnswered(i))
                columns[i] = BesideSignals(column, columns);
        }

        Titration(columns);
        Titrated(columns);
        UnitOfTheTitle(columns);
        BlankToSubtract(columns);
        SignalBesideResults(columns);
        OneVolumeOfTwo(columns);
        TwoWeighings(columns);
        GoneOfALitre(columns);
        SameThingTwice.Settle(columns, headings, source);
        DilutionInRemarks(columns);
        // A dilution belongs to the reading where the row has one; elsewhere it is a fact about the vessel.
        var hasSignal = columns.Any(c => c.Use == ColumnUse.Signal);
        for (var i = 0; i < columns.Length; i++)
        {
            if (hasSignal && columns[i].Use == ColumnUse.Fact && columns[i].Property == SpectrometryProperties.Dilution)
                columns[i] = columns[i].Become(ColumnUse.Dilution, columns[i].Property, null);
        }

        return [.. columns];
    }

    private bool IsAnswered(int index) => talk.Answers.To("column:" + headings[index].Name) is not null;

    private Column Understand(int index, HeadingReading h)
    {
        var said = talk.Answers.To("column:" + h.Name);
        if (string.Equals(said, "leave-out", StringComparison.OrdinalIgnoreCase))
            return new Column(index, h.Text, ColumnUse.LeftOut, null, null, "Left out as you asked.");
        if (said is not null)
            return Said(index, h, said);
        if (HeadingWords.Repeat.Contains(h.Key))
            return new Column(index, h.Text, ColumnUse.Position, null, null, "Which repeat a row is.");
        if (Fixed(h.Key) is { } use)
            return new Column(index, h.Text, use, null, null, null);
        if (LooksLikeClock(index))
        {
            var clocks = Enumerable.Range(0, headings.Length).Where(LooksLikeClock).ToList();
            if (clocks.Count == 1 && !h.HasAny(HeadingWord.Start, HeadingWord.End) && IsDuration(h))
                return new Column(index, h.Text, ColumnUse.Fact, BatchProperties.ContactTime, null, null) { HoldsHoursAndMinutes = true, Evidence = "its cells are hours and minutes, its heading a duration" };
            var starts = h.Has(HeadingWord.Start) || (clocks.Count == 2 && !h.Has(HeadingWord.End) && clocks[0] == index);
            if (clocks.Count == 1 && layout.Notes.StartClock is { } clock)
                return new Column(index, h.Text, ColumnUse.ClockEnd, BatchProperties.ContactTime, null, $"Contact began at {clock}, as a line says.") { Evidence = "its cells are times of the day" };
            return h.HasAny(HeadingWord.Start, HeadingWord.End) || clocks.Count == 2
                ? new Column(index, h.Text, starts ? ColumnUse.ClockStart : ColumnUse.ClockEnd, BatchProperties.ContactTime, null, null) { Evidence = "its cells are times of the day" }
                : new Column(index, h.Text, ColumnUse.LeftOut, null, null, "A time of the day. Not used.");
        }

        if (DatesOfContact() is var (began, ended) && (index == began || index == ended))
            return new Column(index, h.Text, index == began ? ColumnUse.ClockStart : ColumnUse.ClockEnd, BatchProperties.ContactTime, null, null) { Evidence = "its cells are the dates of start and end" };
        if (LooksLikeDates(index) && !h.HasAny(HeadingWord.Start, HeadingWord.End, HeadingWord.Sample))
            return new Column(index, h.Text, ColumnUse.Fact, SampleProperties.Day, null, null) { Evidence = "its cells are dates" };

        var uncertainty = UncertaintyOf().Match(h.Text);
        if (uncertainty.Success && Find(HeadingReading.Of(uncertainty.Groups["of"].Value) with { Unit = h.Unit }) is { Holds: Holds.Number } of)
            return Settle(index, h, ColumnUse.Uncertainty, of, "the uncertainty of " + of.Title);

        if (NamesStartSolution(index, h))
            return new Column(index, h.Text, ColumnUse.Fact, BatchProperties.StartSolution, null, null) { Evidence = "it names the solution of each vessel" };
        if (Find(h) is { } listed && listed != BatchProperties.StartSolution && !IsElsewhere(listed, h) && !(listed.Holds == Holds.Number && HoldsWords(index)))
            return Take(index, h, listed.IsSignal ? ColumnUse.Signal : ColumnUse.Fact, listed, "its heading");
        if (Suspended(index, h) is { } suspended)
            return suspended;
        if (ColumnGuess.Of(h, traits) is { } guess)
        {
            if (guess is { Property.Holds: Holds.Number, Use: not (ColumnUse.ClockStart or ColumnUse.ClockEnd) } && HoldsWords(index))
                return new Column(index, h.Text, ColumnUse.NotUnderstood, null, null, "Its cells are words. It stays in the original only.");
            return guess switch
            {
                { Use: ColumnUse.LeftOut } => new Column(index, h.Text, ColumnUse.LeftOut, null, null, $"Not used: it is {guess.Why}."),
                { Property: null } => new Column(index, h.Text, guess.Use, null, null, null) { Evidence = guess.Why },
                { Property: { } property } when property == SpectrometryProperties.InstrumentSignal => new Column(index, h.Text, guess.Use, property, null, null) { Evidence = guess.Why },
                { Use: ColumnUse.TakenOut, Property: { } property } => new Column(index, h.Text, guess.Use, property, (h.Unit as UnitText.Known)?.Unit, "Removal: this over the start concentration.") { Bridge = BridgeFor(h, BatchProperties.InitialConcentration), Evidence = guess.Why },
                { Use: ColumnUse.DilutedFrom or ColumnUse.DilutedTo, Property: { } property } => new Column(index, h.Text, guess.Use, property, null, null) { Bridge = BridgeFor(h, BatchProperties.Volume), Evidence = guess.Why },
                { Property: { } property } => Take(index, h, guess.Use, property, $"'{h.Name}' with {UnitWords(h)}: {guess.Why}"),
            };
        }

        return IsAnotherLabel(index) ? new Column(index, h.Text, ColumnUse.Fact, SampleProperties.Alias, null, null) { Evidence = "another label for each sample" }
            : new Column(index, h.Text, ColumnUse.NotUnderstood, null, null, "Not understood: it stays in the original only.");
    }

    // "start solution": "Start 20", "Start 20", "Start 40" name it; numbers would be its concentration.
    private bool NamesStartSolution(int index, HeadingReading h)
    {
        if (h.Unit is not UnitText.Absent || h.HasAny(HeadingWord.Concentration, HeadingWord.Volume, HeadingWord.Time, HeadingWord.Remark) || !(HeadingWords.Properties(h.Key).Contains(BatchProperties.StartSolution) || (h.Has(HeadingWord.Start) && h.Has(HeadingWord.Liquid))))
            return false;
        var filled = layout.Body.Select(r => r.At(index)).Where(c => !c.IsBlank).ToList();
        return filled.Count > 1 && filled.TrueForAll(c => c.Kind == CellKind.Text && c.Text.Any(char.IsLetter) && !TableLayout.IsNumberLike(c));
    }

    // "1 mL auf 50 mL aufgefüllt", "nicht verdünnt" under "Bemerkung": a remark that says how each reading was diluted.
    private void DilutionInRemarks(Column[] columns)
    {
        if (Array.Exists(columns, c => c.Property == SpectrometryProperties.Dilution) || !Array.Exists(columns, c => c.Use == ColumnUse.Signal))
            return;
        foreach (var column in columns.Where(c => c.Property == SampleProperties.Remark && !IsAnswered(c.Index)))
        {
            var filled = layout.Body.Select(r => r.At(column.Index)).Where(c => c is { Kind: CellKind.Text, IsBlank: false }).Select(c => c.Text).ToList();
            if (filled.Count(t => CellParts.DilutionIn(t) is > 1) >= FewestDilutions && filled.TrueForAll(t => CellParts.DilutionIn(t) is not null))
                columns[column.Index] = new Column(column.Index, column.Heading, ColumnUse.Dilution, SpectrometryProperties.Dilution, null, "Each remark says how the reading was diluted.") { Evidence = "its remarks are dilutions" };
        }
    }

    // "sent as": a code a row, each another one, with a digit in it; a report may go by these.
    private bool IsAnotherLabel(int index)
    {
        var filled = layout.Body.Select(r => r.At(index).Text).Where(t => t.Length > 0).ToList();
        return filled.Count > 1 && filled.Distinct(StringComparer.OrdinalIgnoreCase).Count() == filled.Count && filled.TrueForAll(t => t.Length <= 20 && t.Any(char.IsDigit) && t.Any(char.IsLetter) && t.Count(c => c == ' ') <= 1 && CellParts.Split(t) is null);
    }

    private Column Said(int index, HeadingReading h, string said)
    {
        talk.Ask("column:" + h.Name, Codes.Ambiguous, $"What is {h.Name}?", [said], h.Name);
        if (ColumnChoices.Use(said) is { } use)
            return new Column(index, h.Text, use, use switch { ColumnUse.Code => SampleProperties.Code, ColumnUse.WeighedFull or ColumnUse.WeighedFilled or ColumnUse.WeighedEmpty => BatchProperties.Mass, ColumnUse.ClockStart or ColumnUse.ClockEnd => BatchProperties.ContactTime, ColumnUse.DilutedFrom or ColumnUse.DilutedTo => SpectrometryProperties.Dilution, ColumnUse.TakenOut => BatchProperties.ReportedRemoval, _ => null },
                null, "As you said.")
            { Bridge = use is ColumnUse.WeighedFull or ColumnUse.WeighedFilled or ColumnUse.WeighedEmpty ? BridgeFor(h, BatchProperties.Mass) : use is ColumnUse.DilutedFrom or ColumnUse.DilutedTo or ColumnUse.Titre or ColumnUse.BuretteStart or ColumnUse.BuretteEnd or ColumnUse.Aliquot ? BridgeFor(h, BatchProperties.Volume) : use is ColumnUse.TakenOut ? BridgeFor(h, BatchProperties.InitialConcentration) : null };
        var property = ColumnChoices.Named(said)
            ?? throw new StudyException(Codes.Ambiguous, $"'{said}' is nothing that a column can hold, so {h.Name} is not changed. `holdfast list meanings` names all; the nearest is {ColumnChoices.Nearest(said)}.");
        return Take(index, h, property == SampleProperties.Code ? ColumnUse.Code : property.IsSignal ? ColumnUse.Signal : ColumnUse.Fact, property, "as you said");
    }

    // "ce" is a listed heading of the concentration after contact, and the symbol of cerium; "co" likewise.
    private bool IsElsewhere(Property listed, HeadingReading h)
        => listed.Unit.Length > 0 && !listed.OfAnother && h.Unit is UnitText.Known known && UnitBridge.Between(known, listed, analyte) is null && UnitKinds.Of(known) != UnitKinds.Of(new UnitText.Known(Unit.Parse(listed.Unit)))
            || (h.Element is { } element && analyte is not null && element != analyte && h.Name.Trim() == element && !listed.Name.Contains(Composition.ElementNames.NameOf(element), StringComparison.Ordinal)
                && listed == SpectrometryProperties.ReportedConcentration && h.Name is not ("Ce" or "Co"));

    private Column Take(int index, HeadingReading h, ColumnUse use, Property property, string evidence)
    {
        if (property == SampleProperties.Role)
            return new Column(index, h.Text, ColumnUse.Role, property, null, null);
        if (property == SampleProperties.Code)
            return use == ColumnUse.Code ? new Column(index, h.Text, use, property, null, null) : new Column(index, h.Text, ColumnUse.NotUnderstood, null, null, "Another column holds the sample's code already.");
        if (property.Holds == Holds.Words)
            return new Column(index, h.Text, ColumnUse.Fact, property, null, null) { Evidence = evidence };
        if (use is ColumnUse.ClockStart or ColumnUse.ClockEnd)
            return new Column(index, h.Text, use, property, null, null) { Evidence = evidence };
        return Settle(index, h, use, property, evidence);
    }

    private static ColumnUse? Fixed(string key)
        => HeadingWords.Position.Contains(key) ? ColumnUse.Position : HeadingWords.Portion.Contains(key) ? ColumnUse.Portion : null;

    // The name first; where the unit does not fit it, the symbol as written: t is a time, T a temperature.
    private Property? Find(HeadingReading h)
    {
        var named = HeadingWords.Properties(h.Key);
        if (named.IsEmpty)
            named = [.. HeadingWords.Properties(HeadingWords.Unnumbered(h.Key)).Where(p => p.IsSignal)];
        var bySymbol = Property.All.Where(p => string.Equals(p.Symbol, h.Name, StringComparison.Ordinal)).ToList();
        // Water runs out of a bed only where the sheet speaks of one.
        if (named.Contains(ColumnProperties.OutletConcentration) && !headings.IsDefault && !headings.Any(o => HeadingWords.Properties(o.Key).Any(p => p == ColumnProperties.TimeOnStream || p == ColumnProperties.BedDepth || p == ColumnProperties.Flow || p == ColumnProperties.BedMass)))
            named = [];
        // "found" is what a sensor found where something was added, and a result elsewhere.
        if (named.Contains(FluorescenceProperties.Found) && !headings.IsDefault && !headings.Any(o => HeadingWords.Properties(o.Key).Contains(FluorescenceProperties.Added)))
            named = [];
        // "Pb left" is an end concentration, unless a second metal competes.
        if (named.Contains(CompetitionProperties.AnalyteLeft) && !headings.IsDefault && !headings.Any(o => HeadingWords.Properties(o.Key).Any(p => p == CompetitionProperties.RivalLeft || p == CompetitionProperties.Rival || p == CompetitionProperties.InitialOfEach)))
            named = [];
        return named.Concat(bySymbol).FirstOrDefault(p => Fits(p, h.Unit)) ?? named.FirstOrDefault(p => h.Unit is not UnitText.Known { Unit.IsOne: false } || (p.Unit.Length > 0 && UnitKinds.Of(h.Unit) == UnitKinds.Of(new UnitText.Known(Unit.Parse(p.Unit)))));
    }

    private bool Fits(Property property, UnitText unit) => property.Holds == Holds.Words ? unit is UnitText.Absent or UnitText.Known { Unit.IsOne: true } : unit switch
    {
        UnitText.Known known => IsUsable(known, property),
        UnitText.Ambiguous several => several.Candidates.Any(c => IsUsable(new UnitText.Known(c), property)),
        _ => true,
    };

    private bool IsUsable(UnitText.Known stated, Property property) => property.Unit.Length == 0
        ? stated.Unit.IsOne || stated.Unit.IsConvertibleTo(Unit.One) || string.Equals(stated.Unit.Plain, "a.u.", StringComparison.Ordinal)
        : UnitBridge.Between(stated, property, analyte) is not null && (UnitKinds.Of(stated) != UnitKind.Share) == (UnitKinds.Of(new UnitText.Known(Unit.Parse(property.Unit))) != UnitKind.Share);

    private UnitBridge? BridgeFor(HeadingReading h, Property property) => h.Unit is UnitText.Known known ? UnitBridge.Between(known, property, analyte) : null;

    private Column Settle(int index, HeadingReading h, ColumnUse use, Property property, string evidence)
    {
        var unit = h.Unit;
        var name = h.Name;
        if (talk.Answers.To("unit:" + name) is { } answer)
        {
            unit = HeadingReading.UnitOf(answer);
            if (unit is not UnitText.Known)
                throw new StudyException(Codes.UnitMissing, $"'{answer}' is not one clear unit, so it cannot be that of {name}. Write it as mg/L, mg, mL, min or the like.");
            talk.Ask("unit:" + name, Codes.UnitMissing, $"Which unit is {name} in?", [answer], name);
        }

        if (inCells[index] && property.Unit.Length > 0 && property.Unit != "%")
            return new Column(index, h.Text, use, property, null, $"Units stand in the cells; kept in {property.Unit}.") { UnitsInCells = t => Way(t, property), Evidence = evidence };
        Column Of(Unit? stated, UnitBridge? bridge, string? remark) => new(index, h.Text, use, property, stated, remark) { Bridge = bridge, Evidence = evidence };
        if (property.Unit.Length == 0)
        {
            // "Abs 540 nm", "F 616 nm": the unit is that of the wavelength.
            return unit is UnitText.Known plain && !IsUsable(plain, property) && !(property.IsSignal && plain.Unit.IsConvertibleTo(Wavelengths))
                ? Unusable(index, h, property, $"{name} is in {plain.Unit.Plain}, but {property.Title} has no unit.")
                : Of(null, null, null);
        }

        if (property.Unit == "%")
            return Share(index, h, use, property, unit, evidence);
        switch (unit)
        {
            case UnitText.Known known when UnitBridge.Between(known, property, analyte) is { } bridge:
                return Of(known.Unit, bridge, bridge.Remark);
            case UnitText.Known known:
                var basis = known.Basis?.As is { } species ? " as " + species : "";
                return Unusable(index, h, property, $"{name} is in {known.Unit.Plain}{basis}, which cannot become {property.Unit}"
                    + (analyte is null ? ": the study does not say which element it is about." : "."));
            case UnitText.Ambiguous several:
                Unit[] fitting = [.. several.Candidates.Where(c => UnitBridge.Between(new UnitText.Known(c), property, analyte) is not null)];
                if (fitting is [var only] && !MayBeOfASolid(h))
                {
                    var taken = talk.Assume("unit:" + name, Codes.Ambiguous, $"{name} is in {several.Text}, read as {only.Plain}"
                        + (several.Text.StartsWith("pp", StringComparison.OrdinalIgnoreCase) ? ": in dilute water a litre weighs a kilogram." : "."), [only.Plain], name);
                    return Of(Unit.Parse(taken), UnitBridge.Between(new UnitText.Known(Unit.Parse(taken)), property, analyte), $"{several.Text} read as {taken}.");
                }

                if (fitting is [var liquid])
                {
                    talk.Ask("unit:" + name, Codes.Ambiguous, $"{name} is in {several.Text}: of the liquid ({liquid.Plain}), or of a solid ({several.Candidates[^1].Plain})? These notes speak of a solid.", [.. several.Candidates.Select(c => c.Plain)], name);
                    return new Column(index, h.Text, ColumnUse.WithoutUnit, property, null, "Of the liquid or of a solid: to be chosen.");
                }

                talk.Ask("unit:" + name, Codes.Ambiguous, $"{several.Text} can mean several units in {name}. {several.Question}", [.. several.Candidates.Select(c => c.Plain)], name);
                return new Column(index, h.Text, ColumnUse.WithoutUnit, property, null, "Its unit must be chosen.");
            case UnitText.Unknown unknown:
                return Unusable(index, h, property, $"{unknown.Text} is no unit that is known here.");
            default:
                return WithoutUnit(index, h, use, property, evidence);
        }
    }

    private bool MayBeOfASolid(HeadingReading h) => !h.HasAny(HeadingWord.Start, HeadingWord.End, HeadingWord.Liquid)
        && (h.Has(HeadingWord.Solid) || layout.Preamble.Any(r => r.Cells.Any(c => Lexicon.Of(c.Text).Contains(HeadingWord.Solid))));

    private static string Example(List<double> values) => values[^1].ToString("G4", System.Globalization.CultureInfo.InvariantCulture);

    // No unit in the heading: in the cells ("10 min"), in a note ("concentrations in mg/L"), under a sister column; otherwise asked.
    private Column WithoutUnit(int index, HeadingReading h, ColumnUse use, Property property, string evidence)
    {
        var kind = UnitKinds.Of(new UnitText.Known(Unit.Parse(property.Unit)));
        if (layout.Notes.UnitFor(kind) is { } noted && UnitBridge.Between(new UnitText.Known(noted.Unit), property, analyte) is { } bridge)
            return new Column(index, h.Text, use, property, noted.Unit, $"In {noted.Unit.Plain}, as line {Ordinal.Text(noted.Row)} says.") { Bridge = bridge, Evidence = evidence };
        // Grams of powder in a litre are no concentration of the metal, nor the other way round.
        var sister = property == BatchProperties.Dose ? null : headings.FirstOrDefault(o => o != h && !o.Has(HeadingWord.Dose) && UnitKinds.Of(o.Unit) == kind && o.Unit is UnitText.Known && o.Has(HeadingWord.Limit) == false);
        if (sister?.Unit is UnitText.Known { Unit: var same } && kind == UnitKind.Concentration && UnitBridge.Between(new UnitText.Known(same), property, analyte) is { })
        {
            var taken = Unit.Parse(talk.Assume("unit:" + h.Name, Codes.UnitMissing, $"{h.Name} has no unit; it is read in {same.Plain}, like {sister.Name}.", [same.Plain], h.Name));
            return new Column(index, h.Text, use, property, taken, $"In {taken.Plain}, like {sister.Name}.") { Bridge = UnitBridge.Between(new UnitText.Known(taken), property, analyte), Evidence = evidence };
        }

        return Unusable(index, h, property, $"{h.Name} has no unit.");
    }

    private UnitBridge? Way(UnitText stated, Property property) => stated switch
    {
        UnitText.Known known => UnitBridge.Between(known, property, analyte),
        UnitText.Ambiguous several => several.Candidates.Select(c => UnitBridge.Between(new UnitText.Known(c), property, analyte)).FirstOrDefault(b => b is not null),
        _ => null,
    };

    // "10 min", "1 h": most cells hold a unit of one kind behind their number.
    private static UnitText? UnitInCells(TableLayout layout, int index)
    {
        var filled = layout.Body.Select(r => r.At(index)).Where(c => c is { IsBlank: false, Kind: CellKind.Text }).Take(200).ToList();
        var units = filled.Select(c => CellParts.Split(c.Text)?.Unit).OfType<UnitText>().Where(u => UnitKinds.Of(u) is not (UnitKind.None or UnitKind.Other)).ToList();
        return units.Count > 0 && units.Count * 5 >= filled.Count * 4 && units.Select(UnitKinds.Of).Distinct().Count() == 1 ? units[0] : null;
    }

    private bool HoldsWords(int index)
    {
        var filled = layout.Body.Select(r => r.At(index)).Where(c => !c.IsBlank).Take(200).ToList();
        return filled.Count > 0 && filled.Count(c => c.Kind == CellKind.Text && !c.Text.Any(char.IsDigit) && CellText.Read(c.Text, null) is CellText.NotANumber { Kind: NotANumberKind.Words }) * 2 > filled.Count;
    }

    private List<double> Numbers(int index)
        => [.. layout.Body.Select(r => r.At(index)).Where(c => !c.IsBlank).Select(c => CellText.Read(c.Text.TrimEnd('%', ' '), source.Mark)).OfType<CellText.Number>().Select(n => n.Value)];

    // What an uptake needs is asked for; the rest is kept as written and said.
    private Column Unusable(int index, HeadingReading h, Property property, string what)
    {
        var units = ColumnChoices.UnitsFor(property, Numbers(index));
        if (ColumnChoices.IsNeeded(property) && talk.Answers.To("unit:" + h.Name) is null)
            talk.Ask("unit:" + h.Name, Codes.UnitMissing, $"{what} Which unit is it?", units, h.Name);
        else
            talk.Note(Codes.UnitMissing, Weight.Caution, $"{what} It is kept as written and feeds nothing. Choose one, for example {units[0]}.", h.Name);
        return new Column(index, h.Text, ColumnUse.WithoutUnit, property, null, what + " It feeds nothing until one is chosen.");
    }

    private static string UnitWords(HeadingReading h) => h.Unit switch
    {
        UnitText.Known { Unit.IsOne: false } known => known.Unit.Plain,
        UnitText.Ambiguous several => several.Text,
        _ => "no unit",
    };

    private static bool IsMean(HeadingReading h) => h.Has(HeadingWord.Mean);

    // "u(C0) (mg/L)", "u C0", "C0 uncertainty".
    [GeneratedRegex(@"^\s*(u\s*\((?<of>[^()]+)\)|u\s+(?<of>[^()/\[]+)|(?<of>[^()/\[]+?)\s+(standard )?uncertainty)\s*([(/\[].*)?$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex UncertaintyOf();
}
