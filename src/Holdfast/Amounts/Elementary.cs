namespace Holdfast.Amounts;

/// <summary>Elementary functions that the platform lacks, good to a few units in the last place.</summary>
/// <remarks>W. Kahan's compensation for exp(x) − 1 and ln(1 + x), from memory of N. J. Higham, Accuracy and Stability of Numerical Algorithms, 2002, section 1.14.1.</remarks>
internal static class Elementary
{
    /// <summary>e to the power x, less 1.</summary>
    /// <param name="x">Exponent, without unit.</param>
    public static double ExpM1(double x)
    {
        if (Math.Abs(x) < 1e-5)
            return x + x * x / 2 + x * x * x / 6;
        var u = Math.Exp(x);
        if (u == 1)
            return x;
        var less = u - 1;
        if (less == -1)
            return -1;
        return double.IsInfinity(u) || Math.Abs(x) > 1 ? less : less * x / Math.Log(u);
    }

    /// <summary>Natural logarithm of 1 + x.</summary>
    /// <param name="x">Argument above −1, without unit.</param>
    public static double LogP1(double x)
    {
        var u = 1 + x;
        if (u == 1)
            return x;
        return double.IsInfinity(u) ? u : Math.Log(u) * x / (u - 1);
    }
}
