using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Techniques.Elements;

/// <summary>
/// Dissolved portions of a powder, one row each: mass, volume, dilution and what was read of each element, with a blank. A table of batch vessels has the same
/// columns, so a word for dissolving the powder must stand there, and none of taking up from a solution.
/// </summary>
internal sealed class DigestTable
{
    // Dissolving a powder; not "dissolved", which is also what stays in the water of a vessel, and not "mineral", which is also a powder.
    private const string Dissolving = "digest* digerid* digesto* aufschluss* aufgeschlossen* aufschlusslosung* mineralis* mineraliz* mineralizz* disgreg* roztwarz* roztworz* ontsluit* destructie* uppslut* oppslutning* oplukning* rozklad* hajotus* hajotet* feltaras*";
    private const string TakingUp = "adsor* sorption sorb* sorbent* uptake removal removed isotherm* kinetic* kinetik* cinetiq* cinetic* equilib* equilibr* gleichgewicht* batch vessel* flask* supernatant* uberstand* filtrate* filtrat* leach* desor* retention* contact* kontakt* initial* inicial* inizial* start* stock anfang* ausgang* poczatk* ph shak* schuttel* geschuttelt* rpm agita* wytrzas*";
    private static readonly string[] DissolvingPhrases = ["mise en solution", "puesta en disolucion", "attaque acide", "ataque acido", "attacco acido", "acid dissolution", "saureaufschluss", "mise en dissolution", "dissolution de la poudre", "dissolution of the powder"];

    private const string ReadWords = "read reading* measured gelesen* abgelesen* gemessen* lu lue* lecture* mesure* leid* lectura* medid* leitura* lid* lett* lettura* misurat* gemeten afgelezen aflezing* avlast* avlas* avlest* aflast* odecet* odecten* okunan* odczyt* zmierzon* meren*";
    private const string DilutedWords = "dilut* dilue* diluid* verdunn* verduenn* rozciencz* verdun* zreden* utspad* seyrelt*";
    private const string FactorWords = "factor faktor facteur fator fattore df vf";

    private static readonly ImmutableArray<HeadingWord> OfVessels = [HeadingWord.Start, HeadingWord.End, HeadingWord.Time, HeadingWord.Contact, HeadingWord.Ph, HeadingWord.Removal, HeadingWord.Remaining, HeadingWord.Absorbance];

    private readonly ImmutableArray<HeadingReading> headings;

    private DigestTable(MeasuredTable table, ImmutableArray<HeadingReading> headings) => (Table, this.headings) = (table, headings);

    /// <summary>The rows.</summary>
    public MeasuredTable Table { get; }

    /// <summary>Column of the names of portions, or −1.</summary>
    public int LabelColumn { get; private init; } = -1;

    /// <summary>Column that names the powder of each portion, or −1.</summary>
    public int PowderColumn { get; private init; } = -1;

    /// <summary>Column of the mass of powder.</summary>
    public int MassColumn { get; private init; } = -1;

    /// <summary>Column of the volume that each was made up to, or −1 where it is the same for all and stands elsewhere.</summary>
    public int VolumeColumn { get; private init; } = -1;

    /// <summary>Column of how many times each was diluted, or −1.</summary>
    public int DilutionColumn { get; private init; } = -1;

    /// <summary>Columns of what was read, with their elements.</summary>
    public ImmutableArray<(int Column, Element Element)> Readings { get; private init; } = [];

    /// <summary>Rows of blanks.</summary>
    public ImmutableArray<GridRow> Blanks => [.. Table.Body.Where(r => LabelColumn >= 0 && IsBlank(r.At(LabelColumn).Text))];

    /// <summary>Lines around the table.</summary>
    public ImmutableArray<GridRow> Lines => [.. Table.Preamble, .. Table.Below.Where(r => r.Filled == 1)];

    /// <summary>By what it was recognised.</summary>
    public string Evidence => $"masses and volumes of dissolved portions with {string.Join(", ", Readings.Select(r => r.Element.Symbol))}";

    /// <summary>True where headings or lines say that what was read is given back-calculated already.</summary>
    public bool IsCorrected => Readings.Any(r => headings[r.Column].Has(HeadingWord.Corrected));

    /// <summary>True where the headings say that what stands under them was read, or how many times it is to be multiplied.</summary>
    public bool SaysAsRead => Lines.Any(l => l.Cells.Any(c => MeasuredTable.Has(c.Text, ReadWords) && MeasuredTable.Has(c.Text, DilutedWords))) || Readings.Any(r => headings[r.Column].Has(HeadingWord.AsRead)) || (DilutionColumn >= 0 && MeasuredTable.Has(Table.Named(DilutionColumn), FactorWords));

    /// <summary>The table of a grid; null where it is none.</summary>
    /// <param name="grid">The grid.</param>
    public static DigestTable? Of(Grid grid)
    {
        if (MeasuredTable.Of(grid, 2) is not { Heading: not null } table || !IsOfDissolving(grid, table))
            return null;
        // "Cu | Fe" under "readings in mg/L": the unit stands once for all.
        var unit = UnitOfReadings(table.Preamble);
        ImmutableArray<HeadingReading> headings = [.. Enumerable.Range(0, table.Width).Select(i => HeadingReading.Of(table.Named(i), table.Units?.At(i).Text is { Length: > 0 } own ? own : Species.Headed(table.Named(i), _ => false) is null ? null : unit))];

        if (headings.Any(h => IsOfVessels(h, headings)))
            return null;
        int[] Of(UnitKind kind) => [.. Enumerable.Range(0, table.Width).Where(i => headings[i].Unit is UnitText.Known known && UnitKinds.Of(known) == kind && !headings[i].Has(HeadingWord.Spread) && !headings[i].Has(HeadingWord.Dilution))];

        // A concentration of no element is a dose of powder.
        var read = Of(UnitKind.Concentration).Select(i => (Column: i, Element: headings[i].Element is { } symbol ? Element.Find(symbol) : Species.Headed(table.Named(i), _ => true)?.Element ?? Element.Find(LastWord(table.Named(i))))).ToList();
        // "Results Pb" over a single column of readings says of what they are.
        if (read is [(var only, null)] && InTitle(table) is { } titled)
            read = [(only, titled)];
        var readings = read.DistinctBy(r => r.Element?.Number).ToList();
        if (readings.Count == 0 || readings.Exists(r => r.Element?.AtomicWeight is null) || readings.Exists(r => !((UnitText.Known)headings[r.Column].Unit).Unit.IsConvertibleTo(Unit.Parse("mg/L"))) || Of(UnitKind.Mass) is not [var mass] || Of(UnitKind.Volume) is not ([] or [_]))
            return null;
        var volume = Of(UnitKind.Volume).DefaultIfEmpty(-1).First();
        var dilutions = Enumerable.Range(0, table.Width).Where(i => headings[i].Has(HeadingWord.Dilution) && !read.Exists(r => r.Column == i)).ToList();
        // "factor" alone, beside what was read, is how many times it was diluted.
        if (dilutions.Count == 0)
            dilutions = [.. Enumerable.Range(0, table.Width).Where(i => i != mass && i != volume && table.IsNumeric(i) && !read.Exists(r => r.Column == i) && FileWords.Plain(table.Named(i)).Trim(' ', '.') is var name && ((MeasuredTable.Has(name, FactorWords) && !name.Contains(' ', StringComparison.Ordinal)) || name is "verd"))];
        return dilutions.Count > 1 || dilutions.Exists(i => headings[i].Unit is UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous) ? null : new(table, headings)
        {
            LabelColumn = Enumerable.Range(0, table.Width).FirstOrDefault(i => i != mass && i != volume && !dilutions.Contains(i) && !table.IsNumeric(i) && table.Body.All(r => !r.At(i).IsBlank), 0) is var label && label != mass && label != volume ? label : -1,
            PowderColumn = Enumerable.Range(0, table.Width).Where(i => i != mass && i != volume && !table.IsNumeric(i) && FileWords.NamesAPowder(table.Named(i)) && table.Body.Select(r => r.At(i).Text).Distinct(StringComparer.Ordinal).Count() is > 1 and var powders && powders < table.Body.Length)
                .DefaultIfEmpty(-1).First(),
            MassColumn = mass,
            VolumeColumn = volume,
            DilutionColumn = dilutions.DefaultIfEmpty(-1).First(),
            Readings = [.. readings.Select(r => (r.Column, r.Element!))],
        };
    }

    // The one concentration that lines about what was read name.
    private static string? UnitOfReadings(ImmutableArray<GridRow> lines)
        => lines.SelectMany(r => r.Cells).Where(c => MeasuredTable.Has(c.Text, ReadWords)).SelectMany(c => c.Text.Split([' ', ',', ';', ':', '(', ')', '[', ']'])).Where(w => w.Contains('/', StringComparison.Ordinal) && Unit.Read(w) is UnitText.Known { Unit: var of } && of.IsConvertibleTo(Unit.Parse("mg/L")))
            .Distinct(StringComparer.Ordinal).ToList() is [var one] ? one : null;

    // The one element that the lines above name by its symbol.
    private static Element? InTitle(MeasuredTable table)
        => table.Preamble.SelectMany(r => r.Cells).SelectMany(c => c.Text.Split(' ', ',', ';', ':', '(', ')')).Where(w => w.Length is 1 or 2 && char.IsAsciiLetterUpper(w[0])).Select(Element.Find).OfType<Element>().Where(e => e.AtomicWeight is not null).DistinctBy(e => e.Number).ToList() is [var one] ? one : null;

    /// <summary>Unit of a column as stated.</summary>
    /// <param name="column">Its place, from 0.</param>
    public Unit UnitOf(int column) => headings[column].Unit is UnitText.Known known ? known.Unit : Unit.One;

    /// <summary>True for a portion without powder.</summary>
    /// <param name="label">Its name.</param>
    public static bool IsBlank(string label) => (RoleWords.Guess(label) ?? RoleWords.Read(label)) == SampleRole.Blank;

    // "read Ce", "aflezing Pb".
    private static string LastWord(string name) => name.Split([' ', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries).LastOrDefault("");

    // "Final volume" is what a digest was made up to; Ce and Co beside another element are cerium and cobalt, alone they are concentrations of a vessel.
    private static bool IsOfVessels(HeadingReading heading, ImmutableArray<HeadingReading> all)
        => heading.HasAny(OfVessels.AsSpan()) && UnitKinds.Of(heading.Unit) is not (UnitKind.Mass or UnitKind.Volume)
            && !(LastWord(heading.Name) is "Ce" or "Co" && all.Any(h => h.Element is not (null or "Ce" or "Co") && !h.HasAny(OfVessels.AsSpan())));

    private static bool IsOfDissolving(Grid grid, MeasuredTable table)
    {
        var (dissolving, takingUp) = (false, false);
        var texts = table.Preamble.Concat(table.Below).SelectMany(r => r.Cells).Concat(table.Heading!.Cells).Concat(table.Body.Select(r => r.At(0))).Where(c => c.Kind == CellKind.Text && !c.IsBlank).Select(c => c.Text).Append(grid.Sheet ?? "");
        foreach (var text in texts)
        {
            dissolving |= MeasuredTable.Has(text, Dissolving) || Array.Exists(DissolvingPhrases, p => FileWords.Plain(text).Contains(p, StringComparison.Ordinal));
            takingUp |= MeasuredTable.Has(text, TakingUp) || FileWords.Plain(text).Contains("c0", StringComparison.Ordinal);
        }

        return dissolving && !takingUp;
    }
}
