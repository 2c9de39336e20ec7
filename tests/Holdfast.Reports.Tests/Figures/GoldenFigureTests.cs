using System.Text.RegularExpressions;
using Holdfast.Reports.Figures;
using Holdfast.Testing;

namespace Holdfast.Reports.Tests.Figures;

/// <summary>
/// Pictures as they were when somebody last looked at them; snapshots of our own output, not expected values from outside. A wanted change is taken
/// over by copying the file named in the failure.
/// </summary>
public class GoldenFigureTests
{
    [Theory]
    [InlineData("calibration", 85)]
    [InlineData("isotherm", 85)]
    [InlineData("dose", 174)]
    [InlineData("cycles", 85)]
    [InlineData("log-log", 85)]
    public void Svg_OfASpecimen_IsTheOneLookedAt(string name, double width)
    {
        var made = SvgFigure.File(Specimens.All[name](), new FigureFormat(width)).Replace("><", ">\n<", StringComparison.Ordinal);
        made = Regex.Replace(made, "base64,[^)]+", "base64,…");
        var golden = Repository.Path($"tests/Holdfast.Reports.Tests/Figures/Golden/{name}.svg");
        if (File.Exists(golden) && File.ReadAllText(golden) == made)
            return;

        var beside = Path.Combine(AppContext.BaseDirectory, $"{name}.svg");
        File.WriteAllText(beside, made);
        Assert.Fail($"{golden} differs from {beside}.");
    }
}
