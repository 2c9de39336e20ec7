using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Diffraction;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Reads a list of lines: those of a powder whose pattern is elsewhere, or those of a known phase to compare patterns with.</summary>
internal static class LineListReading
{
    private const int LongestName = 60, RowsLooked = 60;

    /// <summary>Reads it.</summary>
    /// <param name="source">The grid and what must be known for it.</param>
    /// <param name="layout">How it holds the lines.</param>
    public static MeasurementDraft Read(MeasurementSource source, LineListLayout layout)
    {
        var table = layout.Table;
        int?[] used = [layout.TwoTheta, layout.Spacing, layout.Intensity, layout.Width];
        var evidence = table.Marks([.. used.OfType<int>()]);
        var mark = evidence.Settle(source.Talk);
        var isReference = source.Talk.Assume(source.Question("list"), Codes.Ambiguous,
            layout.SaysReference(source.Talk.FileName) ? "These are the lines of a known phase: patterns of the study are compared with them." : "These are lines found in a pattern of the powder; the pattern itself is not in this list.",
            layout.SaysReference(source.Talk.FileName) ? [ScanNames.Reference, ScanNames.Measured] : [ScanNames.Measured, ScanNames.Reference]) == ScanNames.Reference;
        // Where nothing around the list says it, the lines of the pattern beside it may.
        var said = RadiationSaid.In(Lines([.. table.Preamble, .. Rows(table.Heading), .. Rows(table.Units), .. table.Below])) is { IsSilent: false } own ? own : RadiationSaid.In(Lines([.. source.File.SelectMany(g => g.Rows.Take(RowsLooked))]));
        var name = isReference && Title(table) is { } title ? PowderName.Settle(source, title.Text, title.Row, "phase") : FileWords.Powder(source, [.. table.Preamble, .. table.Below]);
        var cell = isReference ? [] : ReferenceCell.Ask(source);
        var radiation = RadiationOf(source, layout, said);
        var columns = Enumerable.Range(0, table.Width).Select(c => Shown(layout, c)).ToImmutableArray();
        var draft = new MeasurementDraft(new(table.Body.Length, 0, 0, source.Grid.Rows.Count(r => !r.IsBlank) - table.Body.Length), columns, [])
        {
            HeadingLine = table.HeadingLine,
            UnitsLine = table.Units?.Number,
            Decimal = mark,
            DecimalReason = evidence.Reason,
            FirstRows = table.Body,
        };
        if (radiation is null || mark is null && evidence.Mark is null)
            return draft with { Rows = draft.Rows with { Ready = 0, Undecided = table.Body.Length } };

        var places = ImmutableArray.CreateBuilder<MeasuredColumn>();
        Add(ScanNames.TwoTheta, layout.TwoTheta, 1, "°");
        Add(ScanNames.Spacing, layout.Spacing, layout.PerSpacing, "Å");
        Add(ScanNames.Counts, layout.Intensity, 1, "");
        Add(ScanNames.Width, layout.Width, 1, "°");
        if (!layout.Planes.IsEmpty)
            places.Add(new(ScanNames.Planes, table.Named(layout.Planes[0]), "") { Words = [.. table.Body.Select(r => string.Join(' ', layout.Planes.Select(c => r.At(c).Text)))] });
        ImmutableArray<MeasuredSetting> settings = [new(ScanNames.List, isReference ? ScanNames.Reference : ScanNames.Measured, null, "", 0), .. radiation.Settings(said), .. cell];
        return draft with { Measurements = [new("", DiffractionFiles.TechniqueName, name, settings, places.ToImmutable(), source.At(table.Body[0].Number, null))] };

        void Add(string column, int? at, double scale, string unit)
        {
            if (at is { } c)
                places.Add(new(column, table.Named(c), unit) { Numbers = [.. table.Numbers(c, mark).Select(v => v * scale)] });
        }
    }

    // What the words say, held against the wavelength that 2θ and d themselves give; spacings alone need none.
    private static ScanRadiation? RadiationOf(MeasurementSource source, LineListLayout layout, RadiationSaid said)
    {
        var id = source.Question("unit:radiation");
        if (source.Talk.Answers.To(id) is { } answer)
        {
            source.Talk.Ask(id, Codes.UnitMissing, "The radiation of these lines.", RadiationQuestion.Usual);
            return RadiationQuestion.Answered(answer);
        }

        var own = layout.Wavelength is { } w ? LineListLayout.Nearest(w) is { } near ? new ScanRadiation(near.WithoutKa2(), null) : new ScanRadiation(Radiation.Monochromatic(w), w) : null;
        var stated = said.Wavelengths is [var first, ..] ? ScanRadiation.Named(first.ToString("0.0#####", CultureInfo.InvariantCulture)) : said.Anodes is [var anode, ..] && Radiation.Of(anode) is { } known ? new(known, null) : null;
        if (stated is not null && own is not null && stated.Radiation.Anode != own.Radiation.Anode)
        {
            var (a, b) = (Name(own), Name(stated));
            source.Talk.Ask(id, Codes.UnitMissing, string.Create(CultureInfo.InvariantCulture, $"The words of {source.Talk.FileName} say {b}, yet 2 d sin θ is {layout.Wavelength:0.0000} Å in every row of its 2θ and d (Å), the wavelength of {a}: the two contradict each other. Which radiation was it?"), [a, b]);
            source.Talk.Explain(id, [$"the angles were measured with {a}, and the spacings stand", $"the angles were measured with {b}, and the spacings are worked out anew"]);
            return null;
        }

        if (stated is not null)
            return stated with { Radiation = stated.Radiation.WithoutKa2() };
        if (own is not null)
            return own;
        if (layout.TwoTheta is null)
        {
            source.Talk.Assume(id, Codes.UnitMissing, "Spacings need no radiation; 2θ is shown as for Cu Kα1.", ["Cu Kα1", .. RadiationQuestion.Usual.Remove("Cu Kα1")]);
            return ScanRadiation.Named("Cu Kα1");
        }

        source.Talk.Ask(id, Codes.UnitMissing, "The list does not say with which radiation its angles were measured. Which was it?", RadiationQuestion.Usual);
        return null;
    }

    // What stands over a list of reference lines names the phase, or at least tells it from the powder.
    private static (string Text, int Row)? Title(MeasuredTable table)
        => table.Preamble.SelectMany(r => r.Cells.Where(c => !c.IsBlank && c.Text.Any(char.IsLetter) && c.Text.Length <= LongestName).Select(c => ((string, int)?)(c.Text.Trim(), r.Number))).FirstOrDefault();

    private static string Name(ScanRadiation radiation) => radiation.Radiation.Anode.Length > 0 ? radiation.Radiation.Anode + " Kα" : radiation.Radiation.Ka1.ToString("0.0### Å", CultureInfo.InvariantCulture);

    private static GridRow[] Rows(GridRow? row) => row is null ? [] : [row];

    private static List<(int Row, string Text)> Lines(ImmutableArray<GridRow> rows)
        => [.. rows.Select(r => (r.Number, string.Join(' ', r.Cells.Where(c => !c.IsBlank).Select(c => c.Text)) is var t && t.Length > ScanWords.LongestLine ? t[..ScanWords.LongestLine] : t))];

    private static ColumnUnderstanding Shown(LineListLayout layout, int column)
    {
        var measures = column == layout.TwoTheta ? "2θ of the line, degrees" : column == layout.Spacing ? "spacing d of the line" : column == layout.Intensity ? "intensity as listed" : column == layout.Width ? "width as listed"
            : layout.Planes.Contains(column) ? "indices of the line" : null;
        return layout.Table.Shown(column, measures is null ? ColumnUse.LeftOut : ColumnUse.Measured, measures, null, measures is null ? "Not part of a list of lines: it stays in the original." : null);
    }
}
