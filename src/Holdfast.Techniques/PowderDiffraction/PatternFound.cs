using System.Collections.Immutable;
using Holdfast.Diffraction;
using Holdfast.Studies;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>What one pattern gives.</summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="Scan">It over 2θ.</param>
/// <param name="Radiation">Its radiation.</param>
/// <param name="Fit">Its lines.</param>
internal sealed record PatternFound(Measurement Measurement, PowderScan Scan, Radiation Radiation, ProfileFit Fit)
{
    /// <summary>Phases that were held against it, the one with most of the area first.</summary>
    public ImmutableArray<PhaseFound> Phases { get; init; } = [];

    /// <summary>Cubic cells that explain all lines by themselves; only sought where no phase is known.</summary>
    public ImmutableArray<CubicIndexing> Cubic { get; init; } = [];

    /// <summary>Refined lattice: of the first phase, else of the only cubic cell that fits; null where lines cannot tell.</summary>
    public Lattice? Lattice { get; init; }

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
    public IEnumerable<FittedLine> TrueLines => Fit.Lines.Where(l => l.IsSettled && (l.Flags & (LineDoubts.MaybeKBeta | LineDoubts.MaybeTungsten)) == LineDoubts.None);
}
