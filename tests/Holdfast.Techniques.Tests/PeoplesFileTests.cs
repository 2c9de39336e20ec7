using System.Text.Json;
using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Elements;
using Holdfast.Techniques.Infrared;
using Holdfast.Techniques.Particles;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests;

/// <summary>
/// Invented files as people have them, with what a careful reader does with each (characterisation/files of HOLDFAST_REFERENCE: cases s09 to s14, made with
/// fixed seeds from a stated truth).
/// </summary>
public class PeoplesFileTests
{
    [Theory]
    [InlineData("s09-transmittance-falling", "HAp-KBr.csv", "infrared", 1)]
    [InlineData("s11-edx-fields", "ZC_edx.xlsx", "elements", 1)]
    [InlineData("s13-two-groups-one-column", "lengths.tsv", "particles", 2)]
    public void File_ThatNeedsNoQuestion_IsUnderstood(string folder, string file, string technique, int measurements)
    {
        var understood = Of(folder, file);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(measurements, understood.Measurements().Length);
        Assert.All(understood.Measurements(), m => Assert.Equal(technique, m.Technique));
    }

    [Theory]
    [InlineData("s10-percent-under-absorbance", "BT-2.csv", "Absorbance", "transmittance")]
    [InlineData("s12-columns-swapped", "CZ-10.csv", "Weight %", "swapped")]
    [InlineData("s14-one-length-tenfold", "grains.csv", "57", "318.0")]
    public void File_ThatMayBeWrong_IsAskedAbout(string folder, string file, string where, string what)
    {
        var understood = Of(folder, file);
        Assert.True(understood.NeedsDecision);
        Assert.Empty(understood.Measurements());
        var question = Assert.Single(understood.Questions, q => q.IsOpen);
        Assert.Contains(where, question.Text, StringComparison.Ordinal);
        Assert.Contains(what, question.Text, StringComparison.Ordinal);
        Assert.Equal(question.Choices.Length, question.Consequences.Length);
        var answered = Of(folder, file, Answers.None.With(question.Id, question.Choices[0]));
        Assert.False(answered.NeedsDecision, answered.Said());
        Assert.NotEmpty(answered.Measurements());
    }

    // Every quantity of expected.json that these techniques give, within its tolerance.
    [Theory]
    [InlineData("s09-transmittance-falling", "HAp-KBr.csv")]
    [InlineData("s11-edx-fields", "ZC_edx.xlsx")]
    [InlineData("s13-two-groups-one-column", "lengths.tsv")]
    [InlineData("s14-one-length-tenfold", "grains.csv", "size:58", "31.8")]
    public void File_AsUnderstood_GivesTheTrueQuantities(string folder, string file, string? question = null, string? answer = null)
    {
        var understood = Of(folder, file, question is null ? null : Answers.None.With(question, answer!));
        var evidence = Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, ""));
        var expected = JsonDocument.Parse(File.ReadAllText(Repository.Verbatim("characterisation", "files", folder, "expected.json"))).RootElement.GetProperty("quantities");
        Assert.NotEqual(0, expected.GetArrayLength());
        foreach (var row in expected.EnumerateArray())
        {
            var (what, value) = (row.GetProperty("quantity").GetString()!, row.GetProperty("value").GetDouble());
            double Tolerance(string kind) => row.GetProperty("tolerance").TryGetProperty(kind, out var t) ? t.GetDouble() : 0;
            var found = Found(evidence, row.GetProperty("sample").GetString()!, what, value, row);
            Assert.True(Math.Abs(found - value) <= Math.Max(Tolerance("abs"), Tolerance("rel") * Math.Abs(value)), FormattableString.Invariant($"{what}: expected {value}, got {found}"));
        }
    }

    private static double Found(Evidence evidence, string sample, string what, double near, JsonElement row)
    {
        if (what == "band")
            return InfraredStudy.Of(evidence).For(sample).Single().Bands.MinBy(b => Math.Abs(b.Band.Wavenumber - near))!.Band.Wavenumber;
        if (what.StartsWith("length", StringComparison.Ordinal) || what == "count")
        {
            var list = ParticleStudy.Of(evidence).For(sample)!;
            return what switch
            {
                "count" => list.Particles.Length,
                "length_mean" => list.Statistics.Summary.Mean,
                "length_sd" => list.Statistics.Summary.Sd!.Value,
                _ => list.Statistics.Summary.Median,
            };
        }

        var powder = ElementStudy.Of(evidence).Powders.Single();
        var place = powder.Places.FirstOrDefault(p => p.Name == sample);
        if (what == "atomic_percent")
            return place!.Atoms.Single(a => a.Key.Symbol == row.GetProperty("element").GetString()).Value.Value;
        var ratio = ElementRatio.Read("Co/(Co+Zn)").Value!;
        var mean = powder.Mean(ratio)!;
        return what switch
        {
            "ratio" => ratio.Of(place!.Atoms)!.Value.Value,
            "x" => mean.Value,
            "x_u" => mean.StandardError,
            "x_sd" => mean.StandardError * Math.Sqrt(mean.N),
            _ => throw new InvalidOperationException("Nothing here gives " + what),
        };
    }

    private static Understanding Of(string folder, string file, Answers? answers = null)
        => Reading.Of(file, File.ReadAllBytes(Repository.Verbatim("characterisation", "files", folder, "files", file)), answers);
}
