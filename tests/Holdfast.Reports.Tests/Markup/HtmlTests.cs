using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Tests.Markup;

public class HtmlTests
{
    [Fact]
    public void Text_WithMarkupInside_IsEncoded()
        => Assert.Equal("<p title=\"&quot;a&quot; &amp; b\">&lt;script&gt;alert(1)&lt;/script&gt; &amp; \"c\"</p>",
            Html.Element("p", [("title", "\"a\" & b")], "<script>alert(1)</script> & \"c\"").ToHtml());

    [Theory]
    [InlineData("script")]
    [InlineData("STYLE")]
    [InlineData("iframe")]
    [InlineData("foreignObject")]
    [InlineData("p onclick")]
    [InlineData("")]
    public void Element_ThatRunsOrLoads_IsRefused(string name) => Assert.Throws<ArgumentException>(() => Html.Element(name));

    [Theory]
    [InlineData("onclick", "x()")]
    [InlineData("style", "color:red")]
    [InlineData("href", "javascript:x()")]
    [InlineData("href", " JavaScript:x()")]
    [InlineData("src", "data:text/html,x")]
    [InlineData("a b", "x")]
    public void Attribute_ThatRunsOrStyles_IsRefused(string name, string value)
        => Assert.Throws<ArgumentException>(() => Html.Element("a", [(name, value)]));

    [Theory]
    [InlineData("/quantities/q:V-12")]
    [InlineData("#note-1")]
    [InlineData("https://doi.org/10.1000/1")]
    [InlineData("trail?of=q:V-12")]
    public void Address_ToAPage_IsKept(string address)
        => Assert.Equal($"<a href=\"{address}\"></a>", Html.Element("a", [("href", address)]).ToHtml());

    [Fact]
    public void Void_Elements_StandAloneInHtmlAndCloseThemselvesInXml()
    {
        Assert.Equal("<br>", Html.Element("br").ToHtml());
        Assert.Equal("<br/>", Html.Element("br").ToXml());
        Assert.Equal("<td></td>", Html.Element("td").ToHtml());
    }

    [Fact]
    public void Attribute_WithoutValue_IsLeftOut() => Assert.Equal("<p></p>", Html.Element("p", [("id", null)]).ToHtml());

    [Fact]
    public void Characters_ThatXmlForbids_AreReplaced() => Assert.Equal("<p>a\uFFFDb</p>", Html.Element("p", "a\u0001b").ToXml());

    [Fact]
    public void Stylesheet_ThatCouldEndItself_IsRefused() => Assert.Throws<ArgumentException>(() => new Stylesheet("a{}</style><script>"));

    [Fact]
    public void Page_StartsWithTheDocumentType()
        => Assert.Equal("<!DOCTYPE html>\n<html lang=\"en\"><body></body></html>\n", Html.Page(Html.Element("html", [("lang", "en")], Html.Element("body"))));
}
