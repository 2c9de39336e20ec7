using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Holdfast.Studies.Import.Headings;

/// <summary>
/// The words of the bench in English, German, French, Spanish, Portuguese, Italian, Dutch, Polish, Turkish, Swedish, Czech and Indonesian. A plain entry is a whole word; one that begins with ~ is a stem
/// that may stand anywhere in a longer word, as in German compounds ("Anfangskonzentration").
/// </summary>
/// <remarks>Common practice of the trade; accents are left out, since they are left out of what is compared as well.</remarks>
internal static class Lexicon
{
    private const int ShortestCompound = 5;
    private const int ShortestMisspelt = 5;
    private const int ShortestAbbreviation = 4;
    private const int LongestAbbreviation = 9;
    private static readonly System.Collections.Concurrent.ConcurrentDictionary<string, string> Guesses = new(StringComparer.Ordinal);
    private static readonly System.Collections.Concurrent.ConcurrentDictionary<string, ImmutableArray<HeadingWord>> Abbreviations = new(StringComparer.Ordinal);
    private static readonly ImmutableArray<string> Plurals = ["s", "es", "en", "n"];

    /// <summary>Words that deny what they stand beside: "no", "ohne", "sin"; without accents.</summary>
    public static readonly FrozenSet<string> Denials = ("aucun aucune bez brak geen hayir ingen inte kein keine keinen keiner keines nada nao ne nein nenhuma nessun nessuna nic nicht nichts nie niente niet"
        + " niets ninguna no non none not nothing ohne pas rien sans sem senza sin tanpa tidak utan without yok zonder").Split(' ').ToFrozenSet(StringComparer.Ordinal);

    private static readonly (HeadingWord Word, string Spellings)[] Entries =
    [
        (HeadingWord.Concentration, "conc concn concs ~concentr ~konzentr konz ~concentrac gehalt ~gehalt content teneur contenido teor tenore level levels ppm ppb c ce ct ck cf cres ceq cend cfin caq cl c0 ci co cin cinit cini cstart metal0 concentratie concentraties gehalte stezenie stezenia koncentracja ~stezen derisim derisimi konsantrasyon konsantrasyonu koncentration koncentrace koncentrationen halt obsah ~halt konsentrasi kepekatan"),
        (HeadingWord.Start, "vooraf put went initial initially init ini start started starting begin began begun beginning before original originally feed untreated stock ~anfang ~ausgang vorher vor zugabe ~initial initiale depart avant inicial inicio antes partida partenza anfangs debut iniziale inizio prima made introduced c0 ci co cin cinit cini cstart ph0 phi phini phstart t0 offered aanvang aanvangs ~begin poczatkowe poczatkowa poczatkowy poczatek baslangic baslangictaki ilk begynnelse pocatecni vychozi voor przed ~start awal baslangici"),
        (HeadingWord.End, "achteraf ck naderhand still fim fine final finally fin end ending after afterwards residual remaining remain remains left leftover equilibrium equil equilibrated eq eqm rest ~rest nachher nach ~end ende ~gleichgewicht ~uberstand ~filtrat supernatant filtrate treated ~residu restant restante finale apres equilibre ~equilibr sortie despues restante depois equilibrio dopo residua residuo rimasto rimanente surnageant sobrenadante sopranatante ce cf ct cres ceq cend cfin phe phf phfin phend out aq unadsorbed unbound eind einde evenwicht evenwichts koncowe koncowa koncowy rownowagowe rownowagowa rownowaga denge dengedeki kalan sonraki slut jamvikt jamvikts konecna konecne rovnovazna efter pozostale ~slut akhir sisa quedan queda quedo restent reste restait bleibt bleiben blieb blieben ubrig verblieben ficam ficou restam rimangono rimane pozostalo zostalo zbylo zbyva overgebleven kvar kaldi tersisa"),
        (HeadingWord.Mass, "mass masses weight weights weighed weighing weigh wt wgt m masse massen ~masse gewicht ~gewicht ~einwaage eingewogen einwaage ~gewogen pesee poids masa peso pesado pesada massa pesata ~pesat grams inweeg navazka nawazka odwazka kutle kutlesi agirlik agirligi miktar miktari vikt invagd hmotnost tartim invagt vagt vagd berat"),
        (HeadingWord.Sorbent, "sorbent sorbents adsorbent adsorbents ads adsorb powder powders np nps nanoparticle nanoparticles material mat pulver ~pulver ~sorbens ~adsorbens sorptionsmittel poudre adsorbant sorbant polvo adsorbente sorbente po pos polvere adsorbente materiale solid solids feststoff solide solido beads bead mof zeolite zeolith clay carbon biochar char resin catalyst hap apatite composite cat poeder sorbens adsorbens proszek proszku sorbentu adsorbentu toz adsorban adsorbani sorban praska prasek hydrochar silica fibre fiber fibres gel hydrogel xerogel aerogel ash alginate chitosan cellulose graphene ferrite magnetite cof lignin peat husk peel shell sawdust bentonite kaolin granules pellets flakes crystals adsorben serbuk"),
        (HeadingWord.Boat, "schuitje weegschuitje weegbootje lodeczka lodka lodicka tartimkabi vagskepp flacon frasco fiala fiole boat boot ~schiffchen ~boat vial tube crucible tiegel paper papier dish schale bottle container capsule nacelle navicella barquilla naveta capsula barca flask beaker becher bateau pesafiltro tare tara gross brutto lleno"),
        (HeadingWord.Full, "full filled gross with plus incl including voll gefullt brutto mit inkl avec plein pleine rempli con lleno llena bruto brut com cheio cheia pieno piena lordo"),
        (HeadingWord.Empty, "leeg lege ledig pusty pusta puste prazdny prazdna prazdne bos tom tomt kosong empty emptied tare tara without minus leer leere ohne vide sans vacio vacia sin vazio vazia sem vuoto vuota senza netto rueckwaage ruckwaage ~ruckwaage backweighing"),
        (HeadingWord.Volume, "volume volumes vol vols v volumen ~volumen volumes ~volum objetosc objetosci hacim hacmi volym objem obj"),
        (HeadingWord.Liquid, "liquid solution soln sol ~losung losung flussigkeit solution liquide disolucion solucion liquido solucao soluzione water wasser eau agua acqua oplossing roztwor roztworu cozelti cozeltisi losning roztok woda wody su suyu vatten voda larutan mix mixture gemisch melange mezcla mistura miscela mieszanina karisim"),
        (HeadingWord.Time, "time times t duration dauer zeit ~zeit ~dauer temps duree tiempo duracion tempo duracao durata minutes hours min tijd duur czas czasu zaman zamani suresi tid doba trvani waktu"),
        (HeadingWord.Contact, "contact kontakt ~kontakt shaking shaken shake stirring stirred stir agitation agitated mixing mixed equilibration equilibrated exposure schutteln ~schuttel ruhren ~ruhr geruhrt geschuttelt contacto agitacion agitado contato agitacao contatto agitazione agite incubation incubated rotated elapsed reaction ~reaktion sorption adsorption schudtijd contacttijd schudden kontaktu mieszania wytrzasania temas calkalama karistirma skaktid kontakttid trepani"),
        (HeadingWord.Ph, "ph phe phf phi ph0 phfin phini phstart phend"),
        (HeadingWord.Temperature, "temperature temp temperatur ~temperatur temperatura thermostat bath temperatuur sicaklik sicakligi teplota ~temperatuur suhu kamer room raumtemperatur"),
        (HeadingWord.Removal, "removal removed remove rem efficiency eff ~entfern abreicherung ~wirkungsgrad elimination eliminated eliminiert ~elimin abattement rendement rendimiento eficiencia ~remoc removido removida eficiencia ~remoz rimozione rimosso efficienza abscheidegrad abscheidung sorbiert re extraction depletion retention retenu retenido ~retenc ~ritenz uptakepct verwijdering verwijderd verwijderingsgraad usuniecie usuwania usuniete giderim giderimi verim verimi avskiljning borttagning odstraneni ucinnost wydajnosc penyisihan efisiensi"),
        (HeadingWord.Remaining, "remaining remain residual unremoved verbleibend verblieben verbleib restanteil remanescente remanente restante restantes residuo pozostalo pozostalosc pozostaly kalan zbyvajici zustatek rimanente rimasto resterend sisa tersisa kvarvarande"),
        (HeadingWord.Uptake, "q qe qt qm uptake loading loaded capacity sorbed adsorbed adsorption sorption taken ~beladung beladung aufnahme ~aufnahme capacite capacidad capacidade capacita ~adsorb adsorbe adsorbido adsorvido adsorbito carga charge carico opname belading adsorpcja sorpcja adsorpcji kapasite kapasitesi upptag kapacita pojemnosc"),
        (HeadingWord.Dose, "dose doses dosage dosierung ~dosier dosis dosagem dosaggio ~dosis d"),
        (HeadingWord.Absorbance, "absorbance absorbances abs ass absorb absorbancia absorbancias absorvancia absorvancias assorbanza ~absorbanz extinktion ~extinktion ext ~extinction extinctie absorbancja absorbancji absorbans absorbansi absorptie serapan"),
        (HeadingWord.Dilution, "dilution dilutions diluted dil df ~dilut ~verdunn verdunnung verdunnt vf ~dilucion diluido diluir diluer diluire verdunnen ~diluic diluizione diluito dilue fold factordilucion fd verdunning verdund verdunningsfactor rozcienczenie rozcienczenia seyreltme seyreltik spadning utspadning redeni zredeni ~verdunning ~rozciencz ~seyrelt pengenceran"),
        (HeadingWord.Sample, "tag sigla mark marking sample samples probe proben ~probe probennr echantillon echantillons ech muestra muestras amostra amostras campione campioni vial vials vessel vessels flask flasks tube tubes bottle bottles id ids code codes label labels gefass ~gefass kolben ~kolben flacon flacons tubo tubos frasco frascos provetta vaso matras name names bezeichnung ~bezeichnung kennung nom nombre nome ref reference test tests essai ensayo ensaio prova entry run runs specimen batchno versuch ~versuch messung identification identifiant codigo codice erlen erlenmeyer becher beaker beakers rohrchen ~rohrchen monster monsters monsternr probka probki naczynko kolba numune ornek sise prov provnr provror vzorek vzorky flaskor fles flesje kolfje buisje kode sampel botol tabung contoh botella botellas naam namen navn nazwa nimi garrafa garrafas bottiglia bottiglie butelka butelki kolf kolven potje potjes siseler lahev kolby"),
        (HeadingWord.Role, "role type kind typ art sampletype rolle genre tipo clase classe category klasse purpose soort rodzaj slag"),
        (HeadingWord.Standard, "standard standards std stds stnd cal cals calib ~calibra ~kalibr calibrator etalon etalons ~etalon patron patrones padrao padroes taratura calibrant eich eichlosung eichlosungen eichung eichgerade eichkurve eichreihe eichpunkt eichprobe standaard standaarden ijk ijkpunt ijklijn kalibratie wzorzec wzorce standart standartlar kalibrasyon kalibrering kalibrace"),
        (HeadingWord.Known, "known nominal nom sollwert soll bekannt theoretical theor theorique teorico connu conocida conocido conhecida nota target true added given"),
        (HeadingWord.Check, "qc qcs check checks chk ccv icv control-standard kontrollstandard ~kontrollstandard qualitycontrol verification controle"),
        (HeadingWord.Blank, "blank blanks blk blindwert ~blind blindprobe leerwert blanc blancs blanco blancos branco brancos bianco reagentblank slepa kor blankprov"),
        (HeadingWord.Control, "control ctrl sorbentfree nosorbent kontrolle ~kontroll temoin testigo testemunho controllo"),
        (HeadingWord.Replicate, "replicate replicates rep reps repeat repeats wdh wiederholung ~wiederhol parallele replica replicas replicat replique repeticao repeticion repetition repl duplicate triplicate herhaling duplo powtorzenie powtorzenia tekrar upprepning opakovani"),
        (HeadingWord.Remark, "legend legende leyenda legenda remark remarks note notes comment comments bemerkung bemerkungen ~bemerk anmerkung notiz notizen kommentar remarque remarques observation observations observacion observaciones observacao observacoes obs nota notas osservazioni commento comentario comentarios appearance look looks aussehen aspect what opmerking opmerkingen uwagi uwaga aciklama anmarkning poznamka poznamky"),
        (HeadingWord.Person, "operator analyst by initials bearbeiter ~bearbeiter operateur analista operador operatore who person done measuredby user author analist wykonal yapan utford"),
        (HeadingWord.Date, "date datum ~datum fecha data day dia giorno jour clock uhr uhrzeit ~uhrzeit heure hora ora when received eingang gemessen measuredat timestamp datetime tarih tarihi"),
        (HeadingWord.Spread, "sd stdev std-dev stddev stabw deviation ~abweichung error err fehler uncertainty ~unsicherheit unsicherheit rsd cv incertitude ~ecart ecart ecarttype desviacion desvio desvest incertidumbre incerteza deviazione incertezza scatter sigma standaardafwijking odchylenie stdafw sapma standartsapma standardavvikelse odchylka"),
        (HeadingWord.Limit, "lod loq dl ql mdl limit limits bg nwg ng bestimmungsgrenze nachweisgrenze ~grenze limite reporting rl lq ld lc"),
        (HeadingWord.Parameter, "parameter parameters analyte analytes element elements elemento elementi parametre parametro metal metall metallo component compound determination determinand bestandteil test ion ione iao ionen kation catione cation kationt analyt analito analita analit substance kenngrosse"),
        (HeadingWord.Result, "rdg rdgs result results value values reading readings wert werte ~wert ergebnis ~ergebnis messwert resultat resultats valeur valor valores resultado resultados valore risultato risultati amount found gefunden resultaat waarde wynik wyniki wartosc sonuc deger varde vysledek hodnota"),
        (HeadingWord.Unit, "unit units einheit einheiten unite unites unidad unidades unidade unita jedn jednotka jednostka eenheid birim satuan enhet"),
        (HeadingWord.Corrected, "corrected corr correct multiplied applied accounted backcalculated undiluted included inklusive korrigiert ~korrigiert umgerechnet berucksichtigt corrige corrigee corrigido corregido corregida corretto corretta calculated calc ~berechnet factored gecorrigeerd skorygowane poprawione duzeltilmis korrigerad"),
        (HeadingWord.AsRead, "lettura letture lecturas leitura leituras ablesung ablesungen odczyt odczyty aflezing aflezingen read raw asread measured instrument gemessen display displayed abgelesen roh ~rohwert brut lu mesure mesuree leida leido medida medido lida lido letto letta misurata misurato apparat gerat machine directly uncorrected unkorrigiert diluted afgelezen gemeten zmierzone odczyt olculen okunan avlast uppmatt"),
        (HeadingWord.Mean, "mean avg average averages mittel mittelwert ~mittelwert ~mittel moyenne moy promedio media medias medie mw durchschnitt median gemiddelde gemiddeld srednia ortalama medelvarde medel prumer rata rerata"),
        (HeadingWord.Position, "no nr num number position pos rack seq sequence lfd laufende row line zeile item n pozition index"),
        (HeadingWord.Series, "series serie series set sets experiment experiments exp reihe ~reihe group gruppe groupe grupo gruppo batch reeks seria deney serisi"),
        (HeadingWord.Speed, "rpm speed drehzahl vitesse velocidad velocidade velocita"),
        (HeadingWord.Ratio, "ratio fraction share anteil ~anteil ~fraktion fraccion fracao frazione part rapport aandeel fractie ulamek udzial oran andel podil"),
        (HeadingWord.Percent, "percent pct percentage prozent procent pourcent pourcentage porcentaje porcentagem percento percentuale porciento porcento pc yuzde procenta"),
        (HeadingWord.Metal, "metal metals ion ions ione ioni iones ionen metall ~metall cation cations catione cationi kation kationen heavy metalico metallo"),
        (HeadingWord.Total, "sum total summe gesamt min max minimum maximum somme suma soma somma count anzahl n"),
        (HeadingWord.Preparing, "gespoeld gewassen gedroogd rinsed gespult rince rincee lavata sciacquato wyplukany dried drying dry calcined calcination oven furnace washed wash washing aged ageing aging synthes ~synthes ~getrocknet ~trockn ~calcin ~kalzin geglueht ~ofen autoclave centrifuged centrifuge ~zentrifug centrifugation ground sieved filter filters filtered filtration membrane ~filtriert degassed ultrasonic sonicated settled stored kept seche sechage lave etuve four secado lavado estufa seco seca lavado mufla essiccato lavato forno ~centrifug ~ultraschall cooled warm warmup lamp integration delay dwell slit burner flow rinse acquisition gas drawn withdrawn aliquot aliquots sampled pipetted gedroogd gecalcineerd suszenie suszony kalcynowany wirowanie kurutma kurutulmus kalsinasyon santrifuj torkad ~gedroogd ~suszon densidad densite density dichte densita gestosc hustota dichtheid densidade yogunluk gefiltreerd"),
        (HeadingWord.Background, "zuur kwas nacl nano3 kno3 kcl naoh hcl hno3 hclo4 naclo4 nacio4 electrolyte acid acidified acidity buffer salt ionic strength saure ~saure puffer salz acide tampon sel acido tampao sal tampone sale"),
        (HeadingWord.Solid, "digest digested digestion ~digest ~aufschluss ~mineralis ~dissolv dissolved loaded solids"),
        (HeadingWord.Recovery, "recovery recoveries wiederfindung ~wiederfind recouvrement recuperacion recuperacao recupero"),
        (HeadingWord.Eluate, "eluate eluates eluat ~eluat eluato eluido eluant eluent eluents desorbate desorbat stripping stripped regenerant regenerat"),
        (HeadingWord.Line, "wavelength line lambda nm ~wellenlange emission"),
        (HeadingWord.Suspension, "suspension suspensions dispersion slurry suspensao suspensie zawiesina suspenze aufschlammung ~suspension"),
        (HeadingWord.Planned, "plan plans planning planung versuchsplan planificado planejado planifie next later tomorrow planned morgen geplant prochain prochaine demain prevu proxima proximo manana amanha prossima domani volgende later gepland"),
        (HeadingWord.Counts, "counts count cps coups impulse impulsos conteggi cuentas contagens"),
        (HeadingWord.Signal, "coups impulse impulsos conteggi cuentas contagens signal intensity counts count cps response area height intensite intensidad intensidade intensita reponse intensitat"),
    ];

    private static readonly FrozenDictionary<string, ImmutableArray<HeadingWord>> Whole = Entries
        .SelectMany(e => e.Spellings.Split(' ').Where(s => s[0] != '~').Select(s => (Spelling: s, e.Word)))
        .GroupBy(x => x.Spelling, StringComparer.Ordinal)
        .ToFrozenDictionary(g => g.Key, g => g.Select(x => x.Word).Distinct().ToImmutableArray(), StringComparer.Ordinal);

    private static readonly ImmutableArray<(string Stem, HeadingWord Word)> Stems =
        [.. Entries.SelectMany(e => e.Spellings.Split(' ').Where(s => s[0] == '~').Select(s => (s[1..], e.Word)))];

    /// <summary>The words that a text holds.</summary>
    /// <param name="text">A heading, a note, a label.</param>
    public static ImmutableHashSet<HeadingWord> Of(string text) => Of(Tokens(text));

    /// <summary>The words that these tokens stand for.</summary>
    /// <param name="tokens">Tokens as <see cref="Tokens"/> gives them.</param>
    public static ImmutableHashSet<HeadingWord> Of(IEnumerable<string> tokens)
    {
        var found = ImmutableHashSet.CreateBuilder<HeadingWord>();
        foreach (var token in tokens)
            found.UnionWith(OfToken(token));
        return found.ToImmutable();
    }

    /// <summary>The words that one token stands for.</summary>
    /// <param name="token">In lower case, without accents.</param>
    public static IEnumerable<HeadingWord> OfToken(string token)
    {
        if (Whole.TryGetValue(token, out var words))
            return words;
        // A plural is the word: "masas", "volúmenes", "Proben".
        foreach (var ending in Plurals)
        {
            if (token.Length > ending.Length + 3 && token.EndsWith(ending, StringComparison.Ordinal) && Whole.TryGetValue(token[..^ending.Length], out words))
                return words;
        }

        if (token.Length is >= ShortestAbbreviation and <= LongestAbbreviation && !token.Any(char.IsDigit) && Abbreviated(token) is { IsEmpty: false } abbreviated)
            return abbreviated;
        if (token.Length >= ShortestMisspelt && !token.Any(char.IsDigit) && Misspelt(token) is { } meant)
            return Whole[meant];

        // "abs1" is a numbered "abs".
        var bare = HeadingWords.Unnumbered(token);
        if (bare.Length >= 2 && bare.Length < token.Length && Whole.TryGetValue(bare, out words))
            return words;
        return token.Length < ShortestCompound ? [] : Stems.Where(s => token.Contains(s.Stem, StringComparison.Ordinal)).Select(s => s.Word).Distinct();
    }

    // "iniz" is "iniziale", "gleichgew." is "Gleichgewicht": the beginning of words that all mean the same.
    private static ImmutableArray<HeadingWord> Abbreviated(string token) => Abbreviations.GetOrAdd(token, static key =>
    {
        var longer = Whole.Where(w => w.Key.Length > key.Length && w.Key.StartsWith(key, StringComparison.Ordinal)).Select(w => w.Value)
            .Concat(Stems.Where(s => s.Stem.Length > key.Length && s.Stem.StartsWith(key, StringComparison.Ordinal)).Select(s => ImmutableArray.Create(s.Word))).ToList();
        return longer.Count > 0 && longer.TrueForAll(w => w.SequenceEqual(longer[0])) ? longer[0] : [];
    });

    // "vollume", "intial", "smaple": one letter more, less, other or exchanged, where only one word of the bench is so near and no stem fits.
    private static string? Misspelt(string token)
    {
        if (Stems.Any(s => token.Contains(s.Stem, StringComparison.Ordinal)))
            return null;
        return Guesses.GetOrAdd(token, static t =>
        {
            var near = Whole.Keys.Where(w => w.Length >= ShortestMisspelt && w[0] == t[0] && w[^1] == t[^1] && Math.Abs(w.Length - t.Length) <= 1 && OneSlip(t, w)).ToList();
            return near.Count > 0 && near.TrueForAll(w => Whole[w].SequenceEqual(Whole[near[0]])) ? near[0] : "";
        }) is { Length: > 0 } found ? found : null;
    }

    private static bool OneSlip(string a, string b)
    {
        if (a.Length > b.Length)
            (a, b) = (b, a);
        var i = 0;
        while (i < a.Length && a[i] == b[i])
            i++;
        if (a.Length < b.Length)
            return a.AsSpan(i).SequenceEqual(b.AsSpan(i + 1));
        return i == a.Length || a.AsSpan(i + 1).SequenceEqual(b.AsSpan(i + 1))
            || (i + 1 < a.Length && a[i] == b[i + 1] && a[i + 1] == b[i] && a.AsSpan(i + 2).SequenceEqual(b.AsSpan(i + 2)));
    }

    /// <summary>A text cut into words in lower case without accents: "C_e (mg/L)" gives "ce", "mg", "l".</summary>
    /// <param name="text">The text.</param>
    public static ImmutableArray<string> Tokens(string text)
    {
        var plain = Undotted(Plain(text));
        var tokens = new List<string>();
        var start = -1;
        for (var i = 0; i < plain.Length; i++)
        {
            var c = plain[i];
            // A lone letter keeps its index: C_e, C e, q_t.
            if (c is '_' && start == i - 1 && i > 0 && char.IsLetter(plain[start]) && IsIndex(plain, i + 1) && IsSymbol(char.ToLowerInvariant(plain[start])))
                continue;
            if (!char.IsLetterOrDigit(c))
            {
                End(i);
                continue;
            }

            if (start >= 0 && i - start > 1 && char.IsUpper(c) && char.IsLower(plain[i - 1]) && i + 1 < plain.Length && char.IsLower(plain[i + 1]))
                End(i);
            if (start < 0)
                start = i;
        }

        End(plain.Length);
        return [.. tokens];

        void End(int end)
        {
            if (start >= 0)
                tokens.Add(plain[start..end].Replace("_", "", StringComparison.Ordinal).ToLowerInvariant());
            start = -1;
        }
    }

    // "e" of C_e, "eq" of C_eq; "inicial" of C_inicial is a word.
    private static bool IsIndex(string text, int from)
    {
        var end = from;
        while (end < text.Length && char.IsLetterOrDigit(text[end]))
            end++;
        return end - from is 1 or 2;
    }

    // "L.C." is one abbreviation, and no litre beside a concentration.
    private static string Undotted(string text)
    {
        var at = text.IndexOf('.', StringComparison.Ordinal);
        if (at < 1 || at + 2 >= text.Length || text[at + 2] != '.' || !char.IsLetter(text[at - 1]) || !char.IsLetter(text[at + 1]) || (at > 1 && char.IsLetterOrDigit(text[at - 2])))
            return text;
        return Undotted(text.Remove(at + 2, 1).Remove(at, 1));
    }

    private static bool IsSymbol(char c) => c is 'c' or 'q' or 't' or 'v' or 'm';

    /// <summary>True for a text of more than one word.</summary>
    /// <param name="text">The text.</param>
    public static bool HasSpace(string text)
    {
        foreach (var c in text)
        {
            if (char.IsWhiteSpace(c))
                return true;
        }

        return false;
    }

    /// <summary>Without accents: "é" is "e", "ß" is "ss".</summary>
    /// <param name="text">The text.</param>
    public static string Plain(string text)
    {
        if (Ascii.IsValid(text))
            return text;
        var plain = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            var at = Accented.IndexOf(c, StringComparison.Ordinal);
            if (at >= 0)
                plain.Append(Bare[at]);
            else if (c is 'ß')
                plain.Append("ss");
            else if (CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark)
                plain.Append(c);
        }

        return plain.ToString();
    }

    // Written out, since the platform takes letters apart only with the language data of the machine.
    private const string Accented = "ıİàáâãäåāăąçćčďèéêëēęěğìíîïīłñńňòóôõöøōőŕřśšşťùúûüūůűýÿžźżÀÁÂÃÄÅÇÈÉÊËÌÍÎÏÑÒÓÔÕÖØÙÚÛÜÝĀĂĄĆČĎĒĖĘĚĞĪŁŃŇŌŐŔŘŚŞŠŤŪŮŰŸŹŻŽ₀ₑ";
    private const string Bare = "iIaaaaaaaaacccdeeeeeeegiiiiilnnnoooooooorrssstuuuuuuuyyzzzAAAAAACEEEEIIIINOOOOOOUUUUYAAACCDEEEEGILNNOORRSSSTUUUYZZZ0e";
}
