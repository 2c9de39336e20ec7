using System.Text.Json;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Composition;

/// <summary>reference/composition/elements.json and heating-and-digests.json: computed independently with Python 3.11 from the CIAAW 2024 abridged weights.</summary>
public class AnalysisNumbersTests
{
    private static readonly JsonElement Elements = Read("elements.json");
    private static readonly JsonElement Others = Read("heating-and-digests.json");

    [Fact]
    public void Percentages_TheReferenceTables_AgreeBothWays()
    {
        foreach (var row in Elements.GetProperty("weight_to_atomic").EnumerateArray())
            Same(Pairs(row.GetProperty("atomic_percent")), Percentages.ToAtomic(Pairs(row.GetProperty("weight_percent"))));
        foreach (var row in Elements.GetProperty("atomic_to_weight").EnumerateArray())
            Same(Pairs(row.GetProperty("weight_percent")), Percentages.ToMass(Pairs(row.GetProperty("atomic_percent"))));
    }

    // The trap of a normalised total: apatite without its hydrogen, and without hydrogen and oxygen, still adds up to 100.
    [Fact]
    public void Normalising_WithoutHydrogenAndOxygen_LeavesTheRatioAndMovesThePercent()
    {
        var trap = Elements.GetProperty("normalisation_trap");
        var ratio = ElementRatio.Read("Ca/P").Value!;
        foreach (var name in new[] { "true_weight_percent", "normalised_without_H", "normalised_without_H_and_O" })
        {
            var masses = Pairs(trap.GetProperty(name));
            Agree.Digits(6, 10.0 / 6, ratio.Of(Percentages.ToAtomic(masses))!.Value.Value, name);
            Assert.Contains(XrayCautions.Of([.. masses.Select(m => new KeyValuePair<Element, double>(m.Key, m.Value.Value))]), f => f.Sentence.StartsWith("Normalised", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Ratio_OfSixSpots_AgreesInMeanAndInterval()
    {
        var expected = Elements.GetProperty("dopant_loading");
        var share = ElementRatio.Share(Element.Find("Tb")!, Element.Find("Ca")!);
        double[] ratios = [.. expected.GetProperty("atomic_percent_Ca_Tb").EnumerateArray().Select(r => share.Of(
            [new(Element.Find("Ca")!, r[0].GetDouble()), new(Element.Find("Tb")!, r[1].GetDouble())])!.Value.Value)];
        foreach (var (each, found) in expected.GetProperty("ratio_each").EnumerateArray().Zip(ratios))
            Agree.Digits(6, each.GetDouble(), found);
        var mean = Summary.Of(ratios).MeanEstimate().Value!;
        Agree.Digits(6, expected.GetProperty("mean").GetDouble(), mean.Value);
        Agree.Digits(5, expected.GetProperty("standard_error").GetDouble(), mean.StandardError);
        Agree.Digits(5, expected.GetProperty("ci95_half").GetDouble(), mean.Interval().Half);
        Agree.Digits(5, expected.GetProperty("deviation_from_nominal_z").GetDouble(), mean.T(expected.GetProperty("nominal").GetDouble()));
    }

    [Theory]
    [InlineData("Co/(Co+Zn)", "Co/(Co+Zn)", true)]
    [InlineData(" Ca / P ", "Ca/P", false)]
    [InlineData("(Ca+Tb)/P", "(Ca+Tb)/P", false)]
    [InlineData("Ca:P", "Ca/P", false)]
    public void Ratio_AsWritten_IsRead(string text, string understood, bool share)
    {
        var ratio = ElementRatio.Read(text).Value!;
        Assert.Equal(understood, ratio.ToString());
        Assert.Equal(share, ratio.IsShare);
    }

    [Theory, InlineData("Co"), InlineData("Co/"), InlineData("Xx/Zn"), InlineData("Co/(Co+Zn"), InlineData("Co/Zn/O")]
    public void Ratio_OfNonsense_IsRefused(string text) => Assert.Equal("HF-499", Assert.Single(ElementRatio.Read(text).Findings).Code);

    [Fact]
    public void Ratio_WithoutOneOfItsElements_IsNone()
        => Assert.Null(ElementRatio.Read("Co/(Co+Zn)").Value!.Of([new(Element.Find("Co")!, 1.0)]));

    // Atomic percent of ZrO2 with 9.2 % of its zirconium replaced by cerium, rounded to two digits, under each other's headings and right.
    [Fact]
    public void PercentColumns_WithExchangedHeadings_AreToldFromRightOnes()
    {
        (Element, double, double)[] right = [(E("O"), 24.83, 66.40), (E("Ce"), 10.15, 3.10), (E("Zr"), 65.02, 30.50)];
        Assert.Equal(PercentLabels.AsLabelled, PercentColumns.Of(right).Labels);
        Assert.Equal(PercentLabels.Exchanged, PercentColumns.Of([.. right.Select(r => (r.Item1, r.Item3, r.Item2))]).Labels);
        Assert.Equal(PercentLabels.Neither, PercentColumns.Of([.. right.Select((r, i) => (r.Item1, r.Item2, right[(i + 1) % 3].Item3))]).Labels);
        Assert.Equal(PercentLabels.Either, PercentColumns.Of([(E("Co"), 50.08, 50.0), (E("Ni"), 49.92, 50.0)]).Labels);

        // An unnormalised mass column beside a normalised atomic one is right all the same.
        Assert.Equal(PercentLabels.AsLabelled, PercentColumns.Of([.. right.Select(r => (r.Item1, r.Item2 * 0.93, r.Item3))]).Labels);
    }

    // On both sides of the agreement of 0.25 at%: in Co and Zn of near weights, a stated 50 against what the masses give.
    [Theory, InlineData(0.24, true), InlineData(0.26, false)]
    public void PercentColumns_AtTheEdgeOfAgreement_DecideThere(double off, bool agrees)
    {
        var masses = Percentages.ToMass([new(E("O"), 50 + off), new(E("Zn"), 50 - off)]);
        var labels = PercentColumns.Of([(E("O"), masses[0].Value.Value, 50), (E("Zn"), masses[1].Value.Value, 50)]).Labels;
        Assert.Equal(agrees ? PercentLabels.AsLabelled : PercentLabels.Neither, labels);
    }

    [Fact]
    public void XrayCautions_OfATable_NameItsTraps()
    {
        string[] said = [.. XrayCautions.Of([new(E("P"), 20), new(E("Zr"), 40), new(E("Eu"), 0.4), new(E("O"), 36)]).Select(f => f.Sentence)];
        Assert.DoesNotContain(said, s => s.StartsWith("Normalised", StringComparison.Ordinal));
        Assert.Contains(said, s => s.StartsWith("Eu below 1 wt%", StringComparison.Ordinal));
        Assert.Contains(said, s => s.StartsWith("P K and Zr L", StringComparison.Ordinal));
        Assert.Contains(said, s => s.StartsWith("O: light", StringComparison.Ordinal));
        Assert.DoesNotContain(XrayCautions.Of([new(E("Ca"), 60), new(E("P"), 39.9)]), f => f.Sentence.Contains("below", StringComparison.Ordinal));
    }

    [Fact]
    public void FoundAgainstCalculated_OnBothSidesOfItsTolerance_Decides()
    {
        var glucose = Formula.Parse("C6H12O6");
        Assert.True(FoundAgainstCalculated.ByCombustion([new(E("C"), 40.002 + 0.39)], glucose)[0].Agrees);
        Assert.False(FoundAgainstCalculated.ByCombustion([new(E("C"), 40.002 + 0.41)], glucose)[0].Agrees);
        var found = Measured.From(40.6, new Source("r", "reading", 0.29));
        Assert.False(FoundAgainstCalculated.ByUncertainty([new(E("C"), found)], glucose)[0].Agrees);
        Assert.True(FoundAgainstCalculated.ByUncertainty([new(E("C"), Measured.From(40.5, new Source("r", "reading", 0.29)))], glucose)[0].Agrees);
    }

    [Fact]
    public void Digest_TheReferenceReadings_GiveTheirLoading()
    {
        foreach (var row in Others.GetProperty("icp").EnumerateArray())
        {
            Agree.Digits(8, row.GetProperty("loading_mg_per_g").GetDouble(), Digest.Loading<Number>(
                row.GetProperty("reading_mg_per_L").GetDouble(), row.GetProperty("blank_mg_per_L").GetDouble(), row.GetProperty("volume_mL").GetDouble(),
                row.GetProperty("dilution").GetDouble(), row.GetProperty("mass_mg").GetDouble()).Value);
        }

        var first = Others.GetProperty("icp")[0];
        var u = Others.GetProperty("icp_uncertainty").GetProperty("u");
        var loading = Digest.Loading(
            Input("reading", "reading_mg_per_L"), Input("blank", "blank_mg_per_L"), Input("volume", "volume_mL"), Input("dilution", "dilution"), Input("mass", "mass_mg"));
        Agree.Digits(6, Others.GetProperty("icp_uncertainty").GetProperty("u_loading").GetDouble(), loading.U);
        Agree.Digits(9, loading.Value / 58.933, Digest.Moles(E("Co"), loading).Value);

        Measured Input(string name, string column) => Measured.From(first.GetProperty(column).GetDouble(), new Source(name, name, u.GetProperty(name).GetDouble()));
    }

    [Fact]
    public void MassLoss_TheReferenceLosses_GiveTheirWatersAndLinkers()
    {
        foreach (var row in Others.GetProperty("tga_hydrate").EnumerateArray())
            Agree.Digits(6, row.GetProperty("n_water").GetDouble(), MassLoss.Waters(row.GetProperty("loss_percent").GetDouble(), Formula.Parse("CuSO4")).Value);
        var ideal = Others.GetProperty("tga_linker");
        Formula framework = Formula.Parse("Zr6O6(C8H4O4)6"), residue = Formula.Parse("Zr6O12");
        Agree.Digits(8, ideal.GetProperty("ideal_plateau_percent").GetDouble(), 100 * framework.MolarMass / residue.MolarMass);
        foreach (var row in ideal.GetProperty("cases").EnumerateArray())
            Agree.Digits(6, row.GetProperty("linkers_per_Zr6").GetDouble(), MassLoss.Linkers(row.GetProperty("plateau_percent").GetDouble(), framework, residue, 6).Value);
    }

    [Fact]
    public void Hydrates_OfALoss_AreThoseWithinTwiceItsUncertainty()
    {
        Assert.Equal([5.0], MassLoss.Hydrates(Measured.From(5.02, new Source("w", "loss", 0.05))));
        Assert.Equal([4.5, 5.0, 5.5], MassLoss.Hydrates(Measured.From(5.02, new Source("w", "loss", 0.3))));
        Assert.Empty(MassLoss.Hydrates(Measured.From(5.25, new Source("w", "loss", 0.05))));
        Assert.Equal([0.0], MassLoss.Hydrates(Measured.From(0.02, new Source("w", "loss", 0.1))));
    }

    private static Element E(string symbol) => Element.Find(symbol)!;

    private static List<KeyValuePair<Element, Measured>> Pairs(JsonElement percentages)
        => [.. percentages.EnumerateObject().Select(p => new KeyValuePair<Element, Measured>(E(p.Name), p.Value.GetDouble()))];

    private static void Same(IReadOnlyList<KeyValuePair<Element, Measured>> expected, IReadOnlyList<KeyValuePair<Element, Measured>> found)
    {
        foreach (var (e, f) in expected.Zip(found))
            Agree.Digits(6, e.Value.Value, f.Value.Value, e.Key.Symbol);
    }

    private static JsonElement Read(string file) => JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "composition", file))).RootElement;
}
