using System.Collections.Immutable;
using Holdfast.Diffraction;
using Holdfast.Studies;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>What one pattern gives, or a list of lines whose pattern is elsewhere.</summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="Radiation">Its radiation.</param>
/// <param name="Lines">Its lines, by angle.</param>
internal sealed record PatternFound(Measurement Measurement, Radiation Radiation, ImmutableArray<FittedLine> Lines)
{
    // The first and the last line of a list lie inside what was looked at, degrees.
    private const double ListMargin = 0.5;

    /// <summary>The readings over 2θ and what was fitted to them; null for a list of lines.</summary>
    public (PowderScan Scan, ProfileFit Fit)? Fitted { get; init; }

    /// <summary>Phases that were held against it, the one with most of the area first.</summary>
    public ImmutableArray<PhaseFound> Phases { get; init; } = [];

    /// <summary>Cubic cells that explain all lines by themselves; only sought where no phase is known.</summary>
    public ImmutableArray<CubicIndexing> Cubic { get; init; } = [];

    /// <summary>Refined lattice: of the first phase, else of the only cubic cell that fits; null where lines cannot tell.</summary>
    public Lattice? Lattice { get; init; }

    /// <summary>The only axis that its lines tell of; null where they tell of the whole lattice, or of nothing.</summary>
    public OrdersOfAxis? Axis { get; init; }

    /// <summary>Crystallite size; null without a usable line.</summary>
    public SizeFound? Size { get; init; }

    /// <summary>Lines of no phase with z ≥ 5, no ghosts; empty where no phase is known.</summary>
    public ImmutableArray<FittedLine> Strangers { get; init; } = [];

    /// <summary>What it says of itself.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Name of the powder.</summary>
    public string Sample => Measurement.Sample;

    /// <summary>True for a standard that gives the width of the instrument.</summary>
    public bool IsStandard => Measurement.Setting(ScanNames.Use)?.Written == ScanNames.Standard;

    /// <summary>Radius of the goniometer, mm; null when not stated.</summary>
    public double? Radius => Measurement.Setting(ScanNames.Radius)?.Value;

    /// <summary>The first phase, or null.</summary>
    public PhaseFound? Main => Phases.FirstOrDefault();

    /// <summary>Lines that are no ghost of the tube and no artefact.</summary>
    public IEnumerable<FittedLine> TrueLines => Lines.Where(l => l.IsSettled && (l.Flags & (LineDoubts.MaybeKBeta | LineDoubts.MaybeTungsten)) == LineDoubts.None);

    /// <summary>Angles between which lines were looked for, degrees of 2θ; of a list, from its first line to its last.</summary>
    public (double From, double To) Range
        => Fitted is { Scan: var scan } ? (Math.Max(scan.TwoTheta[0], 1), scan.TwoTheta[^1]) : (Lines[0].TwoTheta - ListMargin, Lines[^1].TwoTheta + ListMargin);

    /// <summary>Its lines against those of a phase.</summary>
    /// <param name="reference">Lines of the phase.</param>
    /// <param name="cell">Its cell, or null.</param>
    /// <param name="radiation">Another radiation to try; null for its own.</param>
    public LineMatch Against(IReadOnlyList<ReferenceLine> reference, UnitCell? cell, Radiation? radiation = null)
        => Fitted is var (scan, fit) ? LineMatch.Of(fit, scan, reference, cell, radiation ?? Radiation) : LineMatch.Of(Lines, Range, reference, cell, radiation ?? Radiation);
}
