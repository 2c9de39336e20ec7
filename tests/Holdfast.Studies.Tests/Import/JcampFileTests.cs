using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Holdfast.Studies.Import;
using Holdfast.Testing;

namespace Holdfast.Studies.Tests.Import;

/// <summary>
/// Public JCAMP-DX files (test data of the University of the West Indies, public domain by their owners) and made ones, against
/// reference/characterisation/jcamp-expected.json (Python 3.11). The files themselves are not in the repository.
/// </summary>
public class JcampFileTests
{
    private static readonly JsonElement Expected = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "characterisation", "jcamp-expected.json"))).RootElement;

    /// <summary>Every file whose points are known.</summary>
    public static TheoryData<string> Files => [.. Known().Select(f => f.Name)];

    [Theory, MemberData(nameof(Files))]
    public void Read_AKnownFile_GivesItsPoints(string file)
    {
        var blocks = Known().Single(f => f.Name == file).Value.EnumerateArray().Where(b => b.TryGetProperty("points", out _)).ToArray();
        var grids = Of(file);
        Assert.Equal(blocks.Length, grids.Length);
        foreach (var (block, grid) in blocks.Zip(grids))
        {
            var points = Points(grid);
            Assert.Equal(block.GetProperty("points").GetInt32(), points.Length);
            foreach (var sample in block.GetProperty("samples").EnumerateArray())
            {
                var (x, y) = points[sample[0].GetInt32()];
                Near(sample[1].GetDouble(), x, file);
                Near(sample[2].GetDouble(), y!.Value, file);
            }

            double[] ordinates = [.. points.Select(p => p.Y!.Value)];
            var scale = ordinates.Sum(Math.Abs);
            Assert.True(Math.Abs(ordinates.Sum() - block.GetProperty("sum_y").GetDouble()) <= 1e-9 * scale, file);
            Near(block.GetProperty("min_y").GetDouble(), ordinates.Min(), file);
            Near(block.GetProperty("max_y").GetDouble(), ordinates.Max(), file);
            Assert.DoesNotContain(grid.Findings, f => f.Weight == Weight.Caution);
        }
    }

    // One spectrum in five forms, twice: the same integers.
    [Fact]
    public void Read_OneSpectrumInSeveralForms_IsTheSame()
    {
        foreach (var group in Expected.GetProperty("equal_groups").EnumerateArray())
        {
            var first = Points(Assert.Single(Of(group[0].GetString()!)));
            foreach (var other in group.EnumerateArray().Skip(1))
                Assert.Equal(first.Select(p => p.Y), Points(Assert.Single(Of(other.GetString()!))).Select(p => p.Y));
        }
    }

    // What each faulty file must say, in the words of the same table.
    [Theory]
    [InlineData("bad-y-check.jdx", "Line 24 begins with")]
    [InlineData("bad-npoints.jdx", "NPOINTS says 1900, 1801 ordinates")]
    [InlineData("bad-lastx.jdx", "contradicts LASTX 450")]
    [InlineData("missing-ordinates.jdx", "2 ordinates are missing")]
    [InlineData("bad-truncated.jdx", "without END")]
    public void Read_AFaultyFile_IsReadAndSaysSo(string file, string words)
    {
        Assert.True(Expected.GetProperty("must_warn_or_refuse").TryGetProperty(file, out _));
        Assert.Contains(Assert.Single(Of(file)).Findings, f => f.Weight == Weight.Caution && f.Sentence.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_AFileWithALineMissing_IsRefused()
        => Assert.Contains("lines are missing", Assert.Throws<StudyException>(() => Of("bad-missing-line.jdx")).Message, StringComparison.Ordinal);

    // y = sin(x) in degrees and exp(−x²), within 4e-6: known functions (same table).
    [Theory, InlineData("sine-ascending.jdx"), InlineData("sine-descending.jdx"), InlineData("exp-minus-x-squared.jdx")]
    public void Read_AKnownFunction_IsThatFunction(string file)
        => Assert.All(Points(Assert.Single(Of(file))), p => Assert.Equal(
            file.StartsWith("sine", StringComparison.Ordinal) ? Math.Sin(p.X * Math.PI / 180) : Math.Exp(-p.X * p.X), p.Y!.Value, 4e-6));

    private static IEnumerable<JsonProperty> Known()
        => Expected.GetProperty("public_files").EnumerateObject().Concat(Expected.GetProperty("synthetic").GetProperty("files").EnumerateObject());

    private static ImmutableArray<Grid> Of(string file)
        => new JcampFile().Read(File.ReadAllBytes(Repository.Verbatim("characterisation", "ftir", "jcamp", file)), file, Answers.None, TestContext.Current.CancellationToken);

    private static (double X, double? Y)[] Points(Grid grid)
        => [.. grid.Rows.Where(r => r.Cells[0].Kind == CellKind.Number).Select(r => (double.Parse(r.Cells[0].Text, CultureInfo.InvariantCulture),
            r.At(1).IsBlank ? (double?)null : double.Parse(r.At(1).Text, CultureInfo.InvariantCulture)))];

    private static void Near(double expected, double found, string file)
        => Assert.True(Math.Abs(expected - found) <= 1e-9 * Math.Max(1, Math.Abs(expected)), string.Create(CultureInfo.InvariantCulture, $"{file}: expected {expected}, got {found}"));
}
