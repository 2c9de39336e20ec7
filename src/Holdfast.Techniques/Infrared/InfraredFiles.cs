using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Infrared;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Infrared;

/// <summary>Infrared spectra: wavenumbers with one column a spectrum, or pairs of columns, in absorbance or transmittance; JCAMP-DX blocks included.</summary>
public sealed class InfraredFiles : ITechnique
{
    /// <summary>Name kept with every measurement.</summary>
    internal const string TechniqueName = "infrared";

    /// <summary>Column of wavenumbers.</summary>
    internal const string Wavenumber = "wavenumber";

    /// <summary>Column of ordinates.</summary>
    internal const string Ordinate = "ordinate";

    /// <summary>Setting that says what the ordinate is.</summary>
    internal const string Scale = "scale";

    /// <summary>Setting of the instrument's resolution.</summary>
    internal const string Resolution = "resolution";

    /// <summary>Setting of how the light went: "total reflection" or "transmission".</summary>
    internal const string Path = "path";

    /// <summary>Setting of what was taken off a curve that had been moved up for a figure.</summary>
    internal const string Shifted = "moved up by";

    /// <summary>Value of <see cref="Path"/> for attenuated total reflection.</summary>
    internal const string Reflected = "total reflection";

    private const int FewestRows = 50;
    private const int FewestBareRows = 200;
    private const double LowestMiddle = 4500;
    private const double LeastSpan = 200;
    private const double LeastBareSpan = 1500;
    private const double LowestBare = 180;

    private static readonly (string Word, OrdinateScale Scale)[] Choices =
    [
        ("absorbance", OrdinateScale.Absorbance), ("transmittance", OrdinateScale.Transmittance), ("percent-transmittance", OrdinateScale.PercentTransmittance),
    ];

    /// <inheritdoc/>
    public string Name => TechniqueName;

    /// <inheritdoc/>
    public string Title => "infrared spectroscopy";

    /// <inheritdoc/>
    public string Reads => "spectra: wavenumber against absorbance or transmittance, as CSV, text, XLSX or JCAMP-DX";

    /// <summary>Scale by the word that settings and answers use.</summary>
    /// <param name="word">"percent-transmittance".</param>
    internal static OrdinateScale ScaleOf(string word) => Choices.First(c => string.Equals(c.Word, word, StringComparison.OrdinalIgnoreCase)).Scale;

    /// <inheritdoc/>
    public Recognition Recognise(Grid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        if (MeasuredTable.Of(grid, 2) is not { } table || table.Body.Length < FewestRows || table.Preamble.Append(table.Heading ?? new GridRow(0, [])).Any(r => r.Cells.Any(c => OrdinateWords.IsRaman(c.Text))))
            return Recognition.None;
        var pairs = Pairs(table);
        if (pairs.IsEmpty)
            return Recognition.None;
        var said = table.Preamble.Any(r => r.Cells.Any(c => OrdinateWords.IsInfrared(c.Text)));
        var x = pairs[0].X;
        var mark = Evidence(table, pairs).Mark;
        var numbers = Wavenumbers(table, x, mark);
        if (numbers.Length == 0)
            return Recognition.None;
        var span = numbers.Max() - numbers.Min();
        if (OrdinateWords.IsWavenumber(table.Says(x)) && numbers.Min() < LowestMiddle && span >= LeastSpan)
            return Recognition.Certain($"'{table.Named(x)}' over {Text(numbers[0])} to {Text(numbers[^1])}");
        // Wavelengths from 2.5 to 25 µm with an absorbance or transmittance over each: light of no other instrument reaches so far.
        if (WavelengthUnit(table, x) != "cm-1" && numbers.Min() >= LowestBare && numbers.Max() is > 2500 and < 8000 && span >= LeastBareSpan && OrdinateWords.IsOrdinate(table.Says(pairs[0].Y)))
            return Recognition.Certain($"'{table.Named(x)}' reaches into the infrared, and '{table.Named(pairs[0].Y)}' stands beside it");
        // A transmittance over the numbers of its points: the wavenumbers were lost, and are asked for.
        if (Counted(table, x, mark ?? DecimalMark.Point) is >= FewestBareRows && OrdinateWords.StatedScale(table.Says(pairs[0].Y), []) is StatedScale.Percent or StatedScale.Transmittance)
            return Recognition.Certain($"'{table.Named(pairs[0].Y)}' over the numbers of its points");
        if (said && span >= LeastSpan && numbers.Max() is > 500 and < 15000)
            return Recognition.Certain("a line above the table says that it is infrared");
        return table.Heading is null && numbers.Length >= FewestBareRows && numbers.Min() >= LowestBare && numbers.Max() is > 2500 and < 8000 && span >= LeastBareSpan
            ? Recognition.Possible($"the first column runs from {Text(numbers[0])} to {Text(numbers[^1])}, as wavenumbers do")
            : Recognition.None;
    }

    /// <inheritdoc/>
    public MeasurementDraft Read(MeasurementSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var table = MeasuredTable.Of(source.Grid, 2)!;
        var pairs = Pairs(table);
        var evidence = Evidence(table, pairs);
        var mark = evidence.Settle(source.Talk);
        var counted = pairs.IsEmpty || mark is null ? null : Counted(table, pairs[0].X, mark.Value);
        var range = counted is null ? null : PointNumbers.Ask(source, table, pairs[0].X, counted.Value);
        var scales = mark is null || (counted is not null && range is null) ? [] : Scales(source, table, pairs, mark.Value);
        var settings = Settings(table);
        var several = pairs.Length > 1;
        var own = several ? "" : FileWords.Powder(source, table.Preamble);
        string[] powders = several && Repeated(source, table, pairs) is { } again ? [.. pairs.Select(_ => again)] : [.. pairs.Select((p, k) => !several ? own : FileWords.Spelled(source, (OrdinateWords.PowderIn(table.Named(p.Y)) is { Length: > 0 } name ? name : Above(table, pairs, k)) is { Length: > 0 } powder ? powder : $"{FileStem(source)} {(k + 1).ToString(CultureInfo.InvariantCulture)}"))];
        var paths = several ? PathsByName.Of(table.Preamble.Concat(table.Below), powders) : null;
        if (paths is not null)
            PathsByName.Caution(source.Talk, paths);
        if (mark is not null && CopiedSpectrum.Ask(source, table, pairs, mark.Value) is var copied)
        {
            scales = copied is null ? [] : scales;
            pairs = copied is { IsEmpty: false } ? pairs.RemoveAll(p => copied.Contains(p.Y)) : pairs;
        }

        var measurements = ImmutableArray.CreateBuilder<Measurement>();
        var columns = Enumerable.Range(0, table.Width).Select(i => table.Shown(i, ColumnUse.LeftOut, null, null, "It is neither wavenumber nor spectrum.")).ToArray();
        for (var k = 0; k < pairs.Length; k++)
        {
            var (x, y) = pairs[k];
            var unit = WavelengthUnit(table, x);
            columns[x] = table.Shown(x, ColumnUse.Measured, unit == "cm-1" ? "wavenumber" : "wavelength", unit, null);
            var scale = scales.IsEmpty ? null : scales[k];
            columns[y] = table.Shown(y, ColumnUse.Measured, scale ?? "ordinate of the spectrum", null, scale is null ? "Absorbance or transmittance: see the question." : null);
            if (scale is null || mark is null || ShiftedCurve.Ask(source, table.Named(y), scale, table.Numbers(y, mark)) is not { } shift)
                continue;
            ImmutableArray<double?> abscissas = range is { } known ? [.. table.Numbers(x, mark).Select(n => n is { } i ? known.At(i) : (double?)null)] : table.Numbers(x, mark), ordinates = shift == 0 ? table.Numbers(y, mark) : [.. table.Numbers(y, mark).Select(n => n - shift)];
            int[] rows = [.. Enumerable.Range(0, abscissas.Length).Where(i => abscissas[i] is not null && ordinates[i] is not null)];
            measurements.Add(new Measurement(
                "", TechniqueName, powders[k],
                [new(Scale, scale, null, "", table.HeadingLine ?? 0), .. shift == 0 ? [] : new[] { new MeasuredSetting(Shifted, Text(shift), shift, "", 0) }, .. paths is null ? settings : [.. settings.Where(s => s.Name != Path), .. paths[powders[k]] is { } way ? [way] : Array.Empty<MeasuredSetting>()]],
                [
                    new(Wavenumber, table.Named(x), unit) { Numbers = [.. rows.Select(i => abscissas[i])] },
                    new(Ordinate, table.Named(y), scale == "percent-transmittance" ? "%" : "") { Numbers = [.. rows.Select(i => ordinates[i])] },
                ],
                source.At(table.Body[0].Number, table.Named(y))));
        }

        var ready = measurements.Count == pairs.Length ? table.Body.Length : 0;
        return new(new RowCount(ready, table.Body.Length - ready, table.Blank, table.Below.Length), [.. columns], measurements.Count == pairs.Length ? measurements.ToImmutable() : [])
        {
            HeadingLine = table.HeadingLine,
            UnitsLine = table.Units?.Number,
            Decimal = mark,
            DecimalReason = evidence.Reason,
            Settings = [.. settings.Select(s => $"{s.Name} {s.Written} (line {s.Row.ToString(CultureInfo.InvariantCulture)})")],
            FirstRows = table.Body,
        };
    }

    // "Tablette 1 | Tablette 2 | Tablette 3" are one powder pressed three times; its name, or null where headings name powders.
    private static string? Repeated(MeasurementSource source, MeasuredTable table, ImmutableArray<(int X, int Y)> pairs)
    {
        const string onePowder = "one-powder", powders = "powders-of-their-own";
        string[] heads = [.. pairs.Select(p => table.Says(p.Y))];
        if (!RepeatWords.AreOfOne(heads, OrdinateWords.IsOrdinate))
            return null;
        var answer = source.Talk.Assume(source.Question("repeats"), Codes.Ambiguous, $"{string.Join(", ", heads.Select(h => $"“{h}”"))} are of one powder: a spectrum each.", [onePowder, powders], [.. heads]);
        return answer == onePowder ? FileWords.Powder(source, table.Preamble) : null;
    }

    // "2,500" to "22,000" alone could be thousands: the ordinates beside them tell.
    private static DecimalEvidence Evidence(MeasuredTable table, ImmutableArray<(int X, int Y)> pairs)
        => WithinAScale(table.Marks([.. pairs.SelectMany(p => new[] { p.X, p.Y }).Distinct()]), table, pairs);

    // "95,463" could be thousands anywhere else; as a transmittance or an absorbance it cannot.
    private static DecimalEvidence WithinAScale(DecimalEvidence evidence, MeasuredTable table, ImmutableArray<(int X, int Y)> pairs)
    {
        if (evidence is not { Mark: null, Other: null, Example: { } example } || pairs.IsEmpty)
            return evidence;
        var (mark, other) = example.Contains(',', StringComparison.Ordinal) ? (DecimalMark.Comma, DecimalMark.Point) : (DecimalMark.Point, DecimalMark.Comma);
        double Highest(DecimalMark m) => pairs.SelectMany(p => table.Numbers(p.Y, m)).OfType<double>().DefaultIfEmpty().Max();
        return Highest(mark) <= HighestOrdinate && Highest(other) > HighestOrdinate ? new(mark, $"{example} is an ordinate, which no thousands could be", null) : evidence;
    }

    // Stacked curves included, no ordinate in per cent is larger.
    private const double HighestOrdinate = 1000;

    // Each spectrum with its own wavenumbers: the nearest such column to its left, else the first of the table.
    private static ImmutableArray<(int X, int Y)> Pairs(MeasuredTable table)
    {
        // A stray number beside the table is no spectrum; one that was cut short is.
        int[] numeric = [.. Enumerable.Range(0, table.Width).Where(i => table.IsNumeric(i) && table.Body.Count(r => !r.At(i).IsBlank) >= Math.Min(FewestRows, table.Body.Length))];
        if (numeric.Length < 2)
            return [];
        var mark = table.Marks(numeric).Mark ?? DecimalMark.Point;
        int[] axes = [.. numeric.Where(i => IsAxis(table, i, mark))];
        if (axes.Length == 0)
            return [];
        ImmutableArray<(int X, int Y)> pairs = [.. numeric.Where(i => !axes.Contains(i) && !OrdinateWords.IsIndex(table.Says(i)) && !OrdinateWords.IsOfNoSample(table.Says(i))).Select(y => (axes.LastOrDefault(a => a < y, axes[0]), y))];
        return pairs.Length > 2 && IsMean(table, pairs, mark) ? pairs.RemoveAt(pairs.Length - 1) : pairs;
    }

    // A last column that is the mean of those before it, at every wavenumber, is no spectrum of its own.
    private static bool IsMean(MeasuredTable table, ImmutableArray<(int X, int Y)> pairs, DecimalMark mark)
        => ClosingStatistics.Are([.. table.Body.Select(r => (Before: (IReadOnlyList<double>)[.. pairs[..^1].Select(p => MeasuredTable.Number(r.At(p.Y), mark)).OfType<double>()], Last: r.At(pairs[^1].Y)))
            .Select(l => (l.Before, Value: MeasuredTable.Number(l.Last, mark), l.Last.Text)).Where(l => l.Value is not null).Select(l => (l.Before, l.Value!.Value, l.Text))]);

    private static bool IsAxis(MeasuredTable table, int column, DecimalMark mark)
    {
        var numbers = Wavenumbers(table, column, mark);
        if (numbers.Length < FewestRows || OrdinateWords.IsOrdinate(table.Says(column)))
            return false;
        var rising = numbers[1] > numbers[0];
        for (var i = 1; i < numbers.Length; i++)
        {
            if (numbers[i] > numbers[i - 1] != rising || numbers[i] == numbers[i - 1])
                return false;
        }

        return numbers.Min() > 0 && (OrdinateWords.IsWavenumber(table.Says(column)) || (numbers.Max() - numbers.Min() >= LeastSpan && numbers.Max() > 500));
    }

    private static string WavelengthUnit(MeasuredTable table, int x)
        => !OrdinateWords.IsWavenumber(table.Says(x)) && table.UnitOf(x) is { } unit && unit.IsConvertibleTo(Unit.Parse("nm")) ? unit.Plain : "cm-1";

    // What each ordinate is. Columns that say the same and look the same are asked about once.
    private static ImmutableArray<string?> Scales(MeasurementSource source, MeasuredTable table, ImmutableArray<(int X, int Y)> pairs, DecimalMark mark)
    {
        var scales = new string?[pairs.Length];
        var looks = pairs.Select((p, k) => (Pair: p, Index: k, Stated: OrdinateWords.StatedScale(Said(table, p.Y), table.Preamble), Numbers: Ordinates(table, p, mark))).ToArray();
        foreach (var group in looks.GroupBy(l => (l.Stated, Possible: string.Join('|', OrdinateEvidence.Of(l.Numbers).Possible))))
        {
            var first = group.First();
            var evidence = OrdinateEvidence.Of(first.Numbers);
            var heading = table.Named(first.Pair.Y) is { Length: > 0 } named ? named : "the ordinate";
            var id = source.Question("scale") + (looks.GroupBy(l => l.Stated).Count() > 1 || group.Count() < looks.Length ? ":" + heading : "");
            var settled = Settle(source.Talk, id, heading, group.Key.Stated, evidence, first.Pair, table, mark);
            foreach (var one in group)
                scales[one.Index] = settled;
        }

        return [.. scales];
    }

    // "absorbance" over "pellet 1": what is measured may stand in the line above the names.
    private static string Said(MeasuredTable table, int column)
        => OrdinateWords.IsOrdinate(table.Says(column)) || table.Preamble is not [.., { Filled: > 2 } above] || above.Number != table.HeadingLine - 1 ? table.Says(column) : above.At(column).Text;

    private static string? Settle(Dialogue talk, string id, string heading, StatedScale stated, OrdinateEvidence evidence, (int X, int Y) pair, MeasuredTable table, DecimalMark mark)
    {
        var possible = evidence.Possible;
        var expected = stated switch
        {
            StatedScale.Absorbance => OrdinateScale.Absorbance,
            StatedScale.Percent => OrdinateScale.PercentTransmittance,
            StatedScale.Fraction => OrdinateScale.Transmittance,
            StatedScale.Transmittance => possible.Where(p => p != OrdinateScale.Absorbance).Cast<OrdinateScale?>().FirstOrDefault(),
            _ => null,
        };
        var range = $"{Text(evidence.Lowest)} to {Text(evidence.Highest)}";
        var pointing = evidence.Direction switch { < 0 => "bands point down", > 0 => "bands point up", _ => "which way bands point is not clear" };

        // The heading and the numbers agree, and nothing else fits: nothing to ask.
        var open = stated == StatedScale.Transmittance ? possible.Count(p => p != OrdinateScale.Absorbance) : 1;
        if (expected is { } agreed && possible.Contains(agreed) && open == 1)
            return WordOf(agreed);
        ImmutableArray<string> choices = [.. (possible.Count > 0 && expected is { } said ? possible.Append(said) : possible.Concat(Enum.GetValues<OrdinateScale>())).Distinct().Select(WordOf)];
        if (expected is null && stated == StatedScale.Nothing && possible.Count == 1)
            return Explained(talk.Assume(id, Codes.UnitMissing, $"{heading} is read as {choices[0]}: nothing says so, but {range} with {pointing} fits nothing else.", choices, heading));
        return Explained(talk.Ask(id, Codes.Ambiguous, stated switch
        {
            StatedScale.Nothing => $"{heading}: {range}, {pointing}. Is it absorbance or transmittance?",
            StatedScale.Absorbance when !possible.Contains(OrdinateScale.Absorbance) && evidence.Highest > OrdinateEvidence.HighestAbsorbance
                => $"{heading} holds {range}, {pointing}: no absorbance is above {Text(OrdinateEvidence.HighestAbsorbance)}. Is it really transmittance (%T)?",
            _ => $"{heading} holds {range}, {pointing}: that is unusual for what the heading says. Absorbance, or transmittance in % or as a fraction?",
        }, choices, heading));

        string? Explained(string? answer)
        {
            talk.Explain(id, [.. choices.Select(c => Consequence(table, pair, mark, ScaleOf(c)))]);
            return answer;
        }
    }

    // What the strongest bands would be.
    private static string Consequence(MeasuredTable table, (int X, int Y) pair, DecimalMark mark, OrdinateScale scale)
    {
        ImmutableArray<double?> x = table.Numbers(pair.X, mark), y = table.Numbers(pair.Y, mark);
        var unit = WavelengthUnit(table, pair.X);
        var points = x.Zip(y).Where(p => p.First is > 0 && p.Second is not null).Select(p => (ToWavenumber(p.First!.Value, unit), p.Second!.Value));
        if (InfraredSpectrum.Of(points, scale).Value is not { } spectrum)
            return "no absorbance follows";
        Band[] bands = [.. BandSearch.Of(spectrum).OrderByDescending(b => b.Prominence).Take(3)];
        return bands.Length == 0 ? "no bands" : "strongest bands at " + string.Join(", ", bands.Select(b => b.Wavenumber.ToString("F0", CultureInfo.InvariantCulture))) + " cm⁻¹";
    }

    private static double[] Ordinates(MeasuredTable table, (int X, int Y) pair, DecimalMark mark)
    {
        var numbers = table.Numbers(pair.X, mark).Zip(table.Numbers(pair.Y, mark)).Where(p => p.First is not null && p.Second is not null).OrderBy(p => p.First).Select(p => p.Second!.Value).ToArray();
        return numbers.Length >= 25 ? numbers : [.. Enumerable.Repeat(numbers.FirstOrDefault(), 25)];
    }

    private static ImmutableArray<MeasuredSetting> Settings(MeasuredTable table)
    {
        var settings = ImmutableArray.CreateBuilder<MeasuredSetting>();
        foreach (var row in table.Preamble)
        {
            var line = string.Join(' ', row.Cells.Where(c => !c.IsBlank).Select(c => c.Text));
            if (OrdinateWords.ResolutionIn(line) is { } resolution && !settings.Any(s => s.Name == Resolution))
                settings.Add(new(Resolution, Text(resolution) + " cm-1", resolution, "cm-1", row.Number));
            if (OrdinateWords.PathIn(line) is { } path && !settings.Any(s => s.Name == Path))
                settings.Add(new(Path, path, null, "", row.Number));
        }

        return settings.ToImmutable();
    }

    private static string FileStem(MeasurementSource source) => System.IO.Path.GetFileNameWithoutExtension(source.Talk.FileName);

    // "phosphate P-0 | | phosphate P-Mn" over two pairs of columns: the line above the heading that has one name for each.
    private static string? Above(MeasuredTable table, ImmutableArray<(int X, int Y)> pairs, int which)
    {
        var labels = table.Preamble.LastOrDefault(r => r.Filled == pairs.Length && pairs.All(p => Name(r, p).Length > 0) && r.Cells.All(c => c.IsBlank || c.Text.Any(char.IsLetter)));
        return labels is null ? null : Name(labels, pairs[which]);

        static string Name(GridRow row, (int X, int Y) pair) => row.At(pair.X) is { IsBlank: false } over ? over.Text : row.At(pair.Y).Text;
    }

    // How many points, where the column of wavenumbers only counts them: 1, 2, 3.
    private static int? Counted(MeasuredTable table, int column, DecimalMark mark)
    {
        var numbers = table.Numbers(column, mark).OfType<double>().ToArray();
        return numbers.Length >= FewestRows && numbers[0] is 0 or 1 && Enumerable.Range(1, numbers.Length - 1).All(i => numbers[i] == numbers[0] + i) ? numbers.Length : null;
    }

    // Numbers of an axis as wavenumbers, whatever it is written in; in the order of the file.
    private static double[] Wavenumbers(MeasuredTable table, int column, DecimalMark? mark)
    {
        var unit = WavelengthUnit(table, column);
        return [.. table.Numbers(column, mark).OfType<double>().Where(v => unit == "cm-1" || v > 0).Select(v => ToWavenumber(v, unit))];
    }

    /// <summary>A place on an axis as a wavenumber, cm⁻¹.</summary>
    /// <param name="value">The place, above 0.</param>
    /// <param name="unit">"cm-1", or a unit of length.</param>
    internal static double ToWavenumber(double value, string unit) => unit is "cm-1" or "" ? value : 1e7 / Unit.Parse(unit).Convert(value, Unit.Parse("nm"));

    private static string WordOf(OrdinateScale scale) => Choices.First(c => c.Scale == scale).Word;

    private static string Text(double value) => value.ToString("G5", CultureInfo.InvariantCulture);
}
