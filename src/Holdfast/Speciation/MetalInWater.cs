using static Holdfast.Speciation.CarbonateConstants;

namespace Holdfast.Speciation;

/// <summary>One metal of a given total in water of a given ionic strength, with or without carbon dioxide over it; no solid is allowed.</summary>
public sealed class MetalInWater
{
    private readonly int[] metals;
    private readonly int[] protons;
    private readonly int[] carbonates;
    private readonly double[] lgConstants;
    private readonly double[] uncertainties;
    private readonly double[] lnFactors;

    /// <summary>A metal in water.</summary>
    /// <param name="ion">The ion.</param>
    /// <param name="total">Total metal, mol/L, above 0.</param>
    /// <param name="ionicStrength">Ionic strength, mol/L, 0 to <see cref="Davies.Highest"/>.</param>
    /// <param name="lgCarbonDioxide">lg of the pressure of carbon dioxide that the water stands with, atm; null for none.</param>
    public MetalInWater(MetalIon ion, double total, double ionicStrength = 0, double? lgCarbonDioxide = null)
    {
        ArgumentNullException.ThrowIfNull(ion);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(total);
        ArgumentOutOfRangeException.ThrowIfNegative(ionicStrength);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(ionicStrength, Davies.Highest);
        Ion = ion;
        Total = total;
        IonicStrength = ionicStrength;
        LgCarbonDioxide = lgCarbonDioxide;
        (int P, int Q, int N, double Lg, double U, string Name)[] all =
        [
            (1, 0, 0, 0, 0, ion.Symbol),
            .. ion.Hydrolysis.Select(h => (h.Metals, h.Hydroxides, 0, h.LgBeta, h.U, h.Formula(ion.Symbol))),
            .. lgCarbonDioxide is null ? [] : ion.CarbonateComplexes.Select(c => (1, 0, c.Carbonates, c.LgBeta, c.U, c.Formula(ion.Symbol))),
        ];
        metals = [.. all.Select(a => a.P)];
        protons = [.. all.Select(a => a.Q)];
        carbonates = [.. all.Select(a => a.N)];
        uncertainties = [.. all.Select(a => a.U)];
        lgConstants = [.. all.Select(a => a.Lg - Davies.LgGamma(a.P * ion.Charge - a.Q - 2 * a.N, ionicStrength))];
        Species = [.. all.Select(a => new DissolvedSpecies(a.Name, a.P, a.P * ion.Charge - a.Q - 2 * a.N))];
        lnFactors = new double[metals.Length];
    }

    /// <summary>The ion.</summary>
    public MetalIon Ion { get; }

    /// <summary>Total metal, mol/L.</summary>
    public double Total { get; }

    /// <summary>Ionic strength, mol/L.</summary>
    public double IonicStrength { get; }

    /// <summary>lg of the pressure of carbon dioxide, atm; null for none.</summary>
    public double? LgCarbonDioxide { get; }

    /// <summary>The species, the free ion first.</summary>
    public IReadOnlyList<DissolvedSpecies> Species { get; }

    /// <summary>lg activity of carbonate at a pH; null without carbon dioxide.</summary>
    /// <param name="ph">pH.</param>
    public double? LgCarbonateAt(double ph) => LgCarbonDioxide is { } p ? LgCarbonate(p, ph) : null;

    /// <summary>lg activity of the free ion at a pH.</summary>
    /// <param name="ph">pH.</param>
    public double LgFree(double ph) => Solve(ph, out _) / Math.Log(10);

    /// <summary>The spread over all species at a pH.</summary>
    /// <param name="ph">pH.</param>
    public MetalDistribution At(double ph)
    {
        var x = Solve(ph, out var steps);
        var shares = new double[metals.Length];
        for (var i = 0; i < shares.Length; i++)
            shares[i] = metals[i] * Math.Exp(lnFactors[i] + metals[i] * x) / Total;
        return new(ph, x / Math.Log(10), shares, steps);
    }

    /// <summary>Dissolved metal in water that stands with a solid at a pH, mol/L; at most the total.</summary>
    /// <param name="solid">A solid of this ion.</param>
    /// <param name="ph">pH.</param>
    public double Dissolved(Solid solid, double ph)
    {
        ArgumentNullException.ThrowIfNull(solid);
        if (solid.Index(LgFree(ph), ph, LgCarbonateAt(ph)) <= 0)
            return Total;
        var x = Math.Log(10) * (solid.LgKs - solid.Protons * ph - solid.Carbonates * (LgCarbonateAt(ph) ?? 0)) / solid.Metals;
        double sum = 0;
        for (var i = 0; i < metals.Length; i++)
            sum += metals[i] * Math.Exp(lnFactors[i] + metals[i] * x);
        return Math.Min(sum, Total);
    }

    /// <summary>Saturation index of a solid at a pH, with its standard uncertainty from all constants and its slope over pH.</summary>
    /// <param name="solid">A solid of this ion.</param>
    /// <param name="ph">pH.</param>
    public SaturationIndex Index(Solid solid, double ph)
    {
        ArgumentNullException.ThrowIfNull(solid);
        var x = Solve(ph, out _);
        double squares = 0, released = 0, variance = 0;
        for (var i = 0; i < metals.Length; i++)
        {
            var held = metals[i] * Math.Exp(lnFactors[i] + metals[i] * x);
            squares += metals[i] * held;
            released += held * (protons[i] + 2 * carbonates[i]);
            variance += held * held * uncertainties[i] * uncertainties[i];
        }

        // d lg a/d lg beta = −p c/Σ p² c and d lg a/d pH = −Σ p (q + 2 n) c/Σ p² c, from the total held constant.
        var slope = solid.Protons + (LgCarbonDioxide is null ? 0 : 2 * solid.Carbonates) - solid.Metals * released / squares;
        var u = Math.Sqrt(solid.U * solid.U + solid.Metals * solid.Metals * variance / (squares * squares));
        return new(solid.Index(x / Math.Log(10), ph, LgCarbonateAt(ph)), u, slope);
    }

    private double Solve(double ph, out int steps)
    {
        var carbonate = LgCarbonateAt(ph) ?? 0;
        for (var i = 0; i < lnFactors.Length; i++)
            lnFactors[i] = Math.Log(10) * (lgConstants[i] + protons[i] * ph + carbonates[i] * carbonate);
        var lnTotal = Math.Log(Total);
        return OneComponent.Solve(metals, lnFactors, lnTotal, lnTotal, out steps);
    }
}

/// <summary>A dissolved species.</summary>
/// <param name="Formula">Its formula without the charge: "Cu2(OH)2".</param>
/// <param name="Metals">Metal ions in it.</param>
/// <param name="Charge">Its charge.</param>
public sealed record DissolvedSpecies(string Formula, int Metals, int Charge);

/// <summary>A saturation index with what is known of it.</summary>
/// <param name="Value">lg of the ion product over the constant; negative infinity for a carbonate without carbonate.</param>
/// <param name="U">Standard uncertainty from the constants.</param>
/// <param name="Slope">Change with one pH.</param>
public readonly record struct SaturationIndex(double Value, double U, double Slope);
