using Holdfast.Amounts;

namespace Holdfast.Competition;

/// <summary>Exchange constant between two ions from equivalent fractions on the solid and activities in solution.</summary>
/// <remarks>G. L. Gaines and H. C. Thomas 1953 (from memory): K = E_A^zB · a_B^zA / (E_B^zA · a_A^zB).</remarks>
public static class GainesThomas
{
    /// <summary>K of A replacing B; its unit cancels only for equal charges, so state the activities' standard state.</summary>
    /// <param name="firstFraction">Equivalent fraction of A on the solid, 0 to 1; no unit.</param>
    /// <param name="firstActivity">Activity of A in solution; no unit.</param>
    /// <param name="firstCharge">Charge number of A, above 0.</param>
    /// <param name="secondFraction">Equivalent fraction of B on the solid, 0 to 1; no unit.</param>
    /// <param name="secondActivity">Activity of B in solution; no unit.</param>
    /// <param name="secondCharge">Charge number of B, above 0.</param>
    public static T Constant<T>(T firstFraction, T firstActivity, int firstCharge, T secondFraction, T secondActivity, int secondCharge) where T : struct, IReal<T>
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(firstCharge);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(secondCharge);
        return T.Pow(firstFraction, secondCharge) * T.Pow(secondActivity, firstCharge) / (T.Pow(secondFraction, firstCharge) * T.Pow(firstActivity, secondCharge));
    }
}
