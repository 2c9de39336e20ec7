using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Diffraction;
using Holdfast.Reports.Trails;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Trails of what patterns give: "lattice-a:M-0001" and the other lengths and angles, "displacement:M-0001", "crystallite:M-0001", "line:M-0001@28.443".</summary>
internal sealed class DiffractionNumbers : IDerivedNumbers
{
    /// <summary>Address of a length or angle of the cell.</summary>
    /// <param name="pattern">Id of the pattern.</param>
    /// <param name="symbol">Its symbol.</param>
    public static string Cell(string pattern, string symbol) => $"lattice-{symbol}:{pattern}";

    /// <summary>Address of the crystallite size.</summary>
    /// <param name="pattern">Id of the pattern.</param>
    public static string Size(string pattern) => "crystallite:" + pattern;

    /// <summary>Address of the height of the sample beside the axis.</summary>
    /// <param name="pattern">Id of the pattern.</param>
    public static string Displacement(string pattern) => "displacement:" + pattern;

    /// <summary>Address of the place of a line.</summary>
    /// <param name="pattern">Id of the pattern.</param>
    /// <param name="line">The line.</param>
    public static string Line(string pattern, FittedLine line) => $"line:{pattern}@{line.TwoTheta.ToString("0.000", CultureInfo.InvariantCulture)}";

    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence) => DiffractionStudy.Of(evidence).Patterns.SelectMany(Of);

    /// <summary>A lattice parameter with what makes it uncertain.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="at">Which parameter.</param>
    public static Measured Of(PatternFound pattern, int at)
    {
        var lattice = pattern.Lattice!;
        var (fit, other) = (lattice.Fit.Parameters[at], lattice.Other.Parameters[at]);
        var id = Cell(pattern.Measurement.Id, fit.Symbol);
        // The half-difference is added in full, not in squares: either model may be the right one.
        return Measured.From(fit.Value, new Source(id, "places of the lines, and half the difference between a displaced sample and a zero error "
            + $"({Math.Abs(fit.Value - other.Value).ToString("G2", CultureInfo.InvariantCulture)} {fit.Unit})", lattice.Parameters[at].U, lattice.Fit.DegreesOfFreedom));
    }

    private static IEnumerable<NumberTrail> Of(PatternFound pattern)
    {
        var (id, sample) = (pattern.Measurement.Id, pattern.Sample);
        var from = pattern.Measurement.Origin.ToString();
        var wavelength = new TrailInput("λ", pattern.Radiation.Ka1, "Å", pattern.Measurement.Setting(ScanNames.Wavelength) is { Row: > 0 and var row } ? string.Create(CultureInfo.InvariantCulture, $"{pattern.Measurement.Origin.FileName}, line {row}; table of wavelengths") : "as answered; table of wavelengths");
        foreach (var line in pattern.Fitted is null ? [] : pattern.TrueLines)
        {
            yield return new(Line(id, line), $"place of a line of {sample} ({id})", Measured.From(line.TwoTheta, new Source(Line(id, line), "profile fit, covariance × max(1, χ²ᵣ)", line.TwoThetaU)), "°",
                string.Create(CultureInfo.InvariantCulture, $"pseudo-Voigt profile{(pattern.Radiation.Ka2 is null ? "" : " of Kα1 and Kα2")} on the raw readings, weights 1/variance, χ²ᵣ {line.ReducedChiSquare:0.0}; d = λ/(2 sin θ) = {line.Spacing:0.00000} Å"), [wavelength], [])
            {
                Samples = [id],
            };
        }

        if (pattern.Lattice is { } lattice)
        {
            var fit = new TrailFit(string.Create(CultureInfo.InvariantCulture, $"least squares of 2θ, {lattice.Fit.Residuals.Length} lines, sample displacement refined, scatter {lattice.Fit.Scatter:0.0000}°"), "line", "2θ (°)", []);
            foreach (var (p, i) in lattice.Parameters.Select((p, i) => (p, i)))
                yield return new(Cell(id, p.Symbol), $"{p.Symbol} of {sample} ({id})", Of(pattern, i), p.Unit, "Σ(2θ − 2θ(cell) − D·cos θ)²/(u² + τ²) least; half the difference to a zero error added to u", [wavelength], []) { Samples = [id], Fit = fit };
            if (pattern.Radius is { } radius && lattice.Displacement(radius) is var (value, u))
            {
                yield return new(Displacement(id), $"height of {sample} ({id}) below the axis", Measured.From(value, new Source(Displacement(id), "refined with the cell", u, lattice.Fit.DegreesOfFreedom)), "mm", "s = −D·R/2, D in radians",
                    [new("R", radius, "mm", from)], [])
                {
                    Samples = [id],
                };
            }
        }

        if (pattern.Size is { Middle: { } middle } size)
        {
            var (low, high) = size.Range;
            yield return new(Size(id), $"crystallite size of {sample} ({id})", Measured.From(middle, new Source(Size(id), "instrument taken off plainly or in squares, breadths, K", (high - low) / 4)), "nm",
                size.IsSeparated ? "β·cos θ = Kλ/D + 4e·sin θ through all lines; mean of both ways to take the instrument off" : "D = Kλ/(β·cos θ), mean over lines and both ways to take the instrument off",
                [new("K", Scherrer.UsualK, "", "usual shape factor, 5 %"), wavelength], [])
            {
                Samples = [id],
            };
        }
    }
}
