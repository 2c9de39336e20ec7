namespace Holdfast.Amounts;

/// <summary>
/// One physical act that makes a number uncertain: this weighing, that flask, this run's calibration line. It is made once
/// and shared by every number that rests on it; sharing is what makes two results correlated.
/// </summary>
/// <param name="Id">Stable identity, taken from the stored reading or apparatus (never a counter), so that it survives saving.</param>
/// <param name="Name">What it is, in words a chemist uses: "balance B-1, weighing of V-12".</param>
/// <param name="U">Standard uncertainty of the input, in the input's own unit.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom; positive infinity when the uncertainty is taken as known.</param>
/// <param name="Evaluation">Type A or type B.</param>
/// <param name="Shape">Distribution for Monte Carlo.</param>
/// <param name="Group">Sources that come from one fit share a group, which counts once in the effective degrees of freedom.</param>
/// <param name="Unit">Unit of <paramref name="U"/>, for the budget.</param>
/// <param name="Trail">Where it is recorded (for example "R-0142 row 17"), or null.</param>
public sealed record Source(
    string Id,
    string Name,
    double U,
    double DegreesOfFreedom = double.PositiveInfinity,
    Evaluation Evaluation = Evaluation.OtherKnowledge,
    Shape Shape = Shape.Normal,
    string? Group = null,
    string? Unit = null,
    string? Trail = null)
{
    /// <summary>The group, or the source itself when it stands alone.</summary>
    public string GroupOrSelf => Group ?? Id;
}

/// <summary>How an uncertainty was found (JCGM 100, 4.2 and 4.3): from repeated observation or from other knowledge.</summary>
public enum Evaluation
{
    /// <summary>Type B: certificate, tolerance, resolution, handbook.</summary>
    OtherKnowledge,

    /// <summary>Type A: from the scatter of repeated observations.</summary>
    Repetition,
}

/// <summary>The shape an input is drawn from when the uncertainty is propagated by Monte Carlo (JCGM 101, 6.4).</summary>
public enum Shape
{
    /// <summary>Normal; scaled t when the degrees of freedom are finite.</summary>
    Normal,

    /// <summary>Rectangular: half-width = u·√3.</summary>
    Rectangular,

    /// <summary>Triangular: half-width = u·√6.</summary>
    Triangular,

    /// <summary>Arcsine, for a cycling input: half-width = u·√2.</summary>
    Arcsine,
}
