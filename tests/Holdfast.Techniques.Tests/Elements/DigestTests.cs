using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Elements;

namespace Holdfast.Techniques.Tests.Elements;

/// <summary>Dissolved portions of an invented powder: 100 mg in 0.1 L, read after 1 in 10, 2.05 mg/L Sr with 0.05 in the blank is 20 mg/g; 5.02 mg/L Ce with 0.02 is 50 mg/g.</summary>
public class DigestTests
{
    [Theory]
    [InlineData("Aufschluss von CS-1, in der verdünnten Lösung gemessen\nNr.;Einwaage (mg);Volumen (mL);Verdünnung;Sr (mg/L);Ce (mg/L)\nBlindwert;;100,0;10;0,05;0,02\n1;100,0;100,0;10;2,05;5,02\n2;50,0;100,0;10;1,05;2,52\n")]
    [InlineData("Digestion of CS-1: as read in the diluted liquid\ndigest,powder [g],final volume [L],diluted,Sr [µg/L],Ce [mg/L]\nD1,0.1000,0.1000,1:10,2050 ± 20,5.02 ± 0.1\nD2,0.0500,0.1000,1:10,1050 ± 20,2.52 ± 0.1\nblank,,0.1000,1:10,50 ± 5,0.02 ± 0.01\n")]
    [InlineData("Mineralizacja proszku CS-1; roztwory rozcieńczone 1:10\nPróba\tNaważka (mg)\tObjętość (mL)\tSr (mg/L)\tCe (mg/L)\nślepa próba\t0\t100\t0,05\t0,02\nPróba 1\t100,0\t100\t2,05\t5,02\nPróba 2\t50,0\t100\t1,05\t2,52\n")]
    [InlineData("Digestión ácida de CS-1 leído en la solución diluida\nensayo;masa (mg);volumen (mL);dilución;Sr (mg/L);Ce (mg/L)\nblanco;;50;10;0,10;0,04\nensayo 1;100,0;100;10;2,05;5,02\nensayo 2;50,0;100;10;1,05;2,52\n")]
    [InlineData("Ontsluiting van CS-1, aflezing in de VERDUNDE oplossing\n\nnr;inweeg;volume;verdunning;aflezing Sr;aflezing Ce\n;mg;mL;x;mg/L;mg/L\nblanco;;100,0;10;0,05;0,02\nA;100,0;100,0;10;2,05;5,02\nB;50,0;100,0;10;1,05;2,52\n")]
    [InlineData("Uppslutning av CS-1, avläst i den utspädda lösningen\nnr;vikt (mg);volym (mL);spädning;Sr (mg/L);Ce (mg/L)\nblank;;100,0;10;0,05;0,02\n1;100,0;100,0;10;2,05;5,02\n2;50,0;100,0;10;1,05;2,52\n")]
    [InlineData("Digests of CS-1;;made up to 100.0 mL, then 1.00 mL diluted to 10.0 mL (blank too)\nreadings of the diluted solutions, mg/L\n\ndigest;powder (mg);Sr;Ce\nblank;;0.05;0.02\nD1;100.0;2.05;5.02\nD2;50.0;1.05;2.52\n")]
    public void Portions_AsPeopleWriteThem_GiveTheirLoadings(string text)
    {
        var understood = Reading.Of("CS-1.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        var powder = Powder(understood);
        Assert.True(powder.IsDissolved);
        Assert.Equal(2, powder.Places.Length);
        Assert.All(powder.Places, p => Assert.Equal([20, 50], p.AsWritten.Select(a => Math.Round(a.Value, 6))));
        Assert.Equal(20 / 87.62 / (20 / 87.62 + 50 / 140.116), powder.Mean(ElementRatio.Read("Sr/(Sr+Ce)").Value!)?.Value ?? powder.Ratios(ElementRatio.Read("Sr/(Sr+Ce)").Value!)[0].Value.Value, 1e-5);
    }

    [Theory]
    [InlineData("Digests of CS-1, values already corrected for dilution\nNo,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\nblank,,100,10,0.5,0.2\n1,100,100,10,20.5,50.2\n", "dilution", "applied")]
    [InlineData("Digests of CS-1 read after dilution\nNo,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\nblank,,100,,0.5,0.2\n1,100,100,10,2.05,5.02\n", "blank-dilution", "undiluted")]
    [InlineData("Digests of CS-1 read after dilution\nNo,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\nblank,,100,10,0.05,0.02\n1,100,100,10,2.05,5.02\n2,100,100,?,2.05,5.02\n", "factor", "leave-out")]
    [InlineData("Digests read after dilution\nsample,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\nblank,,100,10,0.05,0.02\nCS-1,100,100,10,2.05,5.02\nCS-7,100,100,10,9.05,1.02\n", "places", "powders")]
    [InlineData("Digests of CS-1\nNo,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\nblank,,100,10,0.05,0.02\n1,100,100,10,2.05,5.02\n", "dilution", "multiply")]
    [InlineData("Digests of CS-1\nNo,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\nblank,-,100,1:10,0.5,0.2\n1,100,100,1:10,20.5,50.2\n", "dilution", "applied")]
    public void Portions_ThatCanBeReadInTwoWays_AreAskedAbout(string text, string question, string answer)
    {
        var understood = Reading.Of("a.csv", text);
        Assert.Equal(question, Assert.Single(understood.Questions, q => q.IsOpen).Id);
        Assert.Empty(understood.Measurements());
        var answered = Reading.Of("a.csv", text, Answers.None.With(question, answer));
        Assert.False(answered.NeedsDecision, answered.Said());
        Assert.Equal([20, 50], Study(answered).Powders[0].Places[0].AsWritten.Select(a => Math.Round(a.Value, 6)));
        Assert.Equal(answer == "powders" ? 2 : 1, Study(answered).Powders.Length);
    }

    // The same columns of batch vessels: a word of taking up, a start concentration or a time, or no word of dissolving at all.
    [Theory]
    [InlineData("vessel,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\nblank,,100,10,0.05,0.02\nV1,100,100,10,2.05,5.02\nV2,50,100,10,1.05,2.52\n")]
    [InlineData("Adsorption on digested sludge\nNo,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\nblank,,100,10,0.05,0.02\n1,100,100,10,2.05,5.02\n2,50,100,10,1.05,2.52\n")]
    [InlineData("filtered, then digested with nitric acid before ICP; C0 = 20 mg/L\nNo,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\n1,100,100,10,2.05,5.02\n2,50,100,10,1.05,2.52\n")]
    [InlineData("Powder digested sludge ash\nNo,mass (mg),volume (mL),C0 (mg/L),Sr (mg/L),Ce (mg/L)\n1,100,100,10,2.05,5.02\n2,50,100,10,1.05,2.52\n")]
    [InlineData("Powder digested sludge ash\nNo,mass (mg),volume (mL),t (min),Sr (mg/L),Ce (mg/L)\n1,100,100,10,2.05,5.02\n2,50,100,20,1.05,2.52\n")]
    public void Vessels_AreNeverTakenForPortions(string text)
        => Assert.DoesNotContain(Reading.Of("a.csv", text).Measurements(), m => m.Technique == "elements");

    [Fact]
    public void Portions_WithoutABlank_AreTakenWithARemark()
    {
        var understood = Reading.Of("CS-1.csv", "Digests of CS-1 read after dilution\nNo,mass (mg),volume (mL),dilution,Sr (mg/L),Ce (mg/L)\n1,100,100,10,2.00,5.00\n2,100,100,10,2.00,5.00\n");
        Assert.Contains(understood.Findings, f => f.Code == "HF-763");
        Assert.All(Powder(understood).Places, p => Assert.Equal(20, p.AsWritten[0].Value, 1e-9));
    }

    private static ElementStudy Study(Understanding understood)
        => ElementStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, "")));

    private static AnalysedPowder Powder(Understanding understood) => Assert.Single(Study(understood).Powders);
}
