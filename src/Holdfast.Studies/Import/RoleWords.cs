using System.Collections.Frozen;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import;

/// <summary>Words for what a sample is for, in a column of their own or at the start of its label.</summary>
internal static class RoleWords
{
    private static readonly FrozenDictionary<string, SampleRole> Words = Group(
        (SampleRole.Vessel, "vessel vial sample unknown unk smp test treated sorption probe muestra amostra campione echantillon s u after filtrate supernatant"),
        (SampleRole.Standard, "standard std stnd cal calibration calibrationstandard calstd calibrator etalon kalibrierung kalibrierstandard patron padrao taratura eichstandard"),
        (SampleRole.CheckStandard, "checkstandard checkstd check chk qc qcstandard qualitycontrol ccv icv kontrollstandard standardcheck recheck verification"),
        (SampleRole.Blank, "blank blk reagentblank methodblank calibrationblank calblank blindwert blindprobe leerwert blanc blanco branco bianco zero"),
        (SampleRole.Solvent, "solvent solventblank scatter scatterblank liquidalone rinse wash washing spulen"),
        (SampleRole.Control, "control ctrl sorbentfree sorbentfreecontrol nosorbent nopowder withoutpowder ohnepulver temoin kontrolle testigo testemunha controllo"),
        (SampleRole.SorbentBlank, "sorbentblank sorbentonly powderblank powderonly nometal withoutmetal ohnemetall sansmetal sinmetal semmetal senzametallo zondermetaal bezmetalu"),
        (SampleRole.StartSolution, "startsolution start initial initialsolution feed stock stocksolution working workingsolution startlosung ausgangslosung anfangslosung solutioninitiale solucioninicial solucaoinicial soluzioneiniziale before untreated c0 original inicial iniziale initiale"),
        (SampleRole.Spike, "spike spiked spk matrixspike"),
        (SampleRole.Digest, "digest digested digestion solid"),
        (SampleRole.Outlet, "outlet effluent columnoutlet"));

    // Laboratories' short codes for kinds of rows; on a label two letters may mean anything.
    private static readonly FrozenDictionary<string, SampleRole> InColumns = Group(
        (SampleRole.Blank, "cb icb ccb lrb mb rb"), (SampleRole.CheckStandard, "lfb lcs ipc"), (SampleRole.Spike, "ms msd lfm"));

    // Only these are safe to tell from a label; a vial called "Control 3" may be a control of anything.
    private static readonly FrozenSet<SampleRole> OnLabels = [SampleRole.Standard, SampleRole.CheckStandard, SampleRole.Blank, SampleRole.Solvent];

    /// <summary>What a role column's cell says, or null.</summary>
    /// <param name="text">The cell.</param>
    public static SampleRole? Read(string text) => Kinds.Of(text);

    private static readonly ByShape<SampleRole?> Kinds = new(text =>
    {
        if (InColumns.TryGetValue(HeadingWords.Key(text), out var role) || Words.TryGetValue(HeadingWords.Key(text), out role) || Words.TryGetValue(HeadingWords.Key(Lexicon.Plain(text)), out role))
            return role;
        var words = Lexicon.Of(text);
        return words.Contains(HeadingWord.Check) ? SampleRole.CheckStandard
            : words.Contains(HeadingWord.Blank) ? SampleRole.Blank
            : words.Contains(HeadingWord.Standard) ? SampleRole.Standard
            : words.Contains(HeadingWord.Start) ? SampleRole.StartSolution
            : words.Contains(HeadingWord.Control) ? SampleRole.Control
            : words.Contains(HeadingWord.Sample) ? SampleRole.Vessel : null;
    });

    /// <summary>What a label hints at, or null: "Std 2", "Blank", "QC-1", "Working solution 40".</summary>
    /// <param name="code">The label.</param>
    public static SampleRole? Guess(string code) => Labels.Of(code);

    private static readonly ByShape<SampleRole?> Labels = new(code =>
    {
        var first = string.Concat(code.TrimStart().TakeWhile(char.IsLetter));
        if (Words.TryGetValue(Lexicon.Plain(first).ToLowerInvariant(), out var role) && OnLabels.Contains(role))
            return role;
        var tokens = Lexicon.Tokens(code);
        // "CO1" is a vessel of a cobalt series, and no C0.
        var words = Lexicon.Of(tokens.Where(IsWord));
        if (words.Contains(HeadingWord.Check) && (words.Contains(HeadingWord.Standard) || tokens[0] is "qc" or "check"))
            return SampleRole.CheckStandard;
        if (words.Contains(HeadingWord.Blank))
            return SampleRole.Blank;
        if (tokens.Any(t => t is "stock" or "working" or "feed") || (words.Contains(HeadingWord.Start) && (words.Contains(HeadingWord.Liquid) || tokens.All(t => t.All(char.IsDigit) || t.Length == 1 || IsElement(t) || (IsWord(t) && Lexicon.OfToken(t).Contains(HeadingWord.Start))))) || tokens is ["c0", ..] or ["t0"] or ["sol", "in"])
            return SampleRole.StartSolution;
        if (words.Contains(HeadingWord.Standard) && tokens.Length <= 4)
            return SampleRole.Standard;
        return code.Contains("no powder", StringComparison.OrdinalIgnoreCase) || code.Contains("without", StringComparison.OrdinalIgnoreCase) || code.Contains("no sorbent", StringComparison.OrdinalIgnoreCase)
            || code.Contains("ohne", StringComparison.OrdinalIgnoreCase) || code.Contains("sans ", StringComparison.OrdinalIgnoreCase) || code.Contains("sin ", StringComparison.OrdinalIgnoreCase) || code.Contains("sem ", StringComparison.OrdinalIgnoreCase) || code.Contains("senza", StringComparison.OrdinalIgnoreCase)
            ? SampleRole.Control : null;
    });

    /// <summary>True for a label that says water and what it was read for, and nothing else: "eau (témoin)", "Wasser Kontrolle", "agua control 2"; river water is a sample.</summary>
    /// <param name="code">The label.</param>
    public static bool SaysWaterAlone(string code)
    {
        var tokens = Lexicon.Tokens(code);
        return tokens.Any(Waters.Contains) && (Lexicon.Of(tokens).Contains(HeadingWord.Control) || tokens.All(t => Waters.Contains(t) || OfPureWater.Contains(t))) && tokens.All(t => Waters.Contains(t) || OfPureWater.Contains(t) || t.All(char.IsDigit) || t.Length == 1 || Lexicon.OfToken(t).Contains(HeadingWord.Control));
    }

    private static readonly FrozenSet<string> Waters = "water wasser eau agua acqua woda voda su vatten".Split(' ').ToFrozenSet(StringComparer.Ordinal);
    private static readonly FrozenSet<string> OfPureWater = "di mq milliq milli dest dist distilled deionised deionized demi demin ultrapure pure pur distillee desionisee destilada desionizada deionizada distillata deionizzata destilliert entionisiert destylowana destilovana saf destillerat de".Split(' ').ToFrozenSet(StringComparer.Ordinal);

    /// <summary>True for a remark that says that a vessel holds no powder: "ohne Pulver", "sans adsorbant", "control", "blank without NP".</summary>
    /// <param name="remark">The remark.</param>
    public static bool SaysWithoutPowder(string remark)
    {
        var words = Lexicon.Of(remark);
        return words.Contains(HeadingWord.Control) || (words.Contains(HeadingWord.Sorbent) && Lexicon.Tokens(remark).Any(t => t == "sorbentfree" || Lexicon.Denials.Contains(t)));
    }

    // "Ag start", "U start A".
    private static bool IsElement(string token) => token.Length == 2 && Composition.ElementNames.SymbolOf(char.ToUpperInvariant(token[0]) + token[1..]) is not null;

    /// <summary>True for a cell of a mass column that says in words that nothing was weighed: "none", "no powder", "ohne".</summary>
    /// <param name="cell">The cell.</param>
    public static bool SaysNothing(string cell) => Lexicon.Tokens(cell) is [var first, ..] tokens && tokens.Length <= 2 && Lexicon.Denials.Contains(first);

    private static bool IsWord(string token) => token.AsSpan().TrimEnd("0123456789").Length > 2;

    private static FrozenDictionary<string, SampleRole> Group(params (SampleRole Role, string Words)[] groups)
        => groups.SelectMany(g => g.Words.Split(' ').Select(w => (w, g.Role))).ToFrozenDictionary(x => x.w, x => x.Role, StringComparer.Ordinal);
}
