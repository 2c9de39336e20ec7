using System.Text.RegularExpressions;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>What headings and lines of an isotherm's file mean, in the languages of the bench. Recognised by words and units, not by any instrument's wording.</summary>
internal static partial class SorptionWords
{
    /// <summary>A text as all techniques compare it.</summary>
    private static string Plain(string text) => FileWords.Plain(text);

    /// <summary>What a column holds by its heading and the unit under it.</summary>
    /// <param name="heading">Heading, with the cell of the line of units behind it.</param>
    public static SorptionColumn Meaning(string heading)
    {
        var plain = Plain(heading);
        if (plain.Length == 0 || plain.EndsWith("_uncertainty", StringComparison.Ordinal))
            return SorptionColumn.Other;
        if (Derived().IsMatch(plain))
            return SorptionColumn.Derived;
        if (Relative().IsMatch(plain) && !Inverse().IsMatch(plain))
            return SorptionColumn.Relative;
        if (Saturation().IsMatch(plain))
            return SorptionColumn.Saturation;
        if (OtherThing().IsMatch(plain))
            return SorptionColumn.Other;
        if (AmountUnit.In(heading) is { } unit && !plain.StartsWith('p') && (unit.Per == AmountPer.Gram || AmountWord().IsMatch(plain) || Symbol().IsMatch(plain)))
            return SorptionColumn.Amount;
        if (BranchWord().IsMatch(plain))
            return SorptionColumn.Branch;
        if (Pressure().IsMatch(plain))
            return SorptionColumn.Absolute;
        return AmountWord().IsMatch(plain) ? SorptionColumn.Amount : SorptionColumn.Other;
    }

    /// <summary>"adsorption", "desorption", or null for a text that names no branch. "Volume adsorbed" names none.</summary>
    /// <param name="text">A heading, a label or a cell.</param>
    public static string? Branch(string text)
    {
        var plain = Plain(text);
        // A whole word decides over a short form, which may be an article: "rama de adsorción", "adsorption des gaz".
        return Desorption().IsMatch(plain) ? SorptionReading.Desorption : AdsorptionBranch().IsMatch(plain) ? SorptionReading.Adsorption
            : ShortDesorption().IsMatch(plain) ? SorptionReading.Desorption : ShortAdsorption().IsMatch(plain) ? SorptionReading.Adsorption : null;
    }

    /// <summary>True for a text that is the name of a branch and nothing more, or a heading of one: "Adsorption", "Desorption branch".</summary>
    /// <param name="text">A label or cell.</param>
    public static bool IsBranchLabel(string text) => Branch(text) is not null && Plain(text).Length <= 40 && Relative().IsMatch(Plain(text)) is false && AmountUnit.In(text) is null;

    /// <summary>"per-gram" or "whole-sample" where words say which of the two amounts are, null where they say neither or both.</summary>
    /// <param name="text">Heading and notes.</param>
    public static string? PerWhat(string text)
    {
        var plain = Plain(text);
        var denied = DeniesPerGram(text);
        return (!denied && PerGram().IsMatch(plain), denied || WholeSample().IsMatch(plain)) switch
        {
            (true, false) => SorptionReading.PerGram,
            (false, true) => SorptionReading.WholeSample,
            _ => null,
        };
    }

    /// <summary>True for a text that says that an amount is not per gram: "non per grammo!".</summary>
    /// <param name="text">Heading and notes.</param>
    public static bool DeniesPerGram(string text) => NotPerGram().IsMatch(Plain(text));

    /// <summary>True for a text that names nitrogen.</summary>
    /// <param name="text">The gas as written.</param>
    public static bool IsNitrogen(string text) => NitrogenName().IsMatch(Plain(text));

    /// <summary>The gas other than nitrogen that a text names, as written there, or null; helium only fills the empty tube.</summary>
    /// <param name="text">A line, a heading, the name of a file.</param>
    public static string? OtherGas(string text) => OtherGasName().Match(Plain(text)) is { Success: true } found ? found.Groups["gas"].Value : null;

    /// <summary>Which known setting a key names, or null.</summary>
    /// <param name="key">The key as written.</param>
    public static string? Setting(string key)
    {
        var plain = Plain(key);
        return plain.StartsWith("_units_pressure", StringComparison.Ordinal) ? "unit-of-pressure"
            : plain.StartsWith("_units_loading", StringComparison.Ordinal) ? "unit-of-amount"
            : plain.StartsWith("_units_temperature", StringComparison.Ordinal) ? "unit-of-temperature"
            : plain.StartsWith("_units_mass", StringComparison.Ordinal) ? "unit-of-mass"
            : ReferenceArea().IsMatch(plain) ? SorptionIsotherm.ReferenceArea
            : Mass().IsMatch(plain) && !NotMass().IsMatch(plain) ? "mass"
            : plain is "_exptl_p0" || (Saturation().IsMatch(plain) && !Relative().IsMatch(plain)) ? "p0"
            : Degas().IsMatch(plain) ? DegasTime().IsMatch(plain) ? "degas-time" : DegasTemperature().IsMatch(plain) ? "degas-temperature" : "degas"
            : Gas().IsMatch(plain) ? "adsorptive"
            : Bath().IsMatch(plain) && !Room().IsMatch(plain) ? "bath-temperature"
            : SampleName().IsMatch(plain) && !NotName().IsMatch(plain) ? "sample"
            : null;
    }

    [GeneratedRegex(@"per gram|pro gramm|par gramme|por gramo|por grama|per grammo|na gram|на грамм|на 1 г|每克|per g |normali[sz]ed (to|by) (the )?(sample )?mass", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerGram();

    [GeneratedRegex(@"(not|nicht|kein\w*|pas|no|nao|non|nie|niet|ikke|inte|degil|ne)\W+(per|pro|par|por|na|je) (gram\w*|g([^a-z]|$))", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NotPerGram();

    [GeneratedRegex(@"whole sample|entire sample|total sample|per sample|/ ?sample|not normali[sz]ed|gesamte probe|ganze probe|pro probe|echantillon entier|par echantillon|muestra entera|toda la muestra|por muestra|campione intero|intero campione|tutto il campione|cal(a|ej) prob\w*|hele monster|hela provet|hele proven|numunenin tamami|cely vzorek|celeho vzorku|amostra inteira|por amostra|всей навеск|на навеск|整个样品", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex WholeSample();

    [GeneratedRegex(@"(reference|certified|known) (surface )?area|referenzflache|(surface|aire|area|superficie) (specifique )?de ref", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex ReferenceArea();

    [GeneratedRegex(@"1\s*/\s*[\[({]|/\s*[\[({]\s*[vnwq]\w*\s*[*·(]|p\s*-\s*1|thickness|schichtdicke|epaisseur|espesor|spessore|d[vsn](p|ads)?\s*\(?\w*\)?\s*/\s*d|pore|poro|poren|pori|пор[аыо]|孔|diamet|durchmesser|cumul|kumul|radius|alpha|α", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Derived();

    [GeneratedRegex(@"(^|[^a-z0-9])p\s*[/⁄∕÷]\s*\(?p\s*[_^]?\s*[{(]?\s*(0|o|°|\*|s|sat)([^a-z0-9]|$)|(^|[^a-z0-9])p\s*[·⋅]?\s*p_?(0|o|°)\s*\^?\s*-1|(^|[^a-z])p_?rel([^a-z]|$)|relativ\w*[\s_.-]*(druck|dr\.|pressure|press|p\b|tryck|tlak)|(druck|pression|presion|pressao|pressione|cisnienie|tekanan|tlak|tryck|pressure|druk)\s*,?\s*\(?(relativ|wzgl|relatif|rel\b)|rel\.?[\s_]*(pressure|press\.?|druck|p\b)|relatieve druk|relativni tlak|относит\w*\s*давл|давлен\w*\s*относит|相对压|相対圧|相對壓|상대\s*압력|bag[ıi]l\s*bas[ıi]n|nispi\s*bas[ıi]n|wzgledne\s*cisn", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Relative();

    [GeneratedRegex(@"(^|[^a-z])p\s*_?(0|o|°)\s*/\s*p([^a-z0-9]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Inverse();

    [GeneratedRegex(@"satur|sattig|sattig|dampfdruck|vapou?r pressure|насыщ|饱和|飽和|doyma|doymus|nasycon|nasycen|jenuh|verzadig|_p0$|(^|[^a-z/])p\s*_?[{(]?(0|o|°|s|sat)[})]?([^a-z0-9]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Saturation();

    [GeneratedRegex(@"(^|[^a-z])(time|zeit|temps|tiempo|tempo|время|时间|時間|sure|zaman|czas|waktu|tijd|temperatur\w*|temp)([^a-z]|$)|uncertaint|unsicherh|std\.? ?dev|enthalp|heat|(^|[^a-z])(no|nr|n°|#|point|punkt|index|step)\.?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex OtherThing();

    [GeneratedRegex(@"adsorb|adsorv|sorbed|sorbiert|(^|[^a-z])ads\.? ?(vol|amount|quant|menge)|vol\w*\.? ?@? ?(ads|stp)|(^|[^a-z])[vnqw][_\s]?\(?(ads|des)\w*\)?|uptake|loading|beladung|quantit|cantidad|quantidad|(^|[^a-z])menge|_amount|amount|адсорб|поглощ|吸附量|吸着量|흡착|adsorplan|adsorbowan|teradsorp|geadsorb|(^|[^a-z])(volume|volumen|vol|объем)([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex AmountWord();

    [GeneratedRegex(@"^[vnqwa](_?[a-z0-9]{0,4})?([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Symbol();

    [GeneratedRegex(@"(^|[^a-z])(branch|zweig|ast|branche|rama|ramo|galaz|dal|tak|kol|cabang|direction|richtung|ads ?/ ?des)([^a-z]|$)|ветв|分支|^(adsorption|desorption|ads\.?|des\.?)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex BranchWord();

    [GeneratedRegex(@"press|druck|presion|давлен|压力|圧力|壓力|압력|bas[ıi]nc|tekanan|cisnien|(^|[^a-z])(tlak|tryck|druk)([^a-z]|$)|^p(_?(abs|eq|e))?(\s*[/,(\[]|\s*$|\s+in\s)|^_(ad|de)sorp_pressure", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Pressure();

    [GeneratedRegex(@"des+orp|des+orc|des+orb|des+orz|десорб|脱附|脱着|脫附|탈착", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Desorption();

    [GeneratedRegex(@"adsorp(_|tio|tie|cj|s|$)|adsorc|adsorz|adsorbim|адсорбц|^(吸附|吸着|흡착)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex AdsorptionBranch();

    [GeneratedRegex(@"(^|[^a-z])des\.?([^a-z]|$)|^d$|(^|[^a-z])down([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex ShortDesorption();

    [GeneratedRegex(@"(^|[^a-z])ads\.?([^a-z]|$)|^a$|(^|[^a-z])up([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex ShortAdsorption();

    [GeneratedRegex(@"(^|[^a-z0-9])n2([^a-z0-9]|$)|nitrog|stickstoff|azot|азот|氮|窒素|질소|stikstof|kvav|kvæl|dusik|typpi", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NitrogenName();

    [GeneratedRegex(@"(^|[^a-z0-9])(?<gas>co2|carbon dioxide|kohlen(stoff)?dioxid|dioxyde de carbone|dioxido de carbono|anidride carbonica|diossido di carbonio|dwutlenek wegla|koolstofdioxide|koldioxid|argon|krypton|methane?|metano?|ch4|h2|hydrogen|wasserstoff|water vapou?r|wasserdampf|vapeur d'eau|vapor de agua)([^a-z0-9-]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex OtherGasName();

    [GeneratedRegex(@"degas|outgas|evacu|ausheiz|entgas|ausgas|degaz|desgas|desgasif|дегаз|脱气|脱ガス|除气|gaz giderme|odgaz|pretreat|vorbehandl|pretrait|activat|aktivier|_degas_|ontgass|vakuum|vacuum", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Degas();

    [GeneratedRegex(@"time|zeit|temps|tiempo|tempo|duration|dauer|время|时间|時間|sure|czas|waktu|\bh\b|\bmin\b", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex DegasTime();

    [GeneratedRegex(@"temp|°c|\bt\b|温度", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex DegasTemperature();

    [GeneratedRegex(@"mass|weight|einwaage|prise d.ess|prise d.ech|pesee|pesata|pesagem|pesada|inweeg|odwazk|navazk|invagning|gewicht|masse|poids|(^|[^a-z])(peso|masa|massa|berat|waga|kutle|hmotnost|vikt|m)([^a-z0-9]|$)|вес|масса|навеск|质量|質量|重量|무게", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Mass();

    [GeneratedRegex(@"loss|lost|verlust|perte|perdida|perdita|perda|strata|verlies|molar|molec|molek|tube|tare|tara|leer|empty|cell|atomic|flow|before|vor dem|avant|(^|[^a-z])(prima|antes|przed|once|voor|pred|fore|for)([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NotMass();

    [GeneratedRegex(@"ambient|room|raum|ambiant|umgebung|manifold", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Room();

    [GeneratedRegex(@"density|dichte|volume|tube|rohr|cell|holder|port|prep|molar|number of|mass|weight", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NotName();

    [GeneratedRegex(@"adsorptiv|adsorbat(e|iv)?$|adsorbate|(^|[^a-z])(gas|gaz|messgas|analysis gas|gasart)([^a-z]|$)|газ|气体|吸附质|ガス|_exptl_adsorptive", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Gas();

    [GeneratedRegex(@"bath|bad([^a-z]|$)|badtemp|analysis temp|messtemp|bain|bano|banho|bagno|_exptl_temperature|(^|[^a-z])(temperature|temperatur|temp\.?|t|temperatura)([^a-z]|$)|температур|温度", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Bath();

    [GeneratedRegex(@"(^|[^a-z])(sample|probe|proben?bezeichnung|echantillon|muestra|amostra|campione|numune|probka|sampel|vzorek|prov|monster|powder|pulver|material|materiau)([^a-z]|$)|образ|样品|試料|시료|_material_id|_sample_id", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex SampleName();
}

/// <summary>What a column of an isotherm's table holds.</summary>
internal enum SorptionColumn
{
    /// <summary>Nothing that is used.</summary>
    Other,

    /// <summary>Worked out from the isotherm: a BET ordinate, a layer's thickness, a pore's size.</summary>
    Derived,

    /// <summary>p/p0.</summary>
    Relative,

    /// <summary>Pressure.</summary>
    Absolute,

    /// <summary>Saturation pressure.</summary>
    Saturation,

    /// <summary>Amount adsorbed.</summary>
    Amount,

    /// <summary>Which branch a row belongs to.</summary>
    Branch,
}
