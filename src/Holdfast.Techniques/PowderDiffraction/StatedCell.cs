using System.Collections.Immutable;
using Holdfast.Diffraction;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Whether the lines of a scan lie where a stated cell puts them, or where it would put them under another anode or at twice the angle.</summary>
/// <param name="scan">The scan.</param>
/// <param name="stated">Its radiation as stated.</param>
/// <param name="cell">The cell that was stated for the powder.</param>
internal sealed class StatedCell(PowderScan scan, Radiation stated, UnitCell cell)
{
    // A displaced sample moves lines by about this much, degrees.
    private const double Within = 0.15;

    // Fewer lines could meet the places of another cell by chance.
    private const int FewestLines = 5;
    private const int MostLines = 12;

    // Height from which a line counts as strong, part of the strongest.
    private const double StrongFrom = 0.1;

    // Twice the angle is one other reading, not five: fewer lines tell, where they would hardly meet the places of the cell by chance.
    private const int FewestHalved = 3;
    private const double MostByChance = 0.005;

    // Part of the strong lines that the stated radiation may explain while another is thought of, and that the other must.
    private const double AtMost = 0.4, AtLeast = 0.9;

    private readonly ImmutableArray<FittedLine> highest = [.. ProfileFit.Of(scan, stated).Lines.OrderByDescending(l => l.Height).Take(MostLines)];

    private double[] Strong => [.. highest.Select(l => l.TwoTheta)];

    // What a doublet of the wrong spacing leaves over is no line of its own.
    private double[] Prominent => [.. highest.Where(l => l.Height >= StrongFrom * highest[0].Height).Select(l => l.TwoTheta)];

    /// <summary>True when the strong lines lie where the cell has planes once every angle is doubled, and not as they stand: θ was written for 2θ.</summary>
    public bool SaysHalf
    {
        get
        {
            if (Prominent is not { Length: >= FewestHalved } lines || 2 * lines.Max() >= ScanLayout.LargestAngle || Explained(lines, stated) > AtMost)
                return false;
            double[] doubled = [.. lines.Select(x => 2 * x)];
            var chance = Math.Min(1, 2 * Within * Places(doubled, stated).Length / (doubled.Max() - doubled.Min() + 2));
            return Explained(doubled, stated) >= AtLeast && Math.Pow(chance, doubled.Length) <= MostByChance;
        }
    }

    /// <summary>The radiation under which the strong lines lie where the cell has planes, when under the stated one they do not; null elsewhere.</summary>
    public Radiation? Other
        => Strong is not { Length: >= FewestLines } strong || Explained(strong, stated) > AtMost ? null
            : Radiation.All.Where(r => r.Anode != stated.Anode).Select(r => (Radiation: r, Part: Explained(strong, r))).MaxBy(r => r.Part) is { Part: >= AtLeast } best ? best.Radiation : null;

    private double Explained(double[] lines, Radiation radiation)
    {
        var places = Places(lines, radiation);
        return lines.Count(x => places.Any(p => Math.Abs(p - x) <= Within)) / (double)lines.Length;
    }

    private double[] Places(double[] lines, Radiation radiation)
        => [.. DiffractionStudy.Everywhere(cell, radiation, Math.Max(lines.Min() - 1, 1), lines.Max() + 1).Select(l => Bragg.TwoTheta(l.Spacing, radiation.Ka1)).OfType<double>()];
}
