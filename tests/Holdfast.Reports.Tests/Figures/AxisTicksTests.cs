using System.Globalization;
using CsCheck;
using Holdfast.Amounts;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tests.Figures;

public class AxisTicksTests
{
    private static readonly Axis Plain = new("x", null, "x");

    private static readonly Gen<AxisRange> Ranges =
        from low in Gen.Double[-1, 1]
        from span in Gen.Double[0.001, 1]
        from power in Gen.Int[-9, 9]
        select new AxisRange(low * Math.Pow(10, power), (low + span) * Math.Pow(10, power));

    [Fact]
    public void Linear_AnyRange_HasTwoToMostTicksInsideRisingAndEven()
        => Ranges.Select(Gen.Int[5, 12]).Sample((range, most) =>
        {
            var ticks = AxisTicks.Of(Plain, range, most, DecimalMark.Point).Major.Select(t => t.Value).ToArray();
            var slack = 1e-6 * (range.High - range.Low);

            Assert.InRange(ticks.Length, 2, most);
            Assert.All(ticks, t => Assert.InRange(t, range.Low - slack, range.High + slack));
            for (var i = 2; i < ticks.Length; i++)
                Assert.Equal(ticks[1] - ticks[0], ticks[i] - ticks[i - 1], slack);
            Assert.True(ticks[0] < ticks[1]);
        });

    [Fact]
    public void Linear_AnyRange_StepIsOneTwoOrFiveTimesAPowerOfTen()
        => Ranges.Sample(range => Assert.Contains(TickStep.For(range, 8).Digit, new[] { 1, 2, 5 }));

    [Fact]
    public void Linear_AnyRange_LabelsReadBackAsTheirValues()
        => Ranges.Sample(range =>
        {
            foreach (var tick in AxisTicks.Of(Plain, range, 8, DecimalMark.Point).Major)
                Assert.Equal(tick.Value, Read(tick.Label), 1e-9 * Math.Abs(tick.Value));
        });

    [Fact]
    public void Linear_AnyRange_MinorTicksFallBetweenMajorOnes()
        => Ranges.Sample(range =>
        {
            var ticks = AxisTicks.Of(Plain, range, 8, DecimalMark.Point);
            var step = ticks.Major[1].Value - ticks.Major[0].Value;
            Assert.All(ticks.Minor, m => Assert.All(ticks.Major, t => Assert.True(Math.Abs(m - t.Value) > 0.1 * step)));
        });

    [Fact]
    public void Linear_WholeNumbers_NeverSplitsOne()
    {
        var ticks = AxisTicks.Of(Plain with { WholeNumbers = true }, new(0, 3), 9, DecimalMark.Point);

        Assert.Equal(["0", "1", "2", "3"], ticks.Major.Select(t => t.Label.Plain));
        Assert.Empty(ticks.Minor);
    }

    [Theory]
    [InlineData(0, 47, 6, "0 10 20 30 40")]
    [InlineData(-0.3, 0.3, 5, "−0.2 0.0 0.2")]
    [InlineData(0, 12800, 8, "0 2\u202F000 4\u202F000 6\u202F000 8\u202F000 10\u202F000 12\u202F000")]
    [InlineData(0, 6000, 8, "0 1000 2000 3000 4000 5000 6000")]
    [InlineData(0, 0.000031, 5, "0 1\u202F×\u202F10−5 2\u202F×\u202F10−5 3\u202F×\u202F10−5")]
    public void Linear_Labels_AreWrittenInOneFormat(double low, double high, int most, string labels)
        => Assert.Equal(labels, string.Join(' ', AxisTicks.Of(Plain, new(low, high), most, DecimalMark.Point).Major.Select(t => t.Label.Plain)));

    [Fact]
    public void Labels_DecimalComma_ChangesTheSignAlone()
        => Assert.Equal(["0,0", "0,5", "1,0"], AxisTicks.Of(Plain, new(0, 1), 3, DecimalMark.Comma).Major.Select(t => t.Label.Plain));

    [Fact]
    public void Logarithmic_ThreeDecades_LabelsDecadesAndMarksTheEightBetween()
    {
        var ticks = AxisTicks.Of(Plain with { Scale = AxisScale.Logarithmic }, new(0.01, 100), 6, DecimalMark.Point);

        Assert.Equal(["0.01", "0.1", "1", "10", "100"], ticks.Major.Select(t => t.Label.Plain));
        Assert.Equal(4 * 8, ticks.Minor.Count);
    }

    [Fact]
    public void Logarithmic_LessThanADecade_StillHasTwoLabels()
        => Gen.Double[-3, 3].Select(Gen.Double[0.02, 12]).Sample((start, decades) =>
        {
            var range = new AxisRange(Math.Pow(10, start), Math.Pow(10, start + decades));
            var ticks = AxisTicks.Of(Plain with { Scale = AxisScale.Logarithmic }, range, 7, DecimalMark.Point);
            Assert.True(ticks.Major.Count >= 2, $"{ticks.Major.Count} ticks");
            Assert.True(ticks.Major.Count <= 9, $"{ticks.Major.Count} ticks");
        });

    [Fact]
    public void Logarithmic_WideRange_WritesPowersOfTen()
    {
        var ticks = AxisTicks.Of(Plain with { Scale = AxisScale.Logarithmic }, new(1e-9, 1e-3), 7, DecimalMark.Point);

        Assert.All(ticks.Major, t => Assert.Equal(Shift.Super, t.Label.Runs[^1].Shift));
    }

    [Fact]
    public void Reversed_Axis_FallsToTheRight()
    {
        var map = AxisMap.Of(Plain with { Reversed = true }, new(400, 4000), 10, 110);

        Assert.Equal(110, map.Place(400));
        Assert.Equal(10, map.Place(4000));
    }

    // Reads a label back: thin spaces out, U+2212 as a minus sign, a raised power applied.
    private static double Read(RichText label)
    {
        var line = string.Concat(label.Runs.Where(r => r.Shift == Shift.None).Select(r => r.Text)).Replace('−', '-').Replace("\u202F", "", StringComparison.Ordinal);
        var power = string.Concat(label.Runs.Where(r => r.Shift == Shift.Super).Select(r => r.Text)).Replace('−', '-');
        if (power.Length == 0)
            return double.Parse(line, CultureInfo.InvariantCulture);
        var mantissa = line == "10" ? "1" : line == "-10" ? "-1" : line[..^3];
        return double.Parse(mantissa + "E" + power, CultureInfo.InvariantCulture);
    }
}
