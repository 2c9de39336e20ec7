using System.Text.RegularExpressions;
using Holdfast.Studies.Properties;
using W = Holdfast.Studies.Import.Headings.HeadingWord;

namespace Holdfast.Studies.Import.Headings;

/// <summary>What a heading means, told by its words and unit: the trade's words, not a list of whole headings.</summary>
/// <param name="Use">What becomes of the column.</param>
/// <param name="Property">Its property, or null.</param>
/// <param name="Why">In words, for the preview.</param>
internal readonly partial record struct ColumnGuess(ColumnUse Use, Property? Property, string Why)
{
    private static readonly Property[] NeedsNoUnit = [BatchProperties.StartPh, BatchProperties.EndPh, SpectrometryProperties.Absorbance, SpectrometryProperties.Dilution];

    /// <summary>Words for a reading from which nothing was subtracted.</summary>
    internal static readonly HashSet<string> Raw = new("raw brut brute brutto bruta bruto grezza roh uncorrected gross".Split(' '), StringComparer.Ordinal);

    private static readonly Amounts.Unit Potentials = Amounts.Unit.Parse("mV");

    // Which of several readings; numbers in words, since "A1" may name anything.
    private static readonly HashSet<string> Ordinals = new(("again repeat repeated rep bis nochmal encore otra outra ancora 1st 2nd 3rd 4th first second third i ii iii 1re 1ere 2e 2eme 3e 3eme premiere deuxieme seconde troisieme erste zweite dritte 1a 2a 3a primera segunda tercera primeira terceira prima seconda terza "
        + "eerste tweede derde pierwsza druga trzecia birinci ikinci ucuncu forsta andra tredje prvni druha treti pertama kedua ketiga").Split(' '), StringComparer.Ordinal);

    /// <summary>Words for liquid that was taken out of a vessel to be read or diluted.</summary>
    internal static readonly HashSet<string> Drawn = new(("taken aliquot aliquots pipetted withdrawn drawn sampling aliquote aliquoten alicuota alicuotas aliquota aliquotas entnommen entnahme probenahme probennahme pipettiert "
        + "preleve preleves prelevee prelevement prelevements prelevato prelevati prelievo prelievi tomado tomada muestreo retirado retirada retiradas retirados amostragem pobrano pobierano odebrano monstername uttag diambil").Split(' '), StringComparer.Ordinal);

    /// <summary>Words for what a burette gave, which is no vessel's volume.</summary>
    internal static readonly HashSet<string> OfATitrant = new("edta titrant titrante titulant titre titer titolante burette bureta buret burete burettes buretta biureta biurety byreta byrett gastado gasto gastou verbrauch verbrauchte consumed consumido consumato consumo consommation zuzyto zuzycie verbruik spent titrated titulado titulo".Split(' '), StringComparer.Ordinal);

    /// <summary>What a column whose listed headings did not match is most likely; null when nothing is known of it.</summary>
    /// <param name="h">The heading.</param>
    /// <param name="table">What else the table holds.</param>
    public static ColumnGuess? Of(HeadingReading h, TableTraits table)
    {
        var kind = UnitKinds.Of(h.Unit);
        // "Coups/s": counts in a second, no time.
        if (kind is UnitKind.None or UnitKind.Time or UnitKind.Speed or UnitKind.Other && Lexicon.Of(h.Text) is var all && all.Contains(W.Signal) && !all.Contains(W.Time) && !all.Contains(W.Absorbance) && !all.Contains(W.Spread))
            return new(ColumnUse.Signal, SpectrometryProperties.InstrumentSignal, "a signal");
        if (LightAtWavelength().IsMatch(h.Text))
            return new(ColumnUse.Signal, FluorescenceProperties.Intensity, "emitted light at a wavelength");
        if (RatioOfLight().IsMatch(h.Text))
            return LeftOut("a ratio of two intensities");
        if (StraightPlot().IsMatch(h.Text))
            return LeftOut("worked out from other columns for a straight plot");
        if (SymbolAtWavelength().IsMatch(h.Text))
            return new(ColumnUse.Signal, SpectrometryProperties.Absorbance, "an absorbance at a wavelength");
        if (h.Unit is Amounts.UnitText.Known { Unit: var unit } && unit.IsConvertibleTo(Potentials))
            return LeftOut("a potential, from which no concentration is worked out here; take in the concentrations that were read from the line of the standards");
        if (h.Has(W.Date) && kind is UnitKind.None && !h.Has(W.Time))
            return new(ColumnUse.Fact, SampleProperties.Day, "a date");
        // What came off the powder again is another liquid than what it was in.
        if (h.Has(W.Eluate) && kind is UnitKind.Volume or UnitKind.Concentration or UnitKind.Share or UnitKind.None)
            return LeftOut("of the eluate");
        return kind switch
        {
            UnitKind.Volume when IsDilutedFrom(h) => new(ColumnUse.DilutedFrom, SpectrometryProperties.Dilution, "a volume taken"),
            UnitKind.Volume when IsDilutedTo(h) => new(ColumnUse.DilutedTo, SpectrometryProperties.Dilution, "a volume made up to"),
            UnitKind.Volume when h.Tokens.Any(OfATitrant.Contains) => LeftOut("a volume of titrant"),
            UnitKind.Volume => h.HasAny(W.Dilution, W.Preparing, W.Background) ? null : Fact(BatchProperties.Volume, "a volume"),
            UnitKind.Mass => MassOf(h),
            UnitKind.Time => h.HasAny(W.Date, W.Preparing) || IsOfThePeak(h) ? null : Fact(BatchProperties.ContactTime, "a time"),
            UnitKind.Temperature => h.Has(W.Preparing) ? null : Fact(BatchProperties.Temperature, "a temperature"),
            UnitKind.Speed => Fact(BatchProperties.StirringSpeed, "turns per time"),
            UnitKind.Loading => h.Has(W.Spread) ? LeftOut("the scatter of a loading") : Fact(BatchProperties.ReportedUptake, "metal per mass of powder"),
            UnitKind.Share => ShareOf(h),
            UnitKind.Concentration => ConcentrationOf(h, table),
            UnitKind.None => Plain(h, table),
            // "Abs 540 nm": the unit is that of the wavelength.
            _ => h.Has(W.Absorbance) ? new(ColumnUse.Signal, SpectrometryProperties.Absorbance, "an absorbance") : null,
        };
    }

    /// <summary>True for a property that a column may hold without any unit.</summary>
    /// <param name="property">The property.</param>
    public static bool DoesWithoutUnit(Property property) => property.Unit.Length == 0 || NeedsNoUnit.Contains(property);

    // "filtrate taken (mL)" and "made up to (mL)": a dilution as two volumes.
    private static bool IsDilutedFrom(HeadingReading h)
        => h.Tokens.Any(Drawn.Contains) && !h.HasAny(W.Sorbent, W.Concentration);

    private static bool IsDilutedTo(HeadingReading h)
        => (h.Tokens.Contains("up") && h.Tokens.Any(t => t is "made" or "make" or "filled" or "topped")) || h.Tokens.Any(t => t is "aufgefullt" or "aforado" or "aforo" or "complete" or "completado" or "balao") || (h.Tokens.Contains("to") && h.Has(W.Dilution));

    // "Tempo rit. (min)", "RT (min)": when the peak came, no contact time.
    private static bool IsOfThePeak(HeadingReading h) => h.Tokens.Any(t => t is "rt" or "tr" or "ret" or "rit" or "retention" or "retentions" or "ritenzione" or "retencion" or "retencao" or "retentie" or "retencji" || t.StartsWith("retentionszeit", StringComparison.Ordinal));

    private static ColumnGuess? MassOf(HeadingReading h)
    {
        if (h.Has(W.Spread))
            return LeftOut("the scatter of a mass");
        // "taken out (mg)": of the metal, worked out.
        if ((h.Tokens.Any(IsTakenOut) || h.Tokens is [.., "taken", "out" or "up" or "off"]) && !h.HasAny(W.Sorbent, W.Boat, W.Full, W.Empty))
            return LeftOut("the mass of metal taken out");
        // "Net", "Netto": the boat is taken off already.
        if (h.Tokens.Any(IsNet) && !h.HasAny(W.Boat, W.Liquid) && !h.Text.Contains('+', StringComparison.Ordinal))
            return Fact(BatchProperties.Mass, "a net mass");
        // "boat + powder" is full, "boat after" is empty, "paper" alone is empty as well.
        if (h.Has(W.Boat) || h.Text.Contains('+', StringComparison.Ordinal) || (h.HasAny(W.Full, W.Empty) && !h.Has(W.Metal)))
        {
            if (h.Has(W.Liquid) && (h.Text.Contains('+', StringComparison.Ordinal) || (h.HasAny(W.Full, W.End) && !h.HasAny(W.Sorbent, W.Empty))))
                return new(ColumnUse.WeighedFilled, BatchProperties.Mass, "a weighing with powder and solution");
            var full = h.Has(W.Full) || h.Text.Contains('+', StringComparison.Ordinal) || (h.Has(W.Sorbent) && !h.Has(W.Empty)) || h.Has(W.Start);
            if (h.Has(W.Empty) && !h.Text.Contains('+', StringComparison.Ordinal))
                full = false;
            if (h.Has(W.End) && !h.Text.Contains('+', StringComparison.Ordinal))
                full = false;
            return new(full ? ColumnUse.WeighedFull : ColumnUse.WeighedEmpty, BatchProperties.Mass, full ? "a weighing with the powder" : "a weighing without the powder");
        }

        return h.HasAny(W.Metal, W.Background) || (h.Has(W.Removal) && !h.HasAny(W.Mass, W.Sorbent)) ? null : Fact(BatchProperties.Mass, "a mass");
    }

    /// <summary>True for a word that says that the boat is taken off: "net", "netto".</summary>
    /// <param name="token">In lower case, without accents.</param>
    internal static bool IsNet(string token) => token is "net" or "netto" or "neto" or "nett" or "nette";

    private static ColumnGuess? ShareOf(HeadingReading h)
    {
        if (h.HasAny(W.Spread, W.Recovery))
            return LeftOut(h.Has(W.Recovery) ? "a recovery" : "a relative scatter");
        if (h.HasAny(W.Remaining, W.End, W.Ratio) && !h.HasAny(W.Removal, W.Uptake))
            return Fact(BatchProperties.ReportedRemaining, "what is left, in per cent");
        return h.HasAny(W.Removal, W.Uptake) || h.Tokens.IsEmpty || (h.Tokens.Length == 1 && h.Tokens[0].Length == 1)
            ? h.Has(W.Removal) && h.HasAny(W.Remaining) && !h.Tokens.Any(t => t.StartsWith("remov", StringComparison.Ordinal)) ? Fact(BatchProperties.ReportedRemaining, "what is left, in per cent")
            : Fact(BatchProperties.ReportedRemoval, "what was taken out, in per cent")
            : null;
    }

    private static ColumnGuess? ConcentrationOf(HeadingReading h, TableTraits table)
    {
        if (h.Element is { } element && table.Analyte is { } analyte && element != analyte && !h.Names(analyte) && !h.Tokens.Any(t => t is "co" or "ce"))
            return null;
        if (h.Has(W.Limit))
            return LeftOut("a limit of the method");
        if (IsDifferenceOfConcentrations(h.Name))
            return LeftOut("a difference of two concentrations");
        if (h.HasAny(W.Recovery, W.Background))
            return null;
        if (h.Has(W.Spread))
            return new(ColumnUse.Uncertainty, SpectrometryProperties.ReportedConcentration, "the scatter of a concentration");
        if (h.Has(W.Dose) || (h.Has(W.Sorbent) && !h.HasAny(W.Concentration, W.Metal, W.Start, W.End, W.Removal, W.Uptake)) || (h.Has(W.Sorbent) && IsGramPerLitre(h)))
            return Fact(BatchProperties.Dose, "powder per volume");
        // "worked out / gone (mg/L)": the last word tells, whatever stands before it.
        if ((h.HasAny(W.Removal, W.Uptake) || h.Tokens.Contains("gone")) && !h.Has(W.Result) && (IsTakenOut(h.Tokens[^1]) || (!h.HasAny(W.Start, W.End) && h.Tokens.Any(IsTakenOut))))
            return new(ColumnUse.TakenOut, BatchProperties.ReportedRemoval, "a concentration taken out");
        if (h.Has(W.Standard) || (h.Has(W.Known) && table.HasSignal) || (h.Has(W.Check) && h.Has(W.Known)))
            return Fact(SpectrometryProperties.StandardConcentration, "the concentration of a standard");
        if (IsStart(h, table.Analyte) ?? (h.Has(W.Known) && !h.HasAny(W.End, W.AsRead)))
            return Fact(BatchProperties.InitialConcentration, "a concentration before contact");
        if (IsStart(h, table.Analyte) == false || h.Has(W.Remaining))
            return new(ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, "a concentration after contact");
        return h.HasAny(W.Concentration, W.Result, W.AsRead, W.Corrected, W.Metal, W.Sample, W.Mean) || h.Element is not null || h.Names(table.Analyte) || h.Tokens.IsEmpty
            ? new(ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, "a concentration")
            : null;
    }

    private static bool IsTakenOut(string token) => token.StartsWith("remov", StringComparison.Ordinal) || token is "adsorbed" or "sorbed" or "gone";

    // Words come before symbols, and Co and Ce are metals where the study is about them: "Co end" is after contact, "Co" alone may be C0.
    private static bool? IsStart(HeadingReading h, string? analyte)
    {
        var words = h.Tokens.Where(t => t.Length > 2 || t is "in" or "zu").ToList();
        var start = words.Exists(t => Lexicon.OfToken(t).Contains(W.Start)) || h.Tokens is [.., "in"] or ["in", ..];
        var end = words.Exists(t => Lexicon.OfToken(t).Contains(W.End)) || h.Tokens is [.., "out"] or ["out", ..];
        if (start != end)
            return start;
        if (start)
            return !h.Tokens.Any(t => t is "final" or "residual" or "equilibrium" or "after" or "remaining" or "left" or "end");
        var symbols = h.Tokens.Where(t => t.Length <= 4 && !(t == "co" && analyte == "Co") && !(t == "ce" && analyte == "Ce")).ToList();
        return symbols.Exists(t => Lexicon.OfToken(t).Contains(W.Start)) ? true : symbols.Exists(t => Lexicon.OfToken(t).Contains(W.End)) ? false : null;
    }

    private static bool IsGramPerLitre(HeadingReading h) => h.Unit is Amounts.UnitText.Known { Unit.Plain: "g/L" };

    private static ColumnGuess? Plain(HeadingReading h, TableTraits table)
    {
        if (h.Has(W.Ph) && h.Tokens.Any(t => t.StartsWith("ph", StringComparison.Ordinal) && t.Length <= 5))
            return Fact(h.Has(W.End) ? BatchProperties.EndPh : BatchProperties.StartPh, "a pH");
        if (h.Has(W.Spread) && (h.HasAny(W.Concentration, W.Result, W.Absorbance) || h.Tokens.Length == 1))
            return LeftOut("a scatter");
        if (h.Has(W.Dilution) && (!h.HasAny(W.Concentration, W.Result) || Lexicon.OfToken(h.Tokens[0]).Contains(W.Dilution)) && !h.Has(W.Corrected))
            return new(ColumnUse.Fact, SpectrometryProperties.Dilution, "a dilution factor");
        if (IsRatioOfConcentrations(h.Text))
            return Fact(BatchProperties.ReportedRemaining, "C/C0");
        // "A brute", "A netto": the symbol, and whether the blank is still in it.
        if (h.Tokens is ["a", var state] && (Raw.Contains(state) || state.StartsWith("net", StringComparison.Ordinal) || state.StartsWith("corr", StringComparison.Ordinal)))
            return new(ColumnUse.Signal, SpectrometryProperties.Absorbance, "an absorbance");
        // "A (1st)", "E 2nd": the symbol, and which reading of it.
        if (h.Tokens is ["a" or "e", var which] && char.IsUpper(h.Name[0]) && Ordinals.Contains(which))
            return new(ColumnUse.Signal, SpectrometryProperties.Absorbance, "an absorbance, read more than once");
        if (h.Has(W.Mean) && h.Tokens is [_, "a" or "e"] or ["a" or "e", _] && h.Name.Split(' ', '_').Any(p => p is "A" or "E"))
            return new(ColumnUse.Signal, SpectrometryProperties.Absorbance, "the mean of an absorbance");
        if (h.Has(W.Absorbance) && !h.HasAny(W.Removal, W.Spread))
            return new(ColumnUse.Signal, SpectrometryProperties.Absorbance, "an absorbance");
        if (IsDifferenceOfConcentrations(h.Text))
            return LeftOut("a difference of two concentrations");
        if (h.Has(W.Removal) || (h.Has(W.Uptake) && h.HasAny(W.Ratio, W.Percent)))
            return Fact(h.Has(W.Remaining) && !h.Tokens.Any(t => t.StartsWith("remov", StringComparison.Ordinal)) ? BatchProperties.ReportedRemaining : BatchProperties.ReportedRemoval, "a share taken out");
        if (h.Has(W.Ratio) && h.HasAny(W.Remaining, W.End))
            return Fact(BatchProperties.ReportedRemaining, "a share left");
        if (h.Tokens is ["in" or "out", "at"] or ["in" or "out"])
            return new(h.Tokens[0] == "in" ? ColumnUse.ClockStart : ColumnUse.ClockEnd, BatchProperties.ContactTime, "a time of the day");
        // "Conc. nota" is a concentration that is known, "nota" alone a note.
        if ((h.Has(W.Remark) && !(h.Has(W.Concentration) && h.Has(W.Known))) || h.Has(W.Person))
            return new(ColumnUse.Fact, SampleProperties.Remark, h.Has(W.Person) ? "a name" : "a remark");
        if (h.Has(W.Replicate))
            return new(ColumnUse.Position, null, "a replicate's number");
        if (h.Has(W.Role))
            return new(ColumnUse.Role, SampleProperties.Role, "what a sample is for");
        if (h.HasAny(W.Start, W.End) && h.Has(W.Time) && !h.Has(W.Concentration))
            return new(h.Has(W.Start) ? ColumnUse.ClockStart : ColumnUse.ClockEnd, BatchProperties.ContactTime, "a time of the day");
        if (h.Has(W.Date))
            return new(ColumnUse.Fact, SampleProperties.Day, "a date");
        if (h.Has(W.Temperature) && !h.HasAny(W.Concentration, W.Preparing))
            return Fact(BatchProperties.Temperature, "a temperature");
        if (h.HasAny(W.Contact, W.Time) && !h.HasAny(W.Concentration, W.Preparing))
            return Fact(BatchProperties.ContactTime, "a time");
        if ((h.Has(W.Boat) && h.HasAny(W.Full, W.Empty, W.Start, W.End)) || (h.Tokens is [var alone] && IsNet(alone)))
            return MassOf(h);
        if (h.HasAny(W.Mass, W.Sorbent) && !h.HasAny(W.Concentration, W.Removal, W.Sample, W.Metal) && h.Tokens.All(t => t is not "name"))
            return Fact(BatchProperties.Mass, "a mass");
        if (h.Has(W.Volume))
            return Fact(BatchProperties.Volume, "a volume");
        if (h.Has(W.Dose))
            return Fact(BatchProperties.Dose, "powder per volume");
        if (h.Has(W.Temperature))
            return Fact(BatchProperties.Temperature, "a temperature");
        if (h.HasAny(W.Standard, W.Known) && h.HasAny(W.Concentration, W.Result))
            return Fact(SpectrometryProperties.StandardConcentration, "the concentration of a standard");
        if (h.Has(W.Concentration) || h.Names(table.Analyte))
            return h.Has(W.Start) && !h.Tokens.Any(t => t is "ce" or "cf") ? Fact(BatchProperties.InitialConcentration, "a concentration before contact")
                : new(ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, "a concentration");
        if (h.HasAny(W.Start, W.End) && table.HasConcentrationWords && !h.HasAny(W.Sample, W.Position))
            return h.Has(W.Start) ? Fact(BatchProperties.InitialConcentration, "before contact") : new(ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, "after contact");
        if (table.NotesConcentration && h.HasAny(W.Result, W.AsRead) && !h.HasAny(W.Sample, W.Position, W.Role))
            return new(ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, "a result, in the unit that a line states");
        if (h.Has(W.Speed))
            return Fact(BatchProperties.StirringSpeed, "turns per time");
        if (h.Has(W.Position))
            return new(ColumnUse.Position, null, "a running number");
        return h.Has(W.Series) ? new(ColumnUse.Fact, SampleProperties.Series, "a series") : null;
    }

    /// <summary>True for "C/C0", "Ct/C0", "Ce : C0".</summary>
    /// <param name="text">A heading.</param>
    public static bool IsRatioOfConcentrations(string text)
    {
        var parts = text.Replace("_", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant().Split('/', ':');
        return parts is [var above, var below] && above is "c" or "ct" or "ce" or "cf" or "a" or "at" && below.StartsWith('c') | below.StartsWith('a') && below.Length >= 2 && below[1] is '0' or 'o' or 'i' or '₀';
    }

    /// <summary>True for "C0-Ce", "(Ci - Cf)", "ΔC", "delta C": what was taken out of a litre, worked out from two other columns.</summary>
    /// <param name="text">A heading without its unit.</param>
    public static bool IsDifferenceOfConcentrations(string text) => Difference().IsMatch(Lexicon.Plain(text).Replace("_", "", StringComparison.Ordinal));

    // "1/Ce", "ln qe", "log(qe-qt)", "Ce/qe", "t/qt", "qe/Ce"; "C/C0" is a share of its own.
    [GeneratedRegex(@"^\s*(1\s*/\s*[cq]|(ln|log|lg|log10)\s*\(?\s*[cqk]|(c|ce|cf|ceq|ct|t)\s*/\s*q|q[et]?\s*/\s*c(e|f|eq|t)?\b)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex StraightPlot();

    [GeneratedRegex(@"^\s*(\(?\s*C\s?(0|o|i|in|ini|init)\s*[-−–]\s*C\s?(e|f|t|eq|fin|final|end)\s*\)?|(Δ|∆|[Dd]elta|[Dd]iff\.?(erence)?( of)?)\s?[Cc](onc\.?)?)\s*([(\[/].*)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Difference();

    // "F 616 nm", "PL (450 nm)": F and PL are the symbols of emitted light.
    [GeneratedRegex(@"^\s*(F|FL|PL|[Ff]luor[a-zé.]*( int[a-z.]*)?)\s*_?[ (\[]?\s*(em\.?\s*)?[2-9]\d\d\s*(nm)?\s*[)\]]?\s*$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex LightAtWavelength();

    [GeneratedRegex(@"^\s*(\(?\s*[FI]_?[0o]\s*([-−–]\s*[FI]\s*\)?)?\s*/\s*[FI](_?[0o])?|[FI]\s*/\s*[FI]_?[0o])\s*$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex RatioOfLight();

    // A and E are the symbols of absorbance: "A (510 nm)", "E540".
    [GeneratedRegex(@"^\s*[AE]\s*_?[ (\[]?\s*(1[89]\d|[2-9]\d\d|10\d\d)\s*(nm)?\s*[)\]]?\s*$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex SymbolAtWavelength();

    private static ColumnGuess Fact(Property property, string why) => new(ColumnUse.Fact, property, why);

    private static ColumnGuess LeftOut(string why) => new(ColumnUse.LeftOut, null, why);
}

/// <summary>What the rest of a table says about a column.</summary>
/// <param name="HasSignal">True when absorbances or intensities stand in it.</param>
/// <param name="HasConcentrationWords">True when a title or another heading speaks of concentrations.</param>
/// <param name="NotesConcentration">True when a line states the unit of concentrations.</param>
/// <param name="Analyte">The study's element, or null.</param>
internal readonly record struct TableTraits(bool HasSignal, bool HasConcentrationWords, bool NotesConcentration, string? Analyte);
