using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Tests.Markup;

/// <summary>What is raised, lowered and slanted in sentences; forms of the IUPAC Green Book, 3rd ed., 1.3 and 1.6.</summary>
public class NotationTests
{
    [Theory]
    [InlineData("The area is 73.48 m2/g.", "The area is 73.48 m<sup>2</sup>/g.")]
    [InlineData("m2/g", "m<sup>2</sup>/g")]
    [InlineData("0.2 cm3/g and 0.162 nm2", "0.2 cm<sup>3</sup>/g and 0.162 nm<sup>2</sup>")]
    [InlineData("The band at 1640 cm-1 and 631 cm−1", "The band at 1640 cm<sup>-1</sup> and 631 cm<sup>−1</sup>")]
    [InlineData("index of Ni(OH)2 is −2.8", "index of Ni(OH)<sub>2</sub> is −2.8")]
    [InlineData("in 0.01 mol/L NaNO3, as NiCO3", "in 0.01 mol/L NaNO<sub>3</sub>, as NiCO<sub>3</sub>")]
    [InlineData("Ca10(PO4)6(OH)2 and LaB6", "Ca<sub>10</sub>(PO<sub>4</sub>)<sub>6</sub>(OH)<sub>2</sub> and LaB<sub>6</sub>")]
    [InlineData("Ni2+, Na+ and Cl−", "Ni<sup>2+</sup>, Na<sup>+</sup> and Cl<sup>−</sup>")]
    [InlineData("at C0 = 59.71 mg/L", "at <i>C</i><sub>0</sub> = 59.71 mg/L")]
    [InlineData("q and Ce share", "<i>q</i> and <i>C</i><sub>e</sub> share")]
    [InlineData("p/p0 0.5, since kq lies low", "p/<i>p</i><sub>0</sub> 0.5, since <i>k</i><sub>q</sub> lies low")]
    [InlineData("n = 24, p < 0.001", "<i>n</i> = 24, <i>p</i> &lt; 0.001")]
    public void Sentence_WithNotation_IsSet(string plain, string set) => Assert.Equal(set, string.Concat(Notation.Of(plain).Select(n => n.ToHtml())));

    // Codes of samples, series and runs, addresses and plain words stay as they are.
    [Theory]
    [InlineData("V-12, PH6-C2, KIN-05, CHK1, S1, PH7 and EHA-2")]
    [InlineData("q:V-12 in M2 of batch B1")]
    [InlineData("(Ca+Eu)/P by no means; 25 mL in 3 min, 2 g/L")]
    [InlineData("a hash c8bcdba6270c27db")]
    public void Sentence_WithoutNotation_StaysWhole(string plain) => Assert.Equal(plain, Assert.IsType<TextNode>(Assert.Single(Notation.Of(plain))).Value);

    [Fact]
    public void Documents_OfTheDemo_SetEverySentenceAndLoseNoCharacter()
    {
        var chapter = StudyChapter.Of(DemoStudy.Dossier);
        string[] plain = ["m2/g", "Ni(OH)2", "NaNO3", "C0", "Ce"];
        var texts = chapter.Sections.SelectMany(s => s.Content).SelectMany(Texts).ToArray();
        Assert.All(plain, p => Assert.DoesNotContain(texts, t => t.Split(' ', ',', ';', '(', '\u00A0').Contains(p, StringComparer.Ordinal)));
        var reason = DemoStudy.Dossier.Verdicts.First(v => v.Claim.Stated && v.Reason.Contains("Ni(OH)2", StringComparison.Ordinal)).Reason;
        Assert.Contains(chapter.Sections.SelectMany(s => s.Content), n => n.Words.Contains(reason, StringComparison.Ordinal));
    }

    private static IEnumerable<string> Texts(Node node) => node switch
    {
        TextNode text => [text.Value],
        Element { Name: not ("svg" or "math" or "details" or "cite") } element => element.Content.SelectMany(Texts),
        _ => [],
    };
}
