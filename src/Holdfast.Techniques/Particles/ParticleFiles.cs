using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Particles;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Particles;

/// <summary>Lists of particle sizes measured in micrographs: one row a particle, with its image and its group where they are given, or a column a powder.</summary>
public sealed class ParticleFiles : ITechnique
{
    /// <summary>Name kept with every measurement.</summary>
    internal const string TechniqueName = "particles";

    /// <summary>Column of images.</summary>
    internal const string Image = "image";

    /// <summary>Column of the row of the file that each particle stands in.</summary>
    internal const string FileRow = "row";

    /// <summary>Column of how many particles had a size; none where every row is one particle.</summary>
    internal const string Count = "count";

    /// <summary>Setting of a size that was corrected or left out, as answered: "length of row 58".</summary>
    internal const string Corrected = " of row ";

    private const int FewestParticles = 10;
    private const string AsWritten = "as-written";
    private const string LeaveOut = "leave-out";

    /// <inheritdoc/>
    public string Name => TechniqueName;

    /// <inheritdoc/>
    public string Title => "particle sizes from micrographs";

    /// <inheritdoc/>
    public string Reads => "lists of lengths, widths or diameters, one row a particle, a column an image, or a tally, as CSV, text or XLSX";

    /// <inheritdoc/>
    public Recognition Recognise(Grid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        if (SizeTable.Of(Laid(grid)) is not { } sizes || (sizes.CountColumns.IsEmpty && sizes.Table.Body.Length < FewestParticles))
            return Recognition.None;
        return sizes.IsCertain ? Recognition.Certain(sizes.Evidence) : Recognition.Possible(sizes.Evidence);
    }

    /// <inheritdoc/>
    public MeasurementDraft Read(MeasurementSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        source = source with { Grid = Laid(source.Grid) };
        var sizes = SizeTable.Of(source.Grid)!;
        var table = sizes.Table;
        var evidence = table.Marks([.. sizes.Sizes.Select(s => s.Column)]);
        var mark = evidence.Settle(source.Talk);
        ImmutableArray<double>? pixels = sizes.ArePixels ? ScreenPixels.Ask(source, sizes) : [];
        var repeated = PastedTwice.Ask(source, table, sizes.ImageColumn, sizes.Sizes[0].Column);
        var unit = sizes.Unit ?? (sizes.ArePixels ? pixels is null ? null : "nm" : UnitAsked(source, sizes));
        var scaled = pixels is { IsEmpty: false } ? pixels : mark is null || unit is null ? [] : ImageScales.Ask(source, sizes, mark.Value, unit);
        var exchanged = mark is null || unit is null ? [] : ExchangedSides.Ask(source, sizes, mark.Value, unit);
        var struck = Struck(source, sizes);
        var groups = mark is null ? [] : Groups(source, sizes, mark.Value, unit, scaled ?? [], (repeated ?? []).Union(struck), exchanged ?? []);
        var open = exchanged is null || mark is null || unit is null || repeated is null || scaled is null;
        var measured = ImmutableArray.CreateBuilder<Measurement>();
        var apart = groups.Length > 1 && unit is not null && !sizes.AreStrips;
        var scales = apart ? GroupScales(source, groups, unit!) : [];
        open |= apart && scales.IsDefault;
        double? image = unit is null ? 1 : ImageExtent.Factor(source, table.Preamble.Concat(table.Below), table.Named(sizes.Sizes[0].Column), [.. groups.SelectMany(g => g.Sizes[0].Numbers).OfType<double>()], unit);
        open |= image is null;
        foreach (var (k, group) in groups.Index())
        {
            var settings = ImmutableArray.CreateBuilder<MeasuredSetting>();
            if (unit is null)
                break;
            foreach (var size in group.Sizes)
            {
                open |= !Slips(source, sizes, size, group, unit, settings);
                Impossible(source, sizes, size, group, unit);
            }

            if ((scales.IsDefaultOrEmpty ? 1 : scales[k] ?? 1) * (image ?? 1) is not 1 and var factor)
                settings.Add(new("scale", "× " + Text(factor), factor, "", 0));
            measured.Add(new Measurement(
                "", TechniqueName, group.Powder, settings.ToImmutable(),
                [
                    .. group.Sizes.Select(s => new MeasuredColumn(s.Name, s.Heading, s.IsLength ? unit : "") { Numbers = s.Numbers }),
                    new MeasuredColumn(FileRow, "", "") { Numbers = [.. group.Rows.Select(r => (double?)table.Body[r].Number)] },
                    .. group.Counts.IsDefault ? Array.Empty<MeasuredColumn>() : [new MeasuredColumn(Count, table.Named(sizes.CountColumns[k]), "") { Numbers = group.Counts }],
                    .. group.Image is { } own ? [new MeasuredColumn(Image, "", "") { Words = [.. group.Rows.Select(_ => own)] }] : sizes.ImageColumn >= 0 ? [new MeasuredColumn(Image, table.Named(sizes.ImageColumn), "") { Words = [.. group.Rows.Select(r => table.Body[r].At(sizes.ImageColumn).Text)] }] : Array.Empty<MeasuredColumn>(),
                ],
                source.At(table.Body[group.Rows[0]].Number, group.Sizes[0].Heading)));
        }

        if (!open && measured.Count == 0)
            source.Talk.Note(Codes.Unreadable, Weight.Stop, $"No row under “{table.Named(sizes.Sizes[0].Column)}” holds a size that can be read as a number{(sizes.CountColumns.IsEmpty ? "" : " beside how many particles had it")}. Nothing of it is taken in.", table.HeadingLine is { } line ? "row " + line.ToString(CultureInfo.InvariantCulture) : source.Talk.FileName);
        var columns = Enumerable.Range(0, table.Width).Select(i => sizes.Sizes.FirstOrDefault(s => s.Column == i) is { Name: not null } size
                ? table.Shown(i, ColumnUse.Measured, size.Name, size.IsLength ? unit : null, size.IsLength ? SizeUnits.Changed(table, i, unit) : null)
            : sizes.CountColumns.Contains(i) ? table.Shown(i, ColumnUse.Measured, "number of particles", null, "Each size counts as often as its number says.")
            : i == sizes.GroupColumn ? table.Shown(i, ColumnUse.Measured, "powder", null, "Each group is a powder of its own.")
            : i == sizes.ImageColumn ? table.Shown(i, ColumnUse.Measured, "image", null, null)
            : table.Shown(i, ColumnUse.LeftOut, null, null, sizes.IndexColumns.Contains(i) ? "It counts the particles and is no measurement." : "It is no size.")).ToImmutableArray();
        return new(new RowCount(open ? 0 : table.Body.Length - struck.Count, open ? table.Body.Length - struck.Count : 0, table.Blank, table.Below.Length + struck.Count), columns, open ? [] : measured.ToImmutable())
        {
            HeadingLine = table.HeadingLine,
            UnitsLine = table.Units?.Number,
            Decimal = mark,
            DecimalReason = evidence.Reason,
            FirstRows = table.Body,
        };
    }

    // What she struck out herself does not count; where a row holds several images it may be said of one of them only, and all stay.
    private static ImmutableHashSet<int> Struck(MeasurementSource source, SizeTable sizes)
    {
        var body = sizes.Table.Body;
        ImmutableHashSet<int> struck = sizes.IsWide ? [] : [.. Enumerable.Range(0, body.Length).Where(i => StruckRows.Is(body[i]))];
        if (!struck.IsEmpty)
            source.Talk.Note(Codes.OddCell, Weight.Note, $"Struck out in the file, and left out: {string.Join(", ", struck.Order().Take(6).Select(i => "row " + body[i].Number.ToString(CultureInfo.InvariantCulture)))}{(struck.Count > 6 ? $" and {(struck.Count - 6).ToString(CultureInfo.InvariantCulture)} more" : "")}.", [.. struck.Order().Select(i => "row " + body[i].Number.ToString(CultureInfo.InvariantCulture))]);
        return struck;
    }

    // Two sizes in a cell are cut apart; lengths in running lines become a table where the grid is none.
    private static Grid Laid(Grid grid) => PairedCells.Apart(grid) is var apart && SizeTable.Of(apart) is not null ? apart : RunningLengths.Laid(grid);

    private static string? UnitAsked(MeasurementSource source, SizeTable sizes)
    {
        var id = "unit:" + sizes.Table.Named(sizes.Sizes[0].Column);
        var answer = source.Talk.Ask(id, Codes.UnitMissing, $"{sizes.Table.Named(sizes.Sizes[0].Column)} has no unit of length. In which unit are the sizes?", ["nm", "µm", "mm"], sizes.Table.Named(sizes.Sizes[0].Column));
        return answer is not null && Unit.Read(answer) is UnitText.Known known && known.Unit.IsConvertibleTo(Unit.Parse("nm")) ? known.Unit.Plain : null;
    }

    private static ImmutableArray<SizeGroup> Groups(MeasurementSource source, SizeTable sizes, DecimalMark mark, string? unit, ImmutableArray<double> scaled, ImmutableHashSet<int> leftOut, ImmutableHashSet<int> exchanged)
    {
        var table = sizes.Table;
        if (sizes.IsWide)
        {
            // An image is no powder, and a tally of one powder has its name elsewhere.
            var own = sizes.AreImages || sizes.AreStrips || sizes.Sizes.Any(s => s.Powder is null) ? FileWords.Powder(source, table.Preamble) : null;
            return [.. sizes.Sizes.Select((s, k) =>
            {
                var numbers = sizes.ArePixels ? [.. table.Numbers(s.Column, mark).Select(n => n * (scaled.IsEmpty ? 1 : scaled[k]))] : SizeUnits.Numbers(table, s.Column, mark, unit);
                var counts = sizes.CountColumns.IsEmpty ? default : table.Numbers(sizes.CountColumns[k], mark);
                int[] rows = [.. Enumerable.Range(0, numbers.Length).Where(i => numbers[i] is not null && (counts.IsDefault || counts[i] is > 0))];
                return new SizeGroup(own ?? FileWords.Spelled(source, s.Powder!), [.. rows], [new SizeColumn(s.Name!, table.Named(s.Column), true, [.. rows.Select(i => numbers[i])], s.Column)])
                {
                    Image = sizes.AreImages ? s.Powder : null,
                    Counts = counts.IsDefault ? default : [.. rows.Select(i => counts[i])],
                };
            }).Where(g => !g.Rows.IsEmpty)];
        }

        var words = sizes.GroupColumn >= 0 ? table.Words(sizes.GroupColumn) : [];
        var columns = sizes.Sizes.Select(s => (s, Numbers: !s.IsLength ? table.Numbers(s.Column, mark) : [.. (sizes.ArePixels ? table.Numbers(s.Column, mark) : SizeUnits.Numbers(table, s.Column, mark, unit)).Select((n, i) => scaled.IsEmpty ? n : n * scaled[i])])).ToArray();
        if (!exchanged.IsEmpty && ExchangedSides.Of(sizes) is var (one, other))
        {
            var (length, width) = (Array.FindIndex(columns, c => c.s.Column == one), Array.FindIndex(columns, c => c.s.Column == other));
            var (longer, shorter) = (columns[length].Numbers, columns[width].Numbers);
            columns[length].Numbers = [.. longer.Select((n, i) => exchanged.Contains(i) ? shorter[i] : n)];
            columns[width].Numbers = [.. shorter.Select((n, i) => exchanged.Contains(i) ? longer[i] : n)];
        }

        int[] all = [.. Enumerable.Range(0, table.Body.Length).Where(i => !leftOut.Contains(i) && columns.Any(c => c.Numbers[i] is not null))];
        return
        [
            .. all.GroupBy(i => words.IsEmpty ? "" : words[i], StringComparer.Ordinal).Select(g => new SizeGroup(
                words.IsEmpty ? FileWords.Powder(source, table.Preamble) : FileWords.Spelled(source, g.Key.Length > 0 ? g.Key : "without a group"), [.. g],
                [.. columns.Select(c => new SizeColumn(c.s.Name!, table.Named(c.s.Column), c.s.IsLength, [.. g.Select(i => c.Numbers[i])], c.s.Column))])),
        ];
    }

    // A size far outside all others while a tenth of it fits: asked, since mean and scatter hang on it.
    private static bool Slips(MeasurementSource source, SizeTable sizes, SizeColumn size, SizeGroup group, string unit, ImmutableArray<MeasuredSetting>.Builder settings)
    {
        int[] known = [.. Enumerable.Range(0, size.Numbers.Length).Where(i => size.Numbers[i] is > 0)];
        double[] values = [.. known.Select(i => size.Numbers[i]!.Value)];
        var settled = true;
        foreach (var slip in TenfoldSlip.Among(values))
        {
            var row = sizes.Table.Body[group.Rows[known[slip.Index]]];
            var written = row.At(size.Column).Text;

            // The number of a particle stands before its size, where there are several.
            var particle = sizes.IndexColumns.OrderByDescending(c => c < size.Column ? c : -1).Select(c => row.At(c).Text).FirstOrDefault(t => t.Length > 0);
            var name = particle is null ? $"Row {row.Number.ToString(CultureInfo.InvariantCulture)}" : $"Particle {particle} (row {row.Number.ToString(CultureInfo.InvariantCulture)})";
            // Length and width of one particle are asked about apart: an answer to one is none to the other.
            var id = $"size:{row.Number.ToString(CultureInfo.InvariantCulture)}" + (sizes.AreImages ? ":" + group.Image : sizes.AreStrips ? ":" + particle : sizes.CountColumns.IsEmpty ? "" : ":" + group.Powder) + (size == group.Sizes[0] ? "" : ":" + size.Name) + (source.Grid.Sheet is { } sheet && source.File.Length > 1 ? ":" + sheet : "");
            var suggested = Text(slip.Suggested);
            var answer = source.Talk.Ask(id, Codes.OddCell,
                $"{name}: {size.Heading} {written} lies far outside all others, and {suggested} {unit} would fit. Is it a lost decimal point?", [suggested, AsWritten, LeaveOut], $"row {row.Number.ToString(CultureInfo.InvariantCulture)}");
            source.Talk.Explain(id,
            [
                Said(values, slip.Index, slip.Suggested, unit), Said(values, slip.Index, slip.Value, unit), Said(values, slip.Index, null, unit),
            ]);
            settled &= answer is not null;
            if (answer is not null && answer != AsWritten)
                settings.Add(new(size.Name + Corrected + row.Number.ToString(CultureInfo.InvariantCulture), answer == LeaveOut ? "left out" : answer, answer == LeaveOut ? null : slip.Suggested, unit, 0));
        }

        return settled;
    }

    // What no particle can be stays in the measurement as written, and no average counts it.
    private static void Impossible(MeasurementSource source, SizeTable sizes, SizeColumn size, SizeGroup group, string unit)
    {
        var factor = size.IsLength ? Nanometres(unit) : null;
        string[] rows = [.. Enumerable.Range(0, size.Numbers.Length).Where(i => size.Numbers[i] is { } value && !SizeStatistics.IsPossible(value, factor)).Select(i => "row " + sizes.Table.Body[group.Rows[i]].Number.ToString(CultureInfo.InvariantCulture))];
        if (rows.Length == 0)
            return;
        source.Talk.Note(
            Codes.OddCell, Weight.Caution, string.Create(CultureInfo.InvariantCulture,
            $"{size.Heading}, {string.Join(", ", rows.Take(4))}{(rows.Length > 4 ? $" and {rows.Length - 4} more" : "")}: no size of a particle ({(size.IsLength ? $"{SizeStatistics.Smallest} nm to {SizeStatistics.Largest / 1e6:0} mm" : $"{1 / SizeStatistics.LargestShape} to {SizeStatistics.LargestShape:0}")}). No average counts it."), rows);
    }

    /// <summary>What a size is multiplied by to be in nm; null for a number without a unit.</summary>
    /// <param name="unit">Unit of length; empty for none.</param>
    internal static double? Nanometres(string unit) => unit.Length == 0 ? null : Unit.Parse(unit).Convert(1, Unit.Parse("nm"));

    // One powder ten or a thousand times the other: perhaps in another unit than the heading says. Default where it is not answered.
    private static ImmutableArray<double?> GroupScales(MeasurementSource source, ImmutableArray<SizeGroup> groups, string unit)
    {
        double[] medians = [.. groups.Select(g => Summary.Of([.. g.Sizes[0].Numbers.OfType<double>().DefaultIfEmpty(1)]).Median)];
        if (medians.Any(m => !(m > 0)))
            return [.. groups.Select(_ => (double?)null)];
        var scales = new double?[groups.Length];
        for (var k = 1; k < groups.Length; k++)
        {
            if (TenfoldSlip.OfGroup(medians[k], medians[0]) is not { } factor)
                continue;
            var text = $"{groups[k].Label} has a median of {Text(medians[k])} {unit}, {groups[0].Label} of {Text(medians[0])} {unit}: unusual for kin powders. Are its sizes in another unit?";
            if (TenfoldScale.Ask(source, "scale:" + groups[k].Label, text, groups[k].Label, medians[k], factor, unit) is not { } scale)
                return default;
            scales[k] = scale;
        }

        return [.. scales];
    }

    private static string Said(double[] values, int index, double? instead, string unit)
    {
        double[] used = instead is { } value ? [.. values.Select((v, i) => i == index ? value : v)] : [.. values.Where((_, i) => i != index)];
        var summary = Summary.Of(used);
        return $"mean {Text(summary.Mean)} {unit}, standard deviation {Text(summary.Sd ?? 0)} {unit}";
    }

    private static string Text(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}

/// <summary>The particles of one powder.</summary>
/// <param name="Powder">Its name.</param>
/// <param name="Rows">Places of its rows in the table, from 0.</param>
/// <param name="Sizes">What was measured of each.</param>
internal sealed record SizeGroup(string Powder, ImmutableArray<int> Rows, ImmutableArray<SizeColumn> Sizes)
{
    /// <summary>The image that all were measured in; null where it is not one column.</summary>
    public string? Image { get; init; }

    /// <summary>How many particles had each size; default where every row is one.</summary>
    public ImmutableArray<double?> Counts { get; init; }

    /// <summary>What tells it from the others.</summary>
    public string Label => Image ?? Powder;
}

/// <summary>One measured column of one powder.</summary>
/// <param name="Name">"length", "diameter", "aspect".</param>
/// <param name="Heading">As written.</param>
/// <param name="IsLength">True for a length, false for a number without unit.</param>
/// <param name="Numbers">As they stand in the file.</param>
/// <param name="Column">Its place in the table, from 0.</param>
internal sealed record SizeColumn(string Name, string Heading, bool IsLength, ImmutableArray<double?> Numbers, int Column);
