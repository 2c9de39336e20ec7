using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Particles;

/// <summary>A grid read as a list of particles: which columns are sizes, which names the powder, which the image, which only counts.</summary>
internal sealed class SizeTable
{
    /// <summary>The name of a size that nothing says more of.</summary>
    internal const string AnySize = "size";

    private static readonly (string Name, string Words)[] SizeWords =
    [
        ("length", "length* lange langen laenge* lang long longest langst* laengst* longueur* longitud* lunghezz* lungo longo comprimento* lengte* dlugosc* langd* lengd* laengd* pituu* delk* hossz* uzunluk* boy boyu boylar* panjang 长度 длина"),
        ("width", "width* breit breite* wide shortest narrowest largeur* ancho anchura* larghezz* largura* breedte szerokosc* bredd* leveys* sirk* szeless* genislik* lebar across 宽度 ширина thickness dicke"),
        ("diameter", "diameter* dia diam durchmesser diametr* cap srednic* prumer* atmero* halkaisija* feret ecd 直径 粒径 диаметр"),
        (AnySize, "size* grosse* groesse* korngrosse* partikelgrosse* teilchengrosse* taille* tamano* tamanho* dimension* grootte rozmiar* storlek* storrels* koko velikost* meret* boyut* ukuran 尺寸 размер particlesize grainsize"),
    ];

    private const string Others = "wavelength pore poren poro pores wellenlange onde onda fali dalga shift focal path cell column bed film";
    private const string AspectWords = "aspect seitenverhaltnis elongation";
    private const string GroupWords = "group gruppe groupe grupo gruppo sample powder material batch probe specimen type kind class treatment muestra amostra campione numune probka pulver poudre polvo 样品 组";
    private const string ImageWords = "image* img micrograph* photo* picture bild bilder aufnahme imagen imagem immagine obraz resim gambar zdjec* cliche* prise vue lamina foto* scatto snimek fotogra* mikrogra* goruntu* kuva* billed* bilde* kep sem tem frame file 图像 图";
    private const string IndexWords = "no nr number index particle partikel teilchen particule particula particella grain korn id n num count # row deeltje czastka";
    private const string ShapeWords = "area areas aire surface superficie flache* flaeche* powierzchnia pole circularity zirkularitat circularite circularidad circularidade circolarita angle angulo angolo winkel kat perimeter perimetre perimetro umfang obwod x y roundness solidity";
    private static readonly string[] Compounds = ["kristallit", "kristall", "partikel", "teilchen", "deeltje", "stabchen", "korn", "korrel", "nadel", "faser", "fiber", "stav", "stab", "grain", "particle", "crystal", "rod"];
    private const int MostGroups = 12;

    /// <summary>What is known of a table of sizes.</summary>
    /// <param name="table">Its rows.</param>
    internal SizeTable(MeasuredTable table) => Table = table;

    /// <summary>The rows.</summary>
    public MeasuredTable Table { get; }

    /// <summary>Columns that hold sizes, the first one the headline.</summary>
    public ImmutableArray<(int Column, string? Name, bool IsLength, string? Powder)> Sizes { get; internal init; }

    /// <summary>True where each size column is a powder of its own.</summary>
    public bool IsWide { get; internal init; }

    /// <summary>True where each size column is an image of one powder.</summary>
    public bool AreImages { get; internal init; }

    /// <summary>True where one list of one powder goes on from size column to size column.</summary>
    public bool AreStrips { get; internal init; }

    /// <summary>For each size, the column of how many particles had it; empty where every row is a particle.</summary>
    public ImmutableArray<int> CountColumns { get; internal init; } = [];

    /// <summary>Column of groups, or −1.</summary>
    public int GroupColumn { get; internal init; } = -1;

    /// <summary>Column of images, or −1.</summary>
    public int ImageColumn { get; internal init; } = -1;

    /// <summary>Columns that only count.</summary>
    public ImmutableArray<int> IndexColumns { get; internal init; } = [];

    /// <summary>Unit of the sizes, or null where none is stated.</summary>
    public string? Unit { get; internal init; }

    /// <summary>True where sizes are in pixels.</summary>
    public bool ArePixels { get; internal init; }

    /// <summary>True where nothing else is written like this.</summary>
    public bool IsCertain { get; internal init; }

    /// <summary>By what it was recognised.</summary>
    public string Evidence { get; internal init; } = "";

    /// <summary>The table of a grid; null where no column of it is a size.</summary>
    /// <param name="grid">The grid.</param>
    public static SizeTable? Of(Grid grid)
    {
        if (MeasuredTable.Of(PagesOfOneList.Joined(grid), 1) is not { Heading: not null } whole)
            return null;
        if (Tally.Of(whole) is { } tally)
            return tally;
        var table = ClosingRows.Without(whole);
        if (Strips.Of(table) is { } strips)
            return strips;
        int[] numeric = [.. Enumerable.Range(0, table.Width).Where(table.IsNumeric)];
        int[] words = [.. Enumerable.Range(0, table.Width).Where(i => !numeric.Contains(i) && table.Body.Any(r => !r.At(i).IsBlank))];
        var inPixels = ScreenPixels.SaidIn(table.Preamble) && !numeric.Any(i => SizeUnits.Of(table, i) is not null);
        int[] pixels = [.. numeric.Where(i => (ScreenPixels.Are(table.Says(i)) || (inPixels && NameOf(table.Says(i)) is not null)) && !IsOfShape(table, i))];
        // "px" and "px" again: not two sides of one particle, but two lists under labels of their own.
        int[] bare = [.. pixels.Where(i => NameOf(table.Says(i)) is null)];
        if (bare.Length > 1 && bare.Length == pixels.Length && bare.Select(table.Named).Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1 && Wide(table, bare, [.. numeric.Where(i => IsIndex(table, i))]) is { } lists)
            return lists;
        // A column in pixels without a word for a size: what is measured first is the length.
        var named = numeric.Select(i => (Column: i, Name: NameOf(table.Says(i)) ?? (pixels.Contains(i) ? Array.IndexOf(pixels, i) == 0 ? "length" : "width" : null), IsLength: true, Powder: (string?)null)).Where(s => s.Name is not null && !IsSteady(table, s.Column) && !MeasuredTable.Has(table.Says(s.Column), Others)).ToList();
        var aspects = numeric.Where(i => MeasuredTable.Has(table.Says(i), AspectWords)).Select(i => (Column: i, Name: (string?)"aspect", IsLength: false, Powder: (string?)null)).ToList();
        named = [.. named.Where(n => aspects.TrueForAll(a => a.Column != n.Column))];
        int[] index = [.. numeric.Where(i => IsIndex(table, i))];
        named = [.. named.Where(n => !index.Contains(n.Column))];
        var unit = named.Select(n => SizeUnits.Of(table, n.Column)).FirstOrDefault(u => u is not null);
        if (named.Count == 0)
            return Wide(table, numeric, index);
        // "Sample QS-10, lengths in nm" above a column headed Length, else "everything in nm".
        var above = unit is not null || pixels.Length > 0 ? null : SizeUnits.InLines([.. table.Preamble.Where(r => r.Cells.Any(c => NameOf(c.Text) is not null))]) ?? SizeUnits.InLines([.. table.Preamble.Where(r => !r.Cells.Any(c => IsOfOthers(c.Text)))]);

        // Notes in the margin are no groups: a group has a heading, or stands in nearly every row.
        var groups = words.Where(i => Distinct(table, i) is > 1 and <= MostGroups && (table.Named(i).Length > 0 || table.Body.Count(r => !r.At(i).IsBlank) >= 0.9 * table.Body.Length)).ToList();
        var image = words.Concat(numeric.Except(named.Select(n => n.Column))).FirstOrDefault(i => MeasuredTable.Has(table.Says(i), ImageWords), -1);
        var group = words.Concat(numeric.Except(named.Select(n => n.Column)).Except(index)).FirstOrDefault(i => i != image && MeasuredTable.Has(table.Says(i), GroupWords) && Distinct(table, i) <= MostGroups, -1);
        if (group < 0)
            group = groups.FirstOrDefault(i => i != image, -1);
        var known = named.Select(n => n.Column).Concat(aspects.Select(a => a.Column)).Concat(index).Append(image).Append(group).ToList();
        var strangers = numeric.Count(i => !known.Contains(i) && !IsOfShape(table, i));

        // Two lengths of the same kind would be one powder each: "length parent", "length doped".
        var sameKind = named.GroupBy(n => n.Name).Any(g => g.Count() > 1 && named.Count == g.Count());
        if (sameKind && group < 0 && Wide(table, [.. named.Select(n => n.Column)], index) is { } wide)
            return wide;
        return new(table)
        {
            Sizes = [.. named.DistinctBy(n => n.Name), .. aspects.Take(1)],
            GroupColumn = group,
            ImageColumn = image,
            IndexColumns = [.. index],
            Unit = above ?? (named.All(n => SizeUnits.Of(table, n.Column) is not null) ? unit : null),
            ArePixels = unit is null && named.TrueForAll(n => pixels.Contains(n.Column)),
            IsCertain = (unit is not null || above is not null || pixels.Length > 0) && strangers == 0,
            Evidence = $"'{table.Named(named[0].Column)}' of {table.Body.Length.ToString(CultureInfo.InvariantCulture)} particles",
        };
    }

    // "parent (nm)" beside "doped (nm)": names of powders with a unit of length, or one word for a size with the powder behind it. "Image 1 [nm]" is no powder.
    private static SizeTable? Wide(MeasuredTable table, int[] numeric, int[] index)
    {
        int[] columns = [.. numeric.Except(index)];
        var images = columns.Length > 1 && Array.TrueForAll(columns, c => MeasuredTable.Has(table.Says(c), ImageWords));
        var unit = columns.Length == 0 ? null : SizeUnits.Of(table, columns[0]) ?? (images ? SizeUnits.InLines(table.Preamble) : null);
        var name = table.Preamble.SelectMany(r => r.Cells).Select(c => NameOf(c.Text)).FirstOrDefault(n => n is not null);
        var pixels = columns.Length > 0 && unit is null && (Array.TrueForAll(columns, c => ScreenPixels.Are(table.Says(c))) || (ScreenPixels.SaidIn(table.Preamble) && (images || name is not null)));
        if ((unit is null && !pixels) || Array.Exists(columns, i => (!images && !pixels && SizeUnits.Of(table, i) is null) || IsSteady(table, i) || MeasuredTable.Has(table.Says(i), Others)))
            return null;
        var said = name is not null || images || table.Preamble.Any(r => r.Cells.Any(c => MeasuredTable.Has(c.Text, ImageWords))) || Array.Exists(columns, c => NameOf(table.Says(c)) is not null);
        return new(table)
        {
            IsWide = true,
            AreImages = images,
            Sizes = [.. columns.Zip(Powders(table, columns)).Select(c => (c.First, (string?)(NameOf(table.Says(c.First)) ?? (images || pixels ? name : null) ?? AnySize), true, (string?)c.Second))],
            IndexColumns = [.. index],
            Unit = unit,
            ArePixels = pixels,
            IsCertain = said && columns.Length > 1,
            Evidence = $"columns of lengths in {unit ?? "pixels"}{(images ? ", an image each" : "")}",
        };
    }

    // By their headings; where these are alike, by the labels in the line above, each over the first of its columns; else counted.
    private static string[] Powders(MeasuredTable table, int[] columns)
    {
        string[] named = [.. columns.Select(c => PowderIn(table.Named(c)))];
        if (named.Distinct(StringComparer.OrdinalIgnoreCase).Count() == named.Length)
            return named;
        string?[] labels = [.. columns.Select(c => table.Preamble.LastOrDefault(r => r.Filled > 1) is { } row ? Enumerable.Range(0, c + 1).Select(i => row.At(c - i).Text).FirstOrDefault(t => t.Length > 0) : null)];
        return labels.Distinct(StringComparer.OrdinalIgnoreCase).Count() == labels.Length && !labels.Contains(null) ? [.. labels.OfType<string>()] : [.. named.Select((n, i) => $"{n} {(i + 1).ToString(CultureInfo.InvariantCulture)}")];
    }

    private static string PowderIn(string heading)
    {
        string[] words = [.. heading.Split(' ', '_', '/', ',', ';', '(', ')', '[', ']').Where(w => w.Length > 0 && NameOf(w) is null && !SizeUnits.Is(w) && !MeasuredTable.Has(w, "of particle particles der des de du particule partikel"))];
        return words.Length > 0 ? string.Join(' ', words) : heading;
    }

    /// <summary>What a heading or line says is measured: "length", "diameter"; null for no size.</summary>
    /// <param name="heading">The heading.</param>
    internal static string? NameOf(string heading)
    {
        var words = MeasuredTable.WordsOf(heading);
        // "Kornlängder" and "Partikelbreite" are lengths and widths of what they begin with.
        var plain = string.Join(' ', words.Select(w => Array.Find(Compounds, c => w.Length > c.Length + 3 && w.StartsWith(c, StringComparison.Ordinal)) is { } of ? w[of.Length..].TrimStart('s') : w));
        return SizeWords.FirstOrDefault(s => MeasuredTable.Has(heading, s.Words) || MeasuredTable.Has(plain, s.Words)).Name
            ?? (words is [var alone, var beside] && (SizeUnits.Is(beside) || ScreenPixels.Are(beside)) ? alone switch { "d" or "l" => "diameter", "en" => "width", _ => null } : null);
    }

    // What else is read off the outline of a particle.
    private static bool IsOfShape(MeasuredTable table, int column)
        => MeasuredTable.Has(table.Says(column), ShapeWords) || table.Says(column).Split(' ', '(', ')', '[', ']', '/').Any(w => FileWords.Plain(w) is "nm2" or "µm2" or "μm2" or "um2" or "nm^2" or "µm^2" or "um^2" or "°" or "deg");

    private static int Distinct(MeasuredTable table, int column) => table.Words(column).Where(w => w.Length > 0).Distinct(StringComparer.Ordinal).Count();

    // Even steps are an axis, 1, 2, 3 … count.
    private static bool IsSteady(MeasuredTable table, int column)
    {
        double[] numbers = [.. table.Numbers(column, table.Marks([column]).Mark ?? DecimalMark.Point).OfType<double>()];
        return numbers.Length > 3 && Enumerable.Range(2, numbers.Length - 2).All(i => Math.Abs(numbers[i] - numbers[i - 1] - (numbers[1] - numbers[0])) <= 1e-6 * Math.Abs(numbers[i]));
    }

    /// <summary>True for a size of something that is no particle: a wavelength, a pore, a path.</summary>
    /// <param name="heading">The heading.</param>
    internal static bool IsOfOthers(string heading) => MeasuredTable.Has(heading, Others);

    /// <summary>True for a column that only counts the rows.</summary>
    /// <param name="table">The table.</param>
    /// <param name="column">Its place, from 0.</param>
    /// <remarks>Whole numbers that rise by one, perhaps beginning again with each group.</remarks>
    internal static bool IsIndex(MeasuredTable table, int column)
    {
        double[] numbers = [.. table.Numbers(column, DecimalMark.Point).OfType<double>()];
        if (numbers.Length < 3 || numbers.Any(n => n != Math.Floor(n)))
            return false;
        var steps = Enumerable.Range(1, numbers.Length - 1).Count(i => numbers[i] == numbers[i - 1] + 1);
        return steps >= 0.8 * (numbers.Length - 1) && (MeasuredTable.Has(table.Says(column), IndexWords) || table.Named(column).Length == 0 || SizeUnits.Of(table, column) is null);
    }
}
