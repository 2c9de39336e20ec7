using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tests.Figures;

public class FigureFileTests
{
    public static TheoryData<string> Names => [.. Specimens.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Svg_OfEveryFigure_IsWellFormedAndHoldsNothingThatRunsOrStyles(string name)
    {
        var figure = Specimens.All[name]();
        var onScreen = SvgFigure.Tree(figure, FigureFormat.OneColumn, SvgOptions.Screen(id => "/trail/" + id)).ToXml();
        foreach (var text in new[] { SvgFigure.File(figure, FigureFormat.OneColumn), onScreen })
        {
            var svg = XDocument.Parse(text);
            var names = svg.Descendants().Select(e => e.Name.LocalName).ToHashSet(StringComparer.Ordinal);
            string[] known = ["svg", "title", "desc", "metadata", "g", "path", "text", "tspan", "a", "circle"];

            // The only style of a file is the typeface it brings; a page has none.
            if (text == onScreen)
                Assert.Empty(names.Except(known));
            else
                Assert.Equal(["style"], names.Except(known));
            Assert.All(svg.Descendants().Where(e => e.Name.LocalName == "style"), e => Assert.Empty(
                Regex.Replace(e.Value, @"@font-face\{font-family:""Liberation Sans"";font-weight:\d00;font-style:[a-z]+;src:url\(data:font/ttf;base64,[A-Za-z0-9+/=]+\) format\(""truetype""\)\}\n", "")));
            Assert.DoesNotContain(svg.Descendants().Attributes(), a => a.Name.LocalName == "style" || a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
            var ids = svg.Descendants().Attributes("id").Select(a => a.Value).ToArray();
            Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Svg_File_HasItsSizeTitleDescriptionAndTypeface()
    {
        var svg = XDocument.Parse(SvgFigure.File(Specimens.Isotherm(), FigureFormat.OneColumn)).Root!;
        XNamespace ns = "http://www.w3.org/2000/svg";

        Assert.Equal("85mm", svg.Attribute("width")!.Value);
        // 85 mm = 85/25.4 in = 240.94 pt at 72 to the inch.
        Assert.StartsWith("0 0 240.94 ", svg.Attribute("viewBox")!.Value, StringComparison.Ordinal);
        Assert.Equal("Isotherm at 25 °C", svg.Element(ns + "title")!.Value);
        Assert.StartsWith("Loading rises", svg.Element(ns + "desc")!.Value, StringComparison.Ordinal);
        Assert.Equal("isotherm-title isotherm-desc", svg.Attribute("aria-labelledby")!.Value);
        Assert.Equal("Liberation Sans, Arial, Helvetica, sans-serif", svg.Attribute("font-family")!.Value);
        Assert.Contains(svg.Descendants(ns + "tspan"), t => t.Value == "q" && t.Attribute("font-style")?.Value == "italic");
    }

    [Fact]
    public void Svg_OnScreen_LetsEveryMarkBeReachedAndRead()
    {
        var svg = XDocument.Parse(SvgFigure.Tree(Specimens.Isotherm(), FigureFormat.OneColumn, SvgOptions.Screen(id => "/trail/" + id)).ToXml());
        XNamespace ns = "http://www.w3.org/2000/svg";
        var links = svg.Descendants(ns + "a").ToArray();

        Assert.Equal(8, links.Length);
        Assert.Equal(8, links.Select(l => l.Attribute("href")!.Value).Distinct(StringComparer.Ordinal).Count());
        Assert.Contains(links, l => l.Attribute("aria-label")!.Value.Contains("loading at equilibrium, in milligrams per gram:", StringComparison.Ordinal));
        Assert.Contains(links, l => l.Attribute("aria-label")!.Value.Contains("milligrams per litre: below 0.2", StringComparison.Ordinal));
    }

    [Fact]
    public void Files_InAnotherCultureAndOnTwoThreads_AreTheSameBytes()
    {
        var figure = Specimens.LogLog();
        var here = All(figure);
        byte[][]? german = null;
        var thread = new Thread(() =>
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            german = All(Specimens.LogLog());
        });
        thread.Start();
        var beside = All(Specimens.LogLog());
        thread.Join();

        Assert.Equal(here, beside);
        Assert.Equal(here, german!);

        static byte[][] All(Figure f) =>
        [
            Encoding.UTF8.GetBytes(SvgFigure.File(f, FigureFormat.OneColumn)),
            PngFigure.File(f, FigureFormat.OneColumn, 300),
            PdfFigure.File(f, FigureFormat.OneColumn),
        ];
    }

    // W3C PNG, 3rd ed.: IHDR at byte 8, pHYs in dots per metre. 85 mm at 600 dpi = 2008 px; 600/0.0254 = 23622 per metre.
    [Fact]
    public void Png_AtSixHundredDpi_StatesItsSize()
    {
        var png = PngFigure.File(Specimens.Calibration(), FigureFormat.OneColumn);

        Assert.Equal(2008, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
        Assert.Equal("pHYs", Encoding.ASCII.GetString(png, 37, 4));
        Assert.Equal(23622, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(41)));
        Assert.Equal(1, png[49]);

        // CRC of this very chunk (9 bytes, 23622 × 23622, metre), worked out with Python's zlib.crc32.
        Assert.Equal(0x14944341u, BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(50)));
    }

    [Fact]
    public void Pdf_File_IsOnePageOfTheSizeWithItsTypefaceAndNoDate()
    {
        var pdf = Encoding.Latin1.GetString(PdfFigure.File(Specimens.Isotherm(), FigureFormat.FullWidth));

        // 174 mm = 493.228 pt.
        Assert.Matches(@"/MediaBox \[0 0 493\.2[23]\d* ", pdf);
        Assert.Contains("/FontFile2", pdf, StringComparison.Ordinal);
        Assert.Contains("LiberationSans", pdf, StringComparison.Ordinal);
        Assert.Contains("/ToUnicode", pdf, StringComparison.Ordinal);
        Assert.DoesNotContain("/CreationDate", pdf, StringComparison.Ordinal);
    }

    // A whole typeface would bring 200 kB a face, dashes drawn as outlines 600 kB a scan.
    [Theory]
    [MemberData(nameof(Names))]
    public void Pdf_OfEveryFigure_IsSmallEnoughToMail(string name)
        => Assert.InRange(PdfFigure.File(Specimens.All[name](), FigureFormat.FullWidth).Length, 10_000, 120_000);
}
