namespace Holdfast.Speciation;

/// <summary>A hydroxo complex: p M + q H2O = Mp(OH)q + q H+, 25 °C, zero ionic strength.</summary>
/// <param name="Metals">p, metal ions in it.</param>
/// <param name="Hydroxides">q, protons given off.</param>
/// <param name="LgBeta">lg of the constant.</param>
/// <param name="U">Standard uncertainty of the lg.</param>
/// <param name="Source">Where it is from.</param>
/// <param name="Status">How it is known: seen, or "from memory".</param>
/// <param name="Preferred">True for the set that is used; false for the second opinion.</param>
public sealed record HydrolysisConstant(int Metals, int Hydroxides, double LgBeta, double U, string Source, string Status, bool Preferred)
{
    /// <summary>Formula for a metal: "Cu2(OH)2".</summary>
    /// <param name="metal">Symbol of the metal.</param>
    public string Formula(string metal) => metal + Times(Metals) + (Hydroxides == 1 ? "OH" : $"(OH){Times(Hydroxides)}");

    private static string Times(int n) => n == 1 ? "" : n.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
