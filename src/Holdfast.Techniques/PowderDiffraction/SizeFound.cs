using System.Collections.Immutable;
using Holdfast.Diffraction;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Crystallite size of a powder by the breadths of its lines.</summary>
/// <param name="Lines">Each line by Scherrer.</param>
/// <param name="Plain">Size and strain with the instrument's width taken off plainly (Lorentz); null with too few lines.</param>
/// <param name="Squares">The same taken off in squares (Gauss).</param>
/// <param name="HasInstrument">True when the width of the instrument was measured.</param>
internal sealed record SizeFound(ImmutableArray<Scherrer> Lines, WilliamsonHall? Plain, WilliamsonHall? Squares, bool HasInstrument)
{
    // Two standard uncertainties on either side of the bracket.
    private const double Coverage = 2;

    /// <summary>True when only "larger than" can be said.</summary>
    public bool IsLimit => Lines.Any(l => l.Largest is null);

    /// <summary>Number of lines that give a bracket.</summary>
    public int Bracketed => Lines.Count(l => l.Largest is not null);

    /// <summary>True when size and strain are told apart: five lines, both readings of the instrument's width possible.</summary>
    public bool IsSeparated => Plain is { IsImpossible: false } && Squares is { IsImpossible: false };

    /// <summary>Lower and upper end of what the lines allow, nm: the bracket of the two ways to take the instrument off, widened by two standard uncertainties
    /// (breadths and K). The upper end is infinite where only a limit can be said.</summary>
    public (double Low, double High) Range
    {
        get
        {
            if (IsLimit)
                return (Lines.Max(l => l.Smallest * (1 - Coverage * l.RelativeU)), double.PositiveInfinity);
            if (IsSeparated)
            {
                (double Low, double High) Of(WilliamsonHall fit)
                {
                    var share = Math.Sqrt(Math.Pow(fit.SizeU / fit.Size!.Value, 2) * Math.Max(1, fit.ReducedChiSquare) + Math.Pow(Scherrer.RelativeUOfK, 2));
                    return (fit.Size.Value * Math.Max(0, 1 - Coverage * share), fit.Size.Value * (1 + Coverage * share));
                }

                var (a, b) = (Of(Plain!), Of(Squares!));
                return (Math.Min(a.Low, b.Low), Math.Max(a.High, b.High));
            }

            return (Lines.Min(l => l.Smallest * (1 - Coverage * l.RelativeU)), Lines.Max(l => l.Largest!.Value * (1 + Coverage * l.RelativeU)));
        }
    }

    /// <summary>Middle of the bracket, nm; null where only a limit can be said.</summary>
    public double? Middle => IsLimit ? null : IsSeparated ? (Plain!.Size!.Value + Squares!.Size!.Value) / 2 : Lines.Average(l => (l.Smallest + l.Largest!.Value) / 2);
}
