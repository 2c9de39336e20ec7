using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Planning;

namespace Holdfast.Claims.Plans;

/// <summary>What a vessel is expected to do by the Langmuir curve and the half-time supposed, and how well it will be known.</summary>
/// <param name="Basis">What is supposed.</param>
internal sealed record Supposed(PlanBasis Basis)
{
    // Uncertainty of the concentration left, after the worked example of the design tables (reference/design/langmuir-batch-c0.csv): a constant part in mg/L,
    // a share of what is read, a share of the start concentration. The scatter between vessels comes on top.
    private const double ConstantU = 0.05;
    private const double ShareOfReading = 0.02;
    private const double ShareOfStart = 0.01;

    public static Model Langmuir { get; } = Isotherm.Named("Langmuir")!;

    public static Model Freundlich { get; } = Isotherm.Named("Freundlich")!;

    public static Model FirstOrder { get; } = Model.Of<PseudoFirstOrder>();

    public static Model SecondOrder { get; } = Model.Of<PseudoSecondOrder>();

    public double Capacity => Basis[PlanSetting.Capacity];

    public double Affinity => Basis[PlanSetting.Affinity];

    public double Rate => Math.Log(2) / Basis[PlanSetting.HalfTime];

    /// <summary>Uncertainty of one vessel's concentration after contact, mg/L.</summary>
    public double U(double start, double left)
    {
        var scatter = Basis.Scatter * (start - left);
        return Math.Sqrt(ConstantU * ConstantU + ShareOfReading * left * (ShareOfReading * left) + ShareOfStart * start * (ShareOfStart * start) + scatter * scatter);
    }

    /// <summary>Concentration left at equilibrium, mg/L.</summary>
    public double Left(double start, double dose) => dose > 0 && start > 0 ? BatchEquilibrium.Langmuir<Amounts.Number>(start, dose, Capacity, Affinity).Value : start;

    /// <summary>Concentration left after a time, mg/L: first order towards equilibrium.</summary>
    public double Left(double start, double dose, double time) => start - (start - Left(start, dose)) * (1 - Math.Exp(-Rate * time));

    /// <summary>Start concentration that leaves a given one, mg/L.</summary>
    public double StartFor(double left, double dose) => left + dose * Uptake(left);

    /// <summary>Uptake at a concentration, mg/g.</summary>
    public double Uptake(double left) => Capacity * Coverage(left);

    /// <summary>Share of the capacity in use.</summary>
    public double Coverage(double left) => Affinity * left / (1 + Affinity * left);

    /// <summary>Removal at equilibrium, %.</summary>
    public double Removal(double start, double dose) => 100 * (1 - Left(start, dose) / start);

    /// <summary>Slopes over uncertainty of a vessel set at a start concentration.</summary>
    public Func<double, double[]> Row(double affinity, double dose) => SlopeRow.OfBatch(Langmuir, [Capacity, affinity], dose, U);

    /// <summary>Uncertainty of one vessel's uptake, mg/g, at a concentration after contact.</summary>
    public double UptakeU(double left, double dose) => U(StartFor(left, dose), left) / dose;
}
