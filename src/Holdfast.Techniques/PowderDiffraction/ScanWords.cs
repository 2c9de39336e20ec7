using System.Text.RegularExpressions;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Words over the columns of a scan, in the tongues in which instruments write.</summary>
internal static partial class ScanWords
{
    /// <summary>Longest any search in a line may take, ms. Lines are cut to <see cref="LongestLine"/>, so none comes near.</summary>
    public const int Patience = 10_000;

    /// <summary>Characters of a line that are looked at.</summary>
    public const int LongestLine = 300;

    /// <summary>The abscissa a heading names, or null.</summary>
    /// <param name="heading">A heading.</param>
    public static ScanAxis? Axis(string heading)
        => SaysTwoTheta(heading) ? ScanAxis.TwoTheta
            : Theta().IsMatch(heading) ? ScanAxis.Theta
            : Q().IsMatch(heading) ? ScanAxis.Q
            : SaysSpacing(heading) || BareD().IsMatch(heading) ? ScanAxis.Spacing
            : Angle().IsMatch(heading) ? ScanAxis.TwoTheta : null;

    /// <summary>True when a heading says 2θ in so many words.</summary>
    /// <param name="heading">A heading.</param>
    public static bool SaysTwoTheta(string heading) => TwoTheta().IsMatch(heading) && !DeniesTwoTheta(heading);

    /// <summary>A line without the words for 2θ, of which the 2 is no number.</summary>
    /// <param name="line">A line.</param>
    public static string WithoutTwoTheta(string line) => TwoTheta().Replace(line, " ");

    /// <summary>True for a line that says that the angles are θ and not 2θ.</summary>
    /// <param name="line">A line or heading.</param>
    public static bool DeniesTwoTheta(string line) => NotTwoTheta().IsMatch(line) && Theta().IsMatch(NotTwoTheta().Replace(line, " "));

    /// <summary>True when a heading says in so many words that it is the spacing of planes: a d alone may be a diameter.</summary>
    /// <param name="heading">A heading.</param>
    public static bool SaysSpacing(string heading) => Spacing().IsMatch(heading);

    /// <summary>What else a heading names, or null for words that are nothing of the kind.</summary>
    /// <param name="heading">A heading.</param>
    public static ScanColumn? Column(string heading)
        => Background().IsMatch(heading) ? ScanColumn.Background
            : Uncertainty().IsMatch(heading) ? ScanColumn.Uncertainty
            : Computed().IsMatch(heading) ? ScanColumn.Computed
            : Time().IsMatch(heading) && !Intensity().IsMatch(heading) ? ScanColumn.Time
            : Number().IsMatch(heading) ? ScanColumn.Number
            : Intensity().IsMatch(heading) ? ScanColumn.Intensity : null;

    /// <summary>Unit of an intensity as its heading says: "counts", "counts/s" or "" for none.</summary>
    /// <param name="heading">A heading.</param>
    public static string IntensityUnit(string heading)
        => Rate().IsMatch(heading) ? "counts/s" : Counts().IsMatch(heading) ? "counts" : "";

    /// <summary>True when a line speaks of a diffractometer or of a scan of angles.</summary>
    /// <param name="text">A line.</param>
    public static bool IsOfDiffraction(string text) => Diffraction().IsMatch(text.Replace("alfa", "alpha", StringComparison.OrdinalIgnoreCase));

    /// <summary>True for a key that names what was scanned: "sample", "scan".</summary>
    /// <param name="key">The key in plain spelling, digits taken off.</param>
    public static bool NamesScan(string key) => FileWords.NamesAPowder(key) || Scanned().IsMatch(key);

    [GeneratedRegex(@"^(scan|range|run|aufnahme|messung|lauf|mesure|balayage|barrido|medida|varredura|medicao|scansione|misura|pomiar|skan|meting|pattern|diffrac?togram\w*|difractograma|dyfraktogram)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Scanned();

    [GeneratedRegex(@"2\s*[-*·_]?\s*(theta|thêta|th(?![a-z])|θ|ϑ|Θ|q(?![a-z]))|(two|due|zwei|deux|dos|dois|dwa|twee|två)[\s\-_]*th[eê]ta|t(wo)?theta|(?<![a-z])tth(?![a-z])|2\s*тета|°\s*2\s*[tθ]", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex TwoTheta();

    [GeneratedRegex(@"(?<!\p{L})(not|nicht|kein\w*|pas|non|no|nao|não|nie|niet|inte|ikke)\W+(\w+\W+)?(2|two|due|zwei|deux|dos|dois|dwa|twee|två)[\s\-_*·]*(th[eê]ta|th(?![a-z])|[θϑΘ])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex NotTwoTheta();

    [GeneratedRegex(@"(?<![a-z])(theta|thêta|тета)(?![a-z])|[θϑΘ]", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Theta();

    [GeneratedRegex(@"^\W*(angle|winkel|ángulo|ângulo|angulo|angolo|hoek|kąt|kat|vinkel|úhel|uhel|açı|aci|угол|角度|pos\.?|position)(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Angle();

    [GeneratedRegex(@"^\W*q(?![a-z])|scattering vector|momentum transfer", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Q();

    [GeneratedRegex(@"d[\s\-]?(spacing|value|wert)|interplan|netzebenenabst|interr(é|e)ticul|odleg(ł|l)o(ś|s)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Spacing();

    [GeneratedRegex(@"^\W*d(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex BareD();

    [GeneratedRegex(@"back\s*-?ground|bkgd?|bgnd?|(?<![a-z])bg(?![a-z])|untergrund|base\s*-?line|grundlinie|fond|fondo|фон|背景", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Background();

    [GeneratedRegex(@"sqrt|√|square root|wurzel|racine|ra(í|i)z|radice|pierwiast|(?<![a-z])wortel|error|(?<![a-z])err(?![a-z])|sigma|σ|(?<![a-z])e\.?s\.?d|std|uncert|fehler|erreur|(?<![a-z])su(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Uncertainty();

    [GeneratedRegex(@"calc|(?<![a-z])fit(ted)?(?![a-z])|model|differ|(?<![a-z])diff(?![a-z])|residu|smooth|geglättet|ber\.", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Computed();

    [GeneratedRegex(@"(?<![a-z])time(?![a-z])|zeit|temps|tiempo|dwell", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Time();

    [GeneratedRegex(@"^\W*(no\.?|nr\.?|n°|#|index|point|punkt|punto|ponto|punt|pkt|nokta|bod|lp|volgnr|row|step no\.?)\W*$", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Number();

    [GeneratedRegex(@"count|intens|(?<![a-z])int(?![a-z])|(?<![a-z])cps(?![a-z])|(?<![a-z])cts|imp(uls|\.|/|\W|$)|z(ä|ae)hl|coups|cuentas|contagens|conteggi|tellen|tellingen|zlicze\w*|sayım|(?<![a-z])i(?![a-z])|(?<![a-z])y(obs)?(?![a-z])|импульс|强度|計数|(?<![a-z])det", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Intensity();

    [GeneratedRegex(@"cps|/\s*s(?![a-z])|s\^?-1|per second|pro sekunde|counts?/sec", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Rate();

    [GeneratedRegex(@"count|cts|imp(uls|\.|\W|$)|coups|cuentas", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Counts();

    [GeneratedRegex(@"diffract|diffrakt|(?<![a-z])p?xrd(?![a-z])|goniomet|(?<=(^|[^\p{L}])((cu|co|mo|fe|cr|ag)[\s\-_]*)?)k[\s\-_]*(alpha|α|a)[\s\-_]*[12]?(?![\p{L}])|anode|x[\s\-]?ray|röntgen|bragg|divergence slit", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Diffraction();
}
