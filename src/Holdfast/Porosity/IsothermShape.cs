using System.Collections.Immutable;
using System.Globalization;

namespace Holdfast.Porosity;

/// <summary>Type of an isotherm and its loop as a suggestion, with the features it rests on. The figure decides; a person may see it otherwise.</summary>
/// <param name="Type">"IV(a)", "II with H3 loop", "not classified".</param>
/// <param name="Loop">"H1", "H3", null where none is named.</param>
/// <param name="Evidence">The features in words, with their numbers.</param>
/// <param name="Findings">What must be said beside it.</param>
/// <remarks>Types and loops of IUPAC 2015 (M. Thommes et al., Pure Appl. Chem. 87 (2015) 1051; from memory). The thresholds are ours, after isotherms judged by eye; they are no standard.</remarks>
public sealed record IsothermShape(string Type, string? Loop, string Evidence, ImmutableArray<Finding> Findings)
{
    /// <summary>Type and loop in words, the loop once: "II with H3 loop", "IV(a), loop H1".</summary>
    public string Words => Loop is { } loop && !Type.Contains(loop, StringComparison.Ordinal) ? $"{Type}, loop {loop}" : Type;

    /// <summary>Below this amount at p/p0 0.95 nothing is classified, mmol/g.</summary>
    public const double SmallestAmount = 0.05;

    /// <summary>Share of the amount at 0.95 from which a gap at p/p0 0.2 is an open loop; no unit.</summary>
    public const double OpenFrom = 0.04;

    /// <summary>Share of the amount at 0.95 from which a gap is a loop; no unit.</summary>
    public const double LoopFrom = 0.03;

    /// <summary>Shares of the amount at 0.95 that are reached at p/p0 0.30 and 0.02 by a type I; no unit.</summary>
    public const double FilledAt30 = 0.85, FilledAt02 = 0.62, PartlyFilledAt02 = 0.25;

    /// <summary>True when it has a loop of mesopores.</summary>
    public bool IsMesoporous => Type.Contains("IV", StringComparison.Ordinal);

    /// <summary>Looks at an isotherm.</summary>
    /// <param name="branches">Its branches.</param>
    /// <param name="bet">Its BET analysis.</param>
    public static IsothermShape Of(SorptionBranches branches, BetArea bet)
    {
        ArgumentNullException.ThrowIfNull(branches);
        ArgumentNullException.ThrowIfNull(bet);
        var up = branches.Adsorption;
        if (SorptionBranches.At(up, 0.95) is not { } n95 || n95 < SmallestAmount || branches.FallsAbove is not null)
            return new("not classifiable", null, "the adsorption branch falls, does not reach p/p0 0.95, or holds less than 0.05 mmol/g there", []);
        var f02 = up[0].X <= 0.02 ? SorptionBranches.At(up, 0.02) / n95 : null;
        var f30 = SorptionBranches.At(up, 0.30) / n95 ?? 0;
        var top = (SorptionBranches.At(up, 0.99) ?? up[^1].Amount) / (SorptionBranches.At(up, 0.90) ?? n95);
        var gaps = branches.Desorption.IsEmpty ? [] : Enumerable.Range(43, 54).Select(i => i / 100.0).Select(x => (SorptionBranches.At(branches.Desorption, x) - SorptionBranches.At(up, x)) / n95).OfType<double>().ToArray();
        var gap = gaps.Length == 0 ? 0 : gaps.Max();
        var low = (SorptionBranches.At(branches.Desorption, 0.2) - SorptionBranches.At(up, 0.2)) / n95 ?? 0;
        var evidence = string.Create(CultureInfo.InvariantCulture,
            $"{(f02 is { } f ? $"{100 * f:0} % of the amount at 0.95 is reached at 0.02, " : "")}{100 * f30:0} % at 0.30; from 0.90 to the top it grows {top:0.00} times; the branches differ by at most {100 * gap:0.#} %{(branches.Desorption.IsEmpty ? " (no desorption branch)" : "")}");
        if (low > OpenFrom)
            return new("not classifiable: the loop does not close", null, evidence, [PorosityFindings.OpenLoop(low)]);
        var loop = gap >= LoopFrom;
        var plateau = top < PoreVolume.NoPlateauFrom;
        var c = (bet.Chosen ?? bet.Closest)?.C ?? 0;
        if (f30 >= FilledAt30)
            return new(f02 >= FilledAt02 ? "I" : "I-like with a step below p/p0 0.3", null, evidence, []);
        if (f02 >= PartlyFilledAt02)
            return new(loop ? "I + IV" : "I + II", loop ? "H4" : null, evidence, []);
        if (loop)
            return plateau ? new("IV(a)", Steepness(branches), evidence, []) : new("II with H3 loop", "H3", evidence, []);
        return c >= BetArea.WeakKnee ? new("II", null, evidence, [])
            : c < BetArea.NoKnee ? new("III", null, evidence, [])
            : new("not classified: between II and III", null, evidence, []);
    }

    // H1: both branches steep and parallel; H2: one of them clearly steeper than the other.
    private static string Steepness(SorptionBranches branches)
    {
        double up = Steepest(branches.Adsorption), down = Steepest(branches.Desorption);
        return down > 1.8 * up ? "H2(a)" : up > 1.8 * down ? "H2(b)" : "H1";
    }

    private static double Steepest(ImmutableArray<SorptionPoint> branch)
    {
        var steepest = 0.0;
        for (var x = 0.45; x <= 0.93; x += 0.01)
        {
            if (SorptionBranches.At(branch, x + 0.04) - SorptionBranches.At(branch, x) is { } rise)
                steepest = Math.Max(steepest, rise);
        }

        return steepest;
    }
}
