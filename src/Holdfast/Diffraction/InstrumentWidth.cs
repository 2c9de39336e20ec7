namespace Holdfast.Diffraction;

/// <summary>The width that the instrument gives a perfect powder: b² = U·tan²θ + V·tan θ + W, from the lines of a standard.</summary>
/// <param name="U">Square degrees.</param>
/// <param name="V">Square degrees.</param>
/// <param name="W">Square degrees.</param>
/// <param name="From">Lowest 2θ of the standard's lines, degrees.</param>
/// <param name="To">Highest, degrees.</param>
/// <remarks>G. Caglioti, A. Paoletti, F. P. Ricci, Nucl. Instrum. 3 (1958) 223 (from memory).</remarks>
public sealed record InstrumentWidth(double U, double V, double W, double From, double To)
{
    /// <summary>Fewest lines of a standard that tell the curve.</summary>
    public const int FewestLines = 4;

    /// <summary>The curve through the widths of a standard's lines, weighted by their uncertainty; null with fewer than four usable lines.</summary>
    /// <param name="standard">Fitted lines of the standard.</param>
    public static InstrumentWidth? Of(IReadOnlyList<FittedLine> standard)
    {
        FittedLine[] lines = [.. standard.Where(l => l.IsSettled && (l.Flags & (LineDoubts.WidthUncertain | LineDoubts.Entangled)) == LineDoubts.None)];
        if (lines.Length < FewestLines)
            return null;
        var rows = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(lines.Length, 3);
        var squares = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(lines.Length);
        for (var i = 0; i < lines.Length; i++)
        {
            var t = Math.Tan(Bragg.Theta(lines[i].TwoTheta));
            var weight = 1 / (2 * lines[i].Width * Math.Max(lines[i].WidthU, 1e-3 * lines[i].Width));
            rows.SetRow(i, [weight * t * t, weight * t, weight]);
            squares[i] = weight * lines[i].Width * lines[i].Width;
        }

        var p = rows.QR().Solve(squares);
        var fitted = new InstrumentWidth(p[0], p[1], p[2], lines.Min(l => l.TwoTheta), lines.Max(l => l.TwoTheta));
        return lines.All(l => fitted.At(l.TwoTheta) is not null) ? fitted : null;
    }

    /// <summary>Width at an angle, degrees; null where the curve gives none.</summary>
    /// <param name="twoTheta">2θ, degrees.</param>
    public double? At(double twoTheta)
    {
        var t = Math.Tan(Bragg.Theta(twoTheta));
        return U * t * t + V * t + W is > 0 and var square ? Math.Sqrt(square) : null;
    }
}
