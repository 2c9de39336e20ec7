namespace Holdfast.Fitting.Solving;

/// <summary>The damping μ of a Levenberg–Marquardt step, steered by the gain ratio ρ = actual drop / predicted drop.</summary>
/// <remarks>H. B. Nielsen, Damping parameter in Marquardt's method, report IMM-REP-1999-05, Technical University of Denmark, 1999 (from memory).</remarks>
internal struct Damping
{
    /// <summary>A step that gains less than this part of what was predicted is not taken.</summary>
    public const double LeastGain = 1e-4;

    /// <summary>Damping for a start that may be far off.</summary>
    public const double Cold = 1e-3;

    /// <summary>Damping for a start next to the answer, where the plain Gauss–Newton step is right.</summary>
    public const double Warm = 1e-9;

    /// <summary>
    /// The part of a column's largest squared length that its scale remembers after each step. A scale that never shrank would keep a fit
    /// slow for good after a start where one slope is enormous.
    /// </summary>
    public const double Remembered = 0.25;

    private double growth = 2;

    /// <summary>The damping at the start of a fit.</summary>
    /// <param name="mu">First damping, without unit.</param>
    public Damping(double mu) => Mu = mu;

    /// <summary>The present damping, without unit (the system is scaled).</summary>
    public double Mu { get; private set; }

    /// <summary>Less damping after a step that was taken.</summary>
    /// <param name="gain">The gain ratio ρ.</param>
    public void Accept(double gain)
    {
        var cube = 2 * Math.Min(gain, 2) - 1;
        Mu = Math.Max(Mu * Math.Max(1.0 / 3, 1 - cube * cube * cube), 1e-20);
        growth = 2;
    }

    /// <summary>More damping after a step that was refused.</summary>
    public void Reject()
    {
        Mu *= growth;
        growth *= 2;
    }
}
