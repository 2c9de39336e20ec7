namespace Holdfast.Techniques.Elements;

/// <summary>Words above amounts of elements: what they are amounts of, and which columns and rows hold none.</summary>
internal static class AmountWords
{
    /// <summary>Words for a place that was measured.</summary>
    public const string Places = "field* spot* spectrum spectra spektrum point* punkt* area site region stelle bild feld digest* aufschluss run replicate rep position champ campo zona zone espectro spectre punto* ponto* punti* pkt messung measurement analysis grain particle meting locatie widmo pole alan nokta titik area lokasi bead* perle* perla* perola* perl* pellet* pastilla* pastille* pastilha* tablette* 区域 点 谱图";

    /// <summary>Words above a column of elements.</summary>
    public const string ElementWords = "element* elem elemento* elemente symbol pierwiastek unsur элемент 元素";

    /// <summary>Words for oxides.</summary>
    public const string Oxides = "oxide* oxid* oxyd* ossid* tlenek tlenk* compound* verbindung* 氧化物 оксид*";

    /// <summary>Words for a column that is no amount of what was found.</summary>
    public const string Others = "intensity counts ratio line linie ligne linea linha linia series k z net apparent concentration standard label date";

    private const string MassWords = "wt weight mass massen* masse* masa massa gew gewicht* poids peso berat waga agirlik вес масс 质量 重量";
    private const string AtomWords = "at atom* mol mole molar моль ат атом* 原子 摩尔";
    private const string ErrorWords = "error err sigma uncertainty fehler abw* std sd dev* desv* odch* ecart* scarto rsd cv erreur errore incerteza blad hata 误差";
    private const string TotalWords = "total totals sum summe gesamt somme somma suma soma totale toplam jumlah razem итого 总 总计 合计 总量 σ";
    private const string Wanted = "nominal* target* theor* teor* expected esperado erwartet* soll* calc* calculated berechnet* zadan* attendu*";

    /// <summary>Words for a column that says where a place lies.</summary>
    public const string Positions = "position* posicao posicion* posizion* abstand* distance* distanz* distancia* distanza* pozycj* odleglosc* ort lage";

    private const string Losses = "loi ignition lost gluhverlust gluehverlust gv perte perda perdida perdita strata straty pf moisture drying trocknungsverlust* sechage secado secagem essiccamento suszenie";

    private const string Standards = "standard* etalon* padrao* patron* wzorzec* wzorc* standaard* referenzmaterial* crm srm acetanilid* cystin* sulfanilamid* sulphanilamid* sulfanilic* benzoic* benzoesaure* bbot methionin* nicotinamid* atropin*";
    private const string Blanks = "blank* blanko* blindwert* leer* branco blanco blanc bianco vide vuoto vuota vacia vacio vazia vazio pust* slepy leeg capsule capsula kapsel";

    /// <summary>Words for how much was weighed in.</summary>
    public const string WeighedWords = "weighed einwaage* eingewogen* inweeg* afgewogen pesee* pese pesata* pesato pesada* pesado pesagem navazk* nawazk* odwazk* invagning* invagt toma prise";

    private const string Numbers = "no nr number index lp num numero volgnr poradi sira";
    private const string Remarks = "obs* remark* note* nota* comment* commentaire* bemerkung* anmerkung* anm uwag* opmerking* osservazion*";

    /// <summary>True for a standard that was measured between the powders.</summary>
    /// <param name="label">Name of a row.</param>
    public static bool IsStandard(string label) => MeasuredTable.Has(label, Standards);

    /// <summary>True for a remark that begins by saying that its row is a standard.</summary>
    /// <param name="remark">The remark.</param>
    public static bool SaysStandard(string remark) => MeasuredTable.WordsOf(remark) is [{ } first, ..] && IsStandard(first);

    /// <summary>True for a column that numbers its rows.</summary>
    /// <param name="heading">Its heading.</param>
    public static bool IsNumber(string heading) => MeasuredTable.WordsOf(heading) is [{ } only] && MeasuredTable.Has(only, Numbers);

    /// <summary>True for an empty capsule, crucible or holder by its name; a powder may be called so too.</summary>
    /// <param name="label">Name of a row.</param>
    public static bool IsEmpty(string label) => MeasuredTable.Has(label, Blanks);

    /// <summary>True for a column of remarks.</summary>
    /// <param name="heading">Its heading.</param>
    public static bool IsRemark(string heading) => MeasuredTable.Has(heading, Remarks);

    /// <summary>True for what a table of oxides lost in the furnace.</summary>
    /// <param name="text">A label.</param>
    public static bool IsLoss(string text) => MeasuredTable.Has(text, Losses) || FileWords.Plain(text).StartsWith("h2o", StringComparison.Ordinal) || FileWords.Plain(text).StartsWith("co2", StringComparison.Ordinal);

    /// <summary>True for a total.</summary>
    /// <param name="text">A label.</param>
    public static bool IsTotal(string text) => MeasuredTable.Has(text, TotalWords);

    /// <summary>True for an amount by atoms.</summary>
    /// <param name="text">A heading.</param>
    public static bool IsAtomic(string text) => MeasuredTable.Has(text, AtomWords);

    /// <summary>True for an amount by mass.</summary>
    /// <param name="text">A heading.</param>
    public static bool IsMass(string text) => MeasuredTable.Has(text, MassWords) && !text.Contains("mg", StringComparison.Ordinal);

    /// <summary>True for an error or a scatter.</summary>
    /// <param name="text">A heading.</param>
    public static bool IsError(string text) => MeasuredTable.Has(text, ErrorWords) || text.Contains('±', StringComparison.Ordinal) || text.StartsWith('σ');

    /// <summary>True for what should be there and was not measured.</summary>
    /// <param name="text">A heading.</param>
    public static bool IsWanted(string text) => MeasuredTable.Has(text, Wanted);

    /// <summary>The unit of an amount in a gram or kilogram that a text states; null for none.</summary>
    /// <param name="text">A heading or line.</param>
    public static string? PerGram(string text)
    {
        var plain = FileWords.Plain(text).Replace(" ", "", StringComparison.Ordinal);

        // "mg/kg" holds "g/kg", and "µg/g" is as much.
        return plain.Contains("mg/kg", StringComparison.Ordinal) || plain.Contains("mgkg-1", StringComparison.Ordinal) || plain.Contains("µg/g", StringComparison.Ordinal) || plain.Contains("μg/g", StringComparison.Ordinal) ? "mg/kg"
            : plain.Contains("mg/g", StringComparison.Ordinal) || plain.Contains("mgg-1", StringComparison.Ordinal) || plain.Contains("g/kg", StringComparison.Ordinal) ? "mg/g" : null;
    }

    /// <summary>True where what is left of a heading behind its element says an amount.</summary>
    /// <param name="rest">"wt%", "mg/g".</param>
    public static bool IsAmount(string rest) => rest.Contains('%', StringComparison.Ordinal) || IsAtomic(rest) || IsMass(rest) || PerGram(rest) is not null;
}
