using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Particles;

/// <summary>A grid read as a list of particles: which columns are sizes, which names the powder, which the image, which only counts.</summary>
internal sealed class SizeTable
{
    private static readonly (string Name, string Words)[] SizeWords =
    [
        ("length", "length* lengths lange laenge longueur longitud lunghezza comprimento lengte dlugosc uzunluk panjang 长度 длина"),
        ("width", "width* breite largeur ancho anchura larghezza largura breedte szerokosc genislik lebar 宽度 ширина thickness dicke"),
        ("diameter", "diameter* dia diam durchmesser diametre diametro cap srednica feret ecd 直径 粒径 диаметр"),
        ("size", "size* grosse groesse korngrosse partikelgrosse teilchengrosse taille tamano tamanho dimensione grootte rozmiar boyut ukuran 尺寸 размер particlesize grainsize"),
    ];

    private const string Others = "wavelength pore poren poro pores wellenlange longueurdonde shift focal path cell column bed film";
    private const string AspectWords = "aspect seitenverhaltnis elongation";
    private const string GroupWords = "group gruppe groupe grupo gruppo sample powder material batch probe specimen type kind class treatment muestra amostra campione numune probka pulver poudre polvo 样品 组";
    private const string ImageWords = "image* img micrograph* photo* picture bild bilder aufnahme foto* imagen imagem immagine obraz resim gambar sem tem frame file 图像 图";
    private const string IndexWords = "no nr number index particle partikel teilchen particule particula particella grain korn id n num count # row deeltje czastka";
    private const int MostGroups = 12;

    private SizeTable(MeasuredTable table) => Table = table;

    /// <summary>The rows.</summary>
    public MeasuredTable Table { get; }

    /// <summary>Columns that hold sizes, the first one the headline.</summary>
    public ImmutableArray<(int Column, string? Name, bool IsLength, string? Powder)> Sizes { get; private init; }

    /// <summary>True where each size column is a powder of its own.</summary>
    public bool IsWide { get; private init; }

    /// <summary>Column of groups, or −1.</summary>
    public int GroupColumn { get; private init; } = -1;

    /// <summary>Column of images, or −1.</summary>
    public int ImageColumn { get; private init; } = -1;

    /// <summary>Columns that only count.</summary>
    public ImmutableArray<int> IndexColumns { get; private init; } = [];

    /// <summary>Unit of the sizes, or null where none is stated.</summary>
    public string? Unit { get; private init; }

    /// <summary>True where nothing else is written like this.</summary>
    public bool IsCertain { get; private init; }

    /// <summary>By what it was recognised.</summary>
    public string Evidence { get; private init; } = "";

    /// <summary>The table of a grid; null where no column of it is a size.</summary>
    /// <param name="grid">The grid.</param>
    public static SizeTable? Of(Grid grid)
    {
        if (MeasuredTable.Of(grid, 1) is not { Heading: not null } table)
            return null;
        int[] numeric = [.. Enumerable.Range(0, table.Width).Where(table.IsNumeric)];
        int[] words = [.. Enumerable.Range(0, table.Width).Where(i => !numeric.Contains(i) && table.Body.Any(r => !r.At(i).IsBlank))];
        var named = numeric.Select(i => (Column: i, Name: NameOf(table.Says(i)), IsLength: true, Powder: (string?)null)).Where(s => s.Name is not null && !IsSteady(table, s.Column) && !MeasuredTable.Has(table.Says(s.Column), Others)).ToList();
        var aspects = numeric.Where(i => MeasuredTable.Has(table.Says(i), AspectWords)).Select(i => (Column: i, Name: (string?)"aspect", IsLength: false, Powder: (string?)null)).ToList();
        named = [.. named.Where(n => aspects.TrueForAll(a => a.Column != n.Column))];
        int[] index = [.. numeric.Where(i => IsIndex(table, i))];
        named = [.. named.Where(n => !index.Contains(n.Column))];
        var unit = named.Select(n => LengthUnit(table, n.Column)).FirstOrDefault(u => u is not null);
        if (named.Count == 0)
            return Wide(table, numeric, index);
        var groups = words.Where(i => Distinct(table, i) is > 1 and <= MostGroups).ToList();
        var image = words.Concat(numeric.Except(named.Select(n => n.Column))).FirstOrDefault(i => MeasuredTable.Has(table.Says(i), ImageWords), -1);
        var group = words.Concat(numeric.Except(named.Select(n => n.Column)).Except(index)).FirstOrDefault(i => i != image && MeasuredTable.Has(table.Says(i), GroupWords) && Distinct(table, i) <= MostGroups, -1);
        if (group < 0)
            group = groups.FirstOrDefault(i => i != image, -1);
        var known = named.Select(n => n.Column).Concat(aspects.Select(a => a.Column)).Concat(index).Append(image).Append(group).ToList();
        var strangers = numeric.Count(i => !known.Contains(i) && !MeasuredTable.Has(table.Says(i), "area circularity angle perimeter x y roundness solidity flache winkel umfang pixel pixels"));

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
            Unit = unit,
            IsCertain = unit is not null && strangers == 0,
            Evidence = $"'{table.Named(named[0].Column)}' of {table.Body.Length.ToString(CultureInfo.InvariantCulture)} particles",
        };
    }

    // "parent (nm)" beside "doped (nm)": names of powders with a unit of length, or one word for a size with the powder behind it.
    private static SizeTable? Wide(MeasuredTable table, int[] numeric, int[] index)
    {
        var columns = numeric.Except(index).Where(i => LengthUnit(table, i) is not null && !IsSteady(table, i) && !MeasuredTable.Has(table.Says(i), Others)).ToList();
        if (columns.Count < 1 || columns.Count != numeric.Except(index).Count())
            return null;
        var said = table.Preamble.Any(r => r.Cells.Any(c => NameOf(c.Text) is not null || MeasuredTable.Has(c.Text, ImageWords))) || columns.Exists(c => NameOf(table.Says(c)) is not null);
        return new(table)
        {
            IsWide = true,
            Sizes = [.. columns.Select(c => (c, (string?)(NameOf(table.Says(c)) ?? "size"), true, (string?)PowderIn(table.Named(c))))],
            IndexColumns = [.. index],
            Unit = LengthUnit(table, columns[0]),
            IsCertain = said && columns.Count > 1,
            Evidence = $"columns of lengths in {LengthUnit(table, columns[0])}",
        };
    }

    private static string PowderIn(string heading)
    {
        string[] words = [.. heading.Split(' ', '_', '/', ',', ';', '(', ')', '[', ']').Where(w => w.Length > 0 && NameOf(w) is null && !IsLengthUnit(w) && !MeasuredTable.Has(w, "of particle particles der des de du particule partikel"))];
        return words.Length > 0 ? string.Join(' ', words) : heading;
    }

    private static string? NameOf(string heading) => SizeWords.FirstOrDefault(s => MeasuredTable.Has(heading, s.Words)).Name ?? (MeasuredTable.WordsOf(heading) is ["d" or "l", "nm" or "µm" or "um" or "μm" or "mm"] ? "diameter" : null);

    private static string? LengthUnit(MeasuredTable table, int column)
    {
        if (table.UnitOf(column) is { } unit && unit.IsConvertibleTo(Holdfast.Amounts.Unit.Parse("nm")))
            return unit.Plain;
        return table.Says(column).Split(' ', '_', '/', ',', '(', ')', '[', ']').LastOrDefault(w => w.Length > 0) is { } last && IsLengthUnit(last) ? Holdfast.Amounts.Unit.Parse(last).Plain : null;
    }

    private static bool IsLengthUnit(string word) => word.Length > 1 && Holdfast.Amounts.Unit.Read(word) is UnitText.Known known && known.Unit.IsConvertibleTo(Holdfast.Amounts.Unit.Parse("nm"));

    private static int Distinct(MeasuredTable table, int column) => table.Words(column).Where(w => w.Length > 0).Distinct(StringComparer.Ordinal).Count();

    // Even steps are an axis, 1, 2, 3 … count.
    private static bool IsSteady(MeasuredTable table, int column)
    {
        double[] numbers = [.. table.Numbers(column, table.Marks([column]).Mark ?? DecimalMark.Point).OfType<double>()];
        return numbers.Length > 3 && Enumerable.Range(2, numbers.Length - 2).All(i => Math.Abs(numbers[i] - numbers[i - 1] - (numbers[1] - numbers[0])) <= 1e-6 * Math.Abs(numbers[i]));
    }

    // Whole numbers that rise by one, perhaps beginning again with each group.
    private static bool IsIndex(MeasuredTable table, int column)
    {
        double[] numbers = [.. table.Numbers(column, DecimalMark.Point).OfType<double>()];
        if (numbers.Length < 3 || numbers.Any(n => n != Math.Floor(n)))
            return false;
        var steps = Enumerable.Range(1, numbers.Length - 1).Count(i => numbers[i] == numbers[i - 1] + 1);
        return steps >= 0.8 * (numbers.Length - 1) && (MeasuredTable.Has(table.Says(column), IndexWords) || table.Named(column).Length == 0 || LengthUnit(table, column) is null);
    }
}
