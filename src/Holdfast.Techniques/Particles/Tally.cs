using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Particles;

/// <summary>A tally: each row a size with how many particles had it, a column of numbers for each powder. A row without a size, such as the total, is no class of it.</summary>
internal static class Tally
{
    private const string CountWords = "number* count* counted tally anzahl stuck stueck zahl haufigkeit haufigkeiten nombre* effectif* frequence* numero* cantidad recuento* frecuencia* quantidade* contagem* frequencia* quantita conteggi* frequenz* liczba liczby liczebnosc ilosc sztuk czestosc frequency frequencies n 数量 频数 число";
    private const string NoCounts = "cum* cumul* kumul* sum* intensity volume mass density rate";
    private const int FewestClasses = 4, FewestParticles = 10;

    /// <summary>The tally in a table; null where it is none.</summary>
    /// <param name="table">The table.</param>
    public static SizeTable? Of(MeasuredTable table)
    {
        // Powders may stand in a line above "nm | number of grains".
        var above = table.Preamble is [.., { } last] && last.Number == table.Heading!.Number - 1 && last.Filled >= 2 ? last : null;
        string[] Heads(int i) => [.. new[] { above?.At(i).Text, table.Named(i), table.Units?.At(i).Text }.OfType<string>().Where(t => t.Length > 0)];
        string Says(int i) => string.Join(' ', Heads(i));
        int[] columns = [.. Enumerable.Range(0, table.Width).Where(i => table.Body.Any(r => TableLayout.IsNumberLike(r.At(i))))];
        var size = Array.FindIndex(columns, i => SizeTable.NameOf(Says(i)) is not null && !SizeTable.IsOfOthers(Says(i)) && !IsCount(Says(i)));
        if (size < 0 || SizeUnits.Of(table, columns[size]) is not { } unit)
            return null;
        var at = columns[size];
        var rows = table.Body.Where(r => TableLayout.IsNumberLike(r.At(at))).ToImmutableArray();
        var classes = table with { Body = rows, Below = [.. table.Body.Except(rows), .. table.Below] };
        int[] counts = [.. columns.Where(i => i != at && !(MeasuredTable.Has(Says(i), NoCounts) || Says(i).Contains('%', StringComparison.Ordinal)))];
        if (rows.Length < FewestClasses || counts.Sum(i => classes.Numbers(i, DecimalMark.Point).Sum(n => n ?? 0)) < FewestParticles || counts.Length == 0 || !Array.TrueForAll(counts, i => IsCount(Says(i)) && AreNumbersOf(classes, i)) || !IsOrdered(classes, at))
            return null;
        var name = SizeTable.NameOf(Says(at))!;
        return new(classes)
        {
            IsWide = true,
            Sizes = [.. counts.Select(i => (at, (string?)name, true, counts.Length > 1 ? Heads(i).FirstOrDefault(h => !IsCount(h)) ?? WithoutCount(Says(i)) : null))],
            CountColumns = [.. counts],
            Unit = unit,
            IsCertain = !Array.Exists(counts, i => MayNumberParticles(classes, i)),
            Evidence = $"a tally of '{Says(at)}', {rows.Length.ToString(CultureInfo.InvariantCulture)} sizes with their numbers of particles",
        };
    }

    private static bool IsCount(string heading) => MeasuredTable.Has(heading, CountWords);

    private static string WithoutCount(string heading)
        => string.Join(' ', heading.Split(' ', ',', '(', ')', '[', ']').Where(w => w.Length > 0 && !IsCount(w) && !MeasuredTable.Has(w, "of de des der di do grains particles particules partikel grani graos granos ziaren czastek"))) is { Length: > 0 } name ? name : heading;

    // Whole numbers, and not 1, 2, 3, which number the rows.
    private static bool AreNumbersOf(MeasuredTable table, int column)
    {
        var numbers = table.Numbers(column, DecimalMark.Point).OfType<double>().ToList();
        return table.Body.All(r => r.At(column).IsBlank || r.At(column).Text is "-" or "–" || TableLayout.IsNumberLike(r.At(column))) && numbers.Count > 0 && numbers.TrueForAll(n => n >= 0 && n == Math.Floor(n)) && !SizeTable.IsIndex(table, column);
    }

    // Particles sorted by size keep their numbers: each comes once. In a tally some come again, unless it is short.
    private static bool MayNumberParticles(MeasuredTable table, int column)
    {
        const int many = 8;
        var numbers = table.Numbers(column, DecimalMark.Point).OfType<double>().ToList();
        return numbers.Distinct().Count() == numbers.Count && (numbers.Count >= many || (numbers.Max() == numbers.Count && numbers.Min() == 1));
    }

    // Each size once, in order.
    private static bool IsOrdered(MeasuredTable table, int column)
    {
        double[] sizes = [.. table.Numbers(column, table.Marks([column]).Mark ?? DecimalMark.Point).OfType<double>()];
        return Enumerable.Range(1, Math.Max(0, sizes.Length - 1)).Select(i => Math.Sign(sizes[i] - sizes[i - 1])).Distinct().ToList() is [1 or -1];
    }
}
