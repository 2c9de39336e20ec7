namespace Holdfast.Thermodynamics;

/// <summary>Whether a row of a thermodynamic table agrees with itself: ΔG° = ΔH° − T·ΔS° after rounding (rules T3 and T4).</summary>
/// <param name="Mismatch">ΔG° − (ΔH° − T·ΔS°), kJ/mol.</param>
public readonly record struct TableIdentity(double Mismatch)
{
    /// <summary>What rounding may leave, kJ/mol; common practice.</summary>
    public const double Rounding = 0.3;

    /// <summary>Beyond this only a slip of units explains it, kJ/mol; common practice.</summary>
    public const double UnitSlip = 100;

    /// <summary>Checks one row.</summary>
    /// <param name="enthalpy">ΔH°, kJ/mol.</param>
    /// <param name="entropy">ΔS°, J/(mol K).</param>
    /// <param name="temperature">T, K.</param>
    /// <param name="freeEnergy">ΔG°, kJ/mol.</param>
    public static TableIdentity Of(double enthalpy, double entropy, double temperature, double freeEnergy)
        => new(freeEnergy - (enthalpy - temperature * entropy / 1000));

    /// <summary>Holds within rounding, otherwise contradicted.</summary>
    public Ruling Consistent => Math.Abs(Mismatch) <= Rounding ? Ruling.Holds : Ruling.Contradicted;

    /// <summary>True when joules were most likely taken for kilojoules somewhere in the row.</summary>
    public bool LooksLikeUnitSlip => Math.Abs(Mismatch) > UnitSlip;
}
