using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Planning;
using Holdfast.Speciation;

namespace Holdfast.Claims.Plans;

/// <summary>What a vessel is expected to do by the Langmuir curve and the half-time supposed, and how well it will be known.</summary>
/// <param name="Basis">What is supposed.</param>
internal sealed record Supposed(PlanBasis Basis)
{
    private const double UncertaintyOfPh = 0.1;

    /// <summary>Uncertainty of a concentration left, mg/L, whatever its size. The usual answers are those of the worked example of the design tables (reference/design/langmuir-batch-c0.csv).</summary>
    public double ConstantU => Basis[PlanSetting.ReadingFloor];

    /// <summary>Its part in proportion to what is read; no unit.</summary>
    public double ShareOfReading => Basis[PlanSetting.ReadingShare] / 100;

    /// <summary>Its part in proportion to the start concentration; no unit.</summary>
    public double ShareOfStart => Basis[PlanSetting.Filling] / 100;

    public static Model Langmuir { get; } = Isotherm.Named("Langmuir")!;

    public static Model Freundlich { get; } = Isotherm.Named("Freundlich")!;

    public static Model Temkin { get; } = Isotherm.Named("Temkin")!;

    public static Model FirstOrder { get; } = Model.Of<PseudoFirstOrder>();

    public static Model SecondOrder { get; } = Model.Of<PseudoSecondOrder>();

    public double Capacity => Basis[PlanSetting.Capacity];

    public double Affinity { get; init; } = Basis[PlanSetting.Affinity];

    public double Rate => Math.Log(2) / Basis[PlanSetting.HalfTime];

    /// <summary>Uncertainty of one vessel's concentration after contact, mg/L; the scatter between vessels stands on top of the three parts of reading and filling.</summary>
    public double U(double start, double left)
    {
        var scatter = Basis.Scatter * (start - left);
        return Math.Sqrt(ConstantU * ConstantU + ShareOfReading * left * (ShareOfReading * left) + ShareOfStart * start * (ShareOfStart * start) + scatter * scatter);
    }

    /// <summary>Concentration left at equilibrium, mg/L.</summary>
    public double Left(double start, double dose) => dose > 0 && start > 0 ? BatchEquilibrium.Langmuir<Amounts.Number>(start, dose, Capacity, Affinity).Value : start;

    /// <summary>Concentration left after a time, mg/L: first order towards equilibrium.</summary>
    public double Left(double start, double dose, double time) => start - (start - Left(start, dose)) * (1 - Math.Exp(-Rate * time));

    /// <summary>Concentration left at a level, mg/L, in a world in which a claim is true and the rest is as supposed.</summary>
    /// <remarks>
    /// Removal levels off at the dose said to suffice; it falls away by the margin on either side of the dose, or pH, said to be best, and by as much again at each further level; the affinity follows
    /// the enthalpy supposed.
    /// </remarks>
    /// <param name="question">The claim.</param>
    /// <param name="margin">Half-width of its margin, in the margin's unit.</param>
    /// <param name="series">The series.</param>
    /// <param name="level">One of its levels.</param>
    public double Left(PlanQuestion question, double margin, SeriesDraft series, PlannedLevel level)
    {
        double Beside(double best) => Left(level.Start, Basis[PlanSetting.Dose], level.Time)
            + level.Start * margin / 100 * series.Levels.Count(l => l.X > Math.Min(best, level.X) && l.X <= Math.Max(best, level.X));
        return (question.Rule, series.Kind) switch
        {
            ("smallest-sufficient-dose", SeriesKind.Dose) => Left(level.Start, Math.Min(level.Dose, Basis[PlanSetting.Dose]), level.Time),
            ("optimum-dose", SeriesKind.Dose) => Beside(Basis[PlanSetting.Dose]),
            ("optimum-ph", SeriesKind.Ph) => Beside(Basis[PlanSetting.Ph]),
            ("spontaneous-and-endothermic", _) => (this with { Affinity = AffinityAt(level.Temperature) }).Left(level.Start, level.Dose, level.Time),
            _ => Left(level.Start, level.Dose, level.Time),
        };
    }

    /// <summary>Whether a solid of the metal could form in a vessel at a level, which then shows no sorption; false where the metal is not known.</summary>
    public bool MayFormSolid(string? metal, PlannedLevel level)
        => metal is not null && MetalIon.Of(metal) is { Count: > 0 } ions
            && SolidOnsets.Of(ions, level.Start, Background.Usual, level.Temperature).At(level.Ph + Basis[PlanSetting.PhRise], UncertaintyOfPh, AirContact.Closed) != Ruling.Holds;

    /// <summary>Affinity at a temperature, L/mg: it follows the enthalpy supposed.</summary>
    public double AffinityAt(double kelvin)
        => Affinity * Math.Exp(-1000 * Basis[PlanSetting.Enthalpy] / Constants.MolarGas * (1 / kelvin - 1 / Basis[PlanSetting.Temperature]));

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
