using System.Text;
using Holdfast.Reports.HandOver;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests;

/// <summary>Measurements written in the open format of their trade and read again by the readers that other people's files of these formats pass.</summary>
public class OpenFormatTests
{
    [Theory]
    [InlineData("n2-HA-0-1.csv", ".aif", "p/p0", "amount")]
    [InlineData("ir-EHA-2.csv", ".jdx", "wavenumber", "ordinate")]
    [InlineData("xrd-HA-0.txt", ".cif", "2theta", "counts")]
    public void File_OfADemoMeasurement_ReadsBackWithEveryPoint(string name, string end, string x, string y)
    {
        var study = Taken(name, File.ReadAllBytes(Repository.Path("samples", "demo-powder", name)));
        var measured = Assert.Single(study.Measurements);
        var format = Assert.Single(Catalogue.Of<IMeasurementFile>(), f => f.Technique == measured.Technique);
        var file = format.Of(measured, study)!;
        Assert.EndsWith(end, file.Name, StringComparison.Ordinal);
        Assert.Contains("INVENTED", Encoding.UTF8.GetString(file.Bytes.Span), StringComparison.Ordinal);
        var again = Assert.Single(Taken(file.Name, file.Bytes.ToArray()).Measurements);
        Assert.Equal(measured.Technique, again.Technique);
        // An isotherm of relative pressures comes back as pressures over p0 = 1.
        Same(measured.Column(x)!, again.Column(x) ?? again.Column("pressure")!);
        Same(measured.Column(y)!, again.Column(y)!);
        if (end == ".cif")
            Assert.Equal(measured.Setting("wavelength")!.Value!.Value, again.Setting("wavelength")!.Value!.Value, 1e-9);
        if (end == ".aif")
            Assert.Equal(measured.Setting("mass")!.Value, again.Setting("mass")!.Value);
    }

    [Fact]
    public void Spectrum_OfUnevenSteps_KeepsEveryDigitInPairs()
    {
        double?[] x = [4000, 3998, 3995.5], y = [0.1, 1.0 / 3, 0.25];
        var file = new Holdfast.Techniques.Infrared.SpectrumJcamp().Of(new("M-0001", "infrared", "own\npowder", [new("scale", "absorbance", null, "", 0)],
            [new("wavenumber", "", "cm-1") { Numbers = [.. x] }, new("ordinate", "", "") { Numbers = [.. y] }], new(null, "own.csv", null, 1, null)), new Study { Title = "t" })!;
        var text = Encoding.UTF8.GetString(file.Bytes.Span);
        Assert.Contains("##TITLE=own powder\n", text, StringComparison.Ordinal);
        Assert.Contains("##XYPOINTS=(XY..XY)\n4000, 0.1\n3998, 0.3333333333333333\n3995.5, 0.25\n##END=\n", text, StringComparison.Ordinal);
    }

    private static void Same(MeasuredColumn one, MeasuredColumn other)
    {
        Assert.Equal(one.Numbers!.Value.Length, other.Numbers!.Value.Length);
        Assert.All(one.Numbers.Value.Zip(other.Numbers.Value), p => Assert.Equal(p.First!.Value, p.Second!.Value, 1e-9 * Math.Max(1, Math.Abs(p.First.Value))));
    }

    private static Study Taken(string name, byte[] bytes)
    {
        var folder = Directory.CreateTempSubdirectory("holdfast-format-").FullName;
        try
        {
            using var study = StudyFolder.Begin(Path.Combine(folder, "s"), "Ada", TimeProvider.System, new StudyBegun("formats", "Ni", Invented: true));
            var answers = Answers.None;
            for (var turn = 0; turn < 6; turn++)
            {
                var taken = Take.Keep(study, Take.Understand(study.Study, [new IncomingFile(name, bytes)], answers, TestContext.Current.CancellationToken), new TakeOptions { Answers = answers }, "Ada");
                if (taken.Entry is not null)
                    return study.Study;
                Assert.NotEmpty(taken.Open);
                answers = taken.Open.Aggregate(answers, (a, q) => a.With(q.Id, q.Choices[0]));
            }

            throw new InvalidOperationException("Questions without end.");
        }
        finally
        {
            foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
                File.SetAttributes(file, FileAttributes.Normal);
            Directory.Delete(folder, recursive: true);
        }
    }
}
