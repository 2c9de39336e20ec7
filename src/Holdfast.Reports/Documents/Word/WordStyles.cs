using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;
using Marks = DocumentFormat.OpenXml.Wordprocessing.Numbering;

namespace Holdfast.Reports.Documents.Word;

/// <summary>The styles of a document, named as word processors name their own, so that a template can restyle all of it.</summary>
internal static class WordStyles
{
    private const string Face = "Arial";

    /// <summary>Every style.</summary>
    /// <param name="language">Language of the text.</param>
    public static Styles All(string language) => new(
        new DocDefaults(
            new RunPropertiesDefault(new RunPropertiesBaseStyle(
                new RunFonts { Ascii = Face, HighAnsi = Face, EastAsia = Face, ComplexScript = Face }, new FontSize { Val = "18" }, new FontSizeComplexScript { Val = "18" },
                new Languages { Val = language, EastAsia = language })),
            new ParagraphPropertiesDefault(new ParagraphPropertiesBaseStyle(new SpacingBetweenLines { After = "70", Line = "250", LineRule = LineSpacingRuleValues.Auto }))),
        Paragraph("Normal", "Normal", null, [], [], isDefault: true),
        Paragraph("BodyText", "Body Text", "Normal", [new WidowControl()], []),
        Paragraph("Title", "Title", "Normal", [new KeepNext(), new SpacingBetweenLines { Before = "0", After = "80" }], [new Bold(), new FontSize { Val = "34" }]),
        Paragraph("Heading1", "heading 1", "Normal", Heading(0, "300", "100"), [new Bold(), new FontSize { Val = "26" }], next: "BodyText"),
        Paragraph("Heading2", "heading 2", "Normal", Heading(1, "200", "80"), [new Bold(), new FontSize { Val = "21" }], next: "BodyText"),
        Paragraph("Heading3", "heading 3", "Normal", Heading(2, "140", "60"), [new Bold(), new FontSize { Val = "18" }], next: "BodyText"),
        Paragraph("Caption", "caption", "Normal", [new KeepLines(), new SpacingBetweenLines { Before = "60", After = "60" }], [new FontSize { Val = "17" }]),
        Paragraph("TableText", "Table Text", "Normal", [new SpacingBetweenLines { Before = "0", After = "0", Line = "240", LineRule = LineSpacingRuleValues.Auto }], [new FontSize { Val = "16" }]),
        Paragraph("TableNote", "Table Note", "Normal", [new SpacingBetweenLines { Before = "40", After = "140" }], [new FontSize { Val = "16" }]),
        Paragraph("Figure", "Figure", "Normal", [new KeepNext(), new SpacingBetweenLines { Before = "80", After = "0" }], []),
        Paragraph("AfterPair", "After Pair", "Normal", [new SpacingBetweenLines { Before = "0", After = "0", Line = "60", LineRule = LineSpacingRuleValues.Exact }], [new FontSize { Val = "4" }]),
        Paragraph("ListBullet", "List Bullet", "Normal",
            [new NumberingProperties(new NumberingLevelReference { Val = 0 }, new NumberingId { Val = 1 }), new SpacingBetweenLines { After = "20" }, new Indentation { Left = "340", Hanging = "227" }], []),
        Paragraph("Header", "header", "Normal", [], [new Bold(), new FontSize { Val = "16" }]),
        Paragraph("Footer", "footer", "Normal", [new Tabs(new TabStop { Val = TabStopValues.Right, Position = WordBody.TextWidth })], [new FontSize { Val = "16" }]),
        new Style(
            new StyleName { Val = "Normal Table" },
            new StyleTableProperties(new TableCellMarginDefault(
                new TopMargin { Width = "0", Type = TableWidthUnitValues.Dxa }, new TableCellLeftMargin { Width = 60, Type = TableWidthValues.Dxa },
                new BottomMargin { Width = "0", Type = TableWidthUnitValues.Dxa }, new TableCellRightMargin { Width = 60, Type = TableWidthValues.Dxa })))
        { Type = StyleValues.Table, StyleId = "TableNormal", Default = true },
        new Style(
            new StyleName { Val = "Study Table" }, new BasedOn { Val = "TableNormal" },
            new StyleTableProperties(new TableBorders(
                Edge<TopBorder>(12), Edge<BottomBorder>(12), new InsideHorizontalBorder { Val = BorderValues.Single, Size = 2, Space = 0, Color = "C8C8C8" })),
            new TableStyleProperties(new RunPropertiesBaseStyle(new Bold()), new TableStyleConditionalFormattingTableCellProperties(new TableCellBorders(Edge<BottomBorder>(8))))
            { Type = TableStyleOverrideValues.FirstRow })
        { Type = StyleValues.Table, StyleId = "StudyTable", CustomStyle = true });

    /// <summary>The mark of a list.</summary>
    public static Marks Bullets() => new(
        new AbstractNum(
            new MultiLevelType { Val = MultiLevelValues.SingleLevel },
            new Level(new StartNumberingValue { Val = 1 }, new NumberingFormat { Val = NumberFormatValues.Bullet }, new LevelText { Val = "•" }, new LevelJustification { Val = LevelJustificationValues.Left })
            { LevelIndex = 0 })
        { AbstractNumberId = 0 },
        new NumberingInstance(new AbstractNumId { Val = 0 }) { NumberID = 1 });

    private static OpenXmlElement[] Heading(int level, string before, string after)
        => [new KeepNext(), new KeepLines(), new SpacingBetweenLines { Before = before, After = after }, new OutlineLevel { Val = level }];

    private static TBorder Edge<TBorder>(uint eighths = 6) where TBorder : BorderType, new()
        => new() { Val = BorderValues.Single, Size = eighths, Space = 1, Color = "1A1A1A" };

    private static Style Paragraph(string id, string name, string? basedOn, OpenXmlElement[] paragraph, OpenXmlElement[] run, string? next = null, bool isDefault = false)
    {
        var style = new Style(new StyleName { Val = name }) { Type = StyleValues.Paragraph, StyleId = id };
        if (basedOn is not null)
            style.Append(new BasedOn { Val = basedOn });
        if (next is not null)
            style.Append(new NextParagraphStyle { Val = next });
        style.Append(new PrimaryStyle());
        if (paragraph.Length > 0)
            style.Append(new StyleParagraphProperties(paragraph));
        if (run.Length > 0)
            style.Append(new StyleRunProperties(run));
        if (isDefault)
            style.Default = true;
        return style;
    }
}
