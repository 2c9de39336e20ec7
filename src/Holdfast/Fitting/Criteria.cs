namespace Holdfast.Fitting;

/// <summary>Information criteria of one fit. They rank curves fitted to the same readings with the same weights and certify none.</summary>
/// <remarks>
/// H. Akaike, IEEE Trans. Autom. Control 19 (1974) 716; C. M. Hurvich and C.-L. Tsai, Biometrika 76 (1989) 297; G. Schwarz, Ann. Statist. 6 (1978)
/// 461 (from memory). With scatter estimated K counts the error variance: K = p + 1, AIC = n ln(S/n) + 2K. With known uncertainties AIC = χ² + 2p,
/// which needs no correction for small n.
/// </remarks>
/// <param name="K">Number of parameters counted.</param>
/// <param name="Aic">Akaike's criterion; constants dropped.</param>
/// <param name="Aicc">The same corrected for few points; null when n ≤ K + 1: not comparable at this n.</param>
/// <param name="Bic">Schwarz's criterion; constants dropped.</param>
public sealed record Criteria(int K, double Aic, double? Aicc, double Bic)
{
    /// <summary>The criteria of a fit, or null when nothing is left over to judge by (n ≤ p, or an exact fit).</summary>
    /// <param name="n">Number of points.</param>
    /// <param name="p">Number of parameters.</param>
    /// <param name="s">Weighted sum of squares; χ² when the uncertainties are known.</param>
    /// <param name="known">True when the weights are 1/u² with known u.</param>
    public static Criteria? Of(int n, int p, double s, bool known)
    {
        if (n <= p || !(s > 0))
            return null;
        var k = known ? p : p + 1;
        var misfit = known ? s : n * Math.Log(s / n);
        var aic = misfit + 2 * k;
        double? aicc = known ? aic : n > k + 1 ? aic + 2.0 * k * (k + 1) / (n - k - 1) : null;
        return new(k, aic, aicc, misfit + k * Math.Log(n));
    }

    /// <summary>The criteria from −2 ln of a full likelihood in which one scatter is a parameter beside the p of the curve; null when n ≤ p.</summary>
    /// <param name="n">Number of points.</param>
    /// <param name="p">Number of parameters of the curve.</param>
    /// <param name="deviance">−2 ln L with its constants dropped, the same for every curve.</param>
    public static Criteria? OfDeviance(int n, int p, double deviance)
    {
        if (n <= p || !double.IsFinite(deviance))
            return null;
        var k = p + 1;
        var aic = deviance + 2 * k;
        return new(k, aic, n > k + 1 ? aic + 2.0 * k * (k + 1) / (n - k - 1) : null, deviance + k * Math.Log(n));
    }

    /// <summary>
    /// The factor by which the sum of squares must fall before a curve with more parameters even ties in AICc; null where AICc is not
    /// defined for the longer curve: then the data cannot speak for it at all.
    /// </summary>
    /// <param name="n">Number of points.</param>
    /// <param name="few">Parameters of the shorter curve.</param>
    /// <param name="many">Parameters of the longer curve.</param>
    public static double? FactorToTie(int n, int few, int many)
    {
        // At S = n the misfit n·ln(S/n) is nil and AICc is the penalty alone.
        var difference = Of(n, many, n, known: false)?.Aicc - Of(n, few, n, known: false)?.Aicc;
        return difference is { } penalty ? Math.Exp(penalty / n) : null;
    }
}
