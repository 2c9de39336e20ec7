using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Plans;

/// <summary>
/// A plan tried out before anything is weighed: studies that follow it are invented from what it supposes, read, calibrated, worked up, fitted and judged as any study is.
/// The share in which a claim holds is the power that the plan really has.
/// </summary>
/// <remarks>
/// Each claim is tried in a world in which it is true (<see cref="Supposed.Left(PlanQuestion, double, SeriesDraft, PlannedLevel)"/>). A vessel's concentration is off by what is supposed of it (<see cref="Supposed.U"/>), and what an author would know of that beforehand is written down. What would be read above the highest standard is diluted further; readings scatter so that the limit of quantification supposed is ten of their standard deviations.
/// </remarks>
public static class PlanTrial
{
    private const string Tried = "tried";

    // A powder that stays: 0.2 % of a constituent that makes 40 % of it dissolves.
    private const double Dissolved = 0.002;
    private const double Constituent = 0.4;
    private const double Reading = 0.02;
    private const double Slope = 0.06;
    private const double Offset = 0.001;
    private const double ShareOfSignal = 0.002;
    private const int Blanks = 10;
    private const int Readings = 3;
    private static readonly double[] Standards = [0, 0.125, 0.25, 0.375, 0.5, 0.75, 1];
    private static readonly Origin File = new("00", "invented.csv", null, 1, null);

    /// <summary>How a claim of the plan is judged in one invented study.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="question">One of its claims.</param>
    /// <param name="seed">Seed of the study.</param>
    public static Ruling Of(PlanDesign plan, PlanQuestion question, ulong seed)
        => Verdict(plan, question, seed).Ruling;

    /// <summary>The whole verdict.</summary>
    public static Verdict Verdict(PlanDesign plan, PlanQuestion question, ulong seed)
    {
        var study = Study(plan, question, seed);
        return Defence.Of(Evidence.Of(study), null).Single(v => v.Claim.Id == Tried);
    }

    /// <summary>An invented study that follows the plan as far as a claim needs it, in a world in which the claim is true.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="question">One of its claims.</param>
    /// <param name="seed">Seed of the study.</param>
    public static Study Study(PlanDesign plan, PlanQuestion question, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(question);
        var supposed = new Supposed(plan.Basis);
        var claim = plan.Claims.Single(c => c.Question == question);
        var kinetic = plan.Series.Where(s => s.Kind == SeriesKind.Kinetic).Select(s => s.Name);
        var needed = claim.Series.Concat(kinetic).ToHashSet(StringComparer.Ordinal);
        return Study(
            plan, new SeededStream(seed, "trial of " + question.Rule), v => v.Role == SampleRole.Control || needed.Contains(v.Series), (vessel, stream) =>
            {
                var left = Left(plan, question, claim.Power.Margin, vessel);
                return vessel.InitialConcentration == 0 ? 0 : left + supposed.U(vessel.InitialConcentration, left) * stream.Normal();
            },
            [new(Tried, question.Rule, question.Parameters(plan).ToImmutableSortedDictionary(p => p.Key, p => p.Value, StringComparer.Ordinal), null, 10, default)]) with
        {
            Margins = [.. MarginKind.All.Where(k => k.Otherwise is null).Select(k => k == question.Margin ? new Margin(k.Name, -claim.Power.Margin, claim.Power.Margin, k.Unit, 2) : new Margin(k.Name, k.Low, k.High, k.Unit, 2))],
        };
    }

    /// <summary>An invented study that follows the plan in any world, with the usual margins.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="stream">Random numbers.</param>
    /// <param name="counts">Which of the planned vessels are run.</param>
    /// <param name="found">Concentration in a vessel after contact, mg/L, with what the vessel itself is off by.</param>
    /// <param name="claims">What its author claims.</param>
    internal static Study Study(PlanDesign plan, SeededStream stream, Func<PlannedVessel, bool> counts, Func<PlannedVessel, SeededStream, double> found, ImmutableArray<StatedClaim> claims)
    {
        var supposed = new Supposed(plan.Basis);
        var queue = new List<(Sample Sample, double Concentration, double Dilution)>();
        var top = plan.Basis[PlanSetting.TopStandard];
        for (var i = 1; i <= Blanks; i++)
            queue.Add((Made(FormattableString.Invariant($"BLANK-{i}"), SampleRole.Blank), 0, 1));
        foreach (var share in Standards)
            queue.Add((Made(FormattableString.Invariant($"STD-{share}"), SampleRole.Standard, (SpectrometryProperties.StandardConcentration, share * top)), share * top, 1));
        queue.Add((Made("CHECK-1", SampleRole.CheckStandard, (SpectrometryProperties.StandardConcentration, top / 2)), top / 2, 1));
        foreach (var vessel in plan.Vessels.OrderBy(v => v.ReadOrder).ThenBy(v => v.Code, StringComparer.Ordinal))
        {
            var left = found(vessel, stream);
            if (counts(vessel))
                queue.Add((Filled(vessel, plan.Basis, stream), Math.Max(0, left), Math.Max(vessel.Dilution, PlanDesign.DilutionFor(left, top))));
        }

        queue.Add((Made("CHECK-2", SampleRole.CheckStandard, (SpectrometryProperties.StandardConcentration, top / 2)), top / 2, 1));
        var noise = plan.Basis[PlanSetting.Quantification] / 10 * Slope;
        var readings = ImmutableArray.CreateBuilder<Reading>();
        foreach (var (sample, concentration, dilution) in queue)
        {
            for (var i = 0; i < Readings; i++)
            {
                var signal = Offset + Slope * concentration / dilution;
                signal += Math.Sqrt(noise * noise + ShareOfSignal * signal * (ShareOfSignal * signal)) * stream.Normal();
                readings.Add(new(FormattableString.Invariant($"R-{readings.Count + 1:0000}"), sample.Code, "run", readings.Count + 1, SpectrometryProperties.Absorbance.Name, signal, null, dilution, 1, "", File));
            }
        }

        return new Study
        {
            Title = "trial of a plan",
            Invented = true,
            Analyte = plan.Analyte,
            Samples = [.. queue.Select(q => q.Sample)],
            Readings = readings.ToImmutable(),
            Runs = [new Run("run", SpectrometryProperties.Absorbance.Name, ImmutableSortedDictionary<string, string>.Empty, File)],
            Originals = [new Original("00", "invented.csv", 1, 9, default)],
            Margins = [.. MarginKind.All.Where(k => k.Otherwise is null).Select(k => new Margin(k.Name, k.Low, k.High, k.Unit, 2))],
            Apparatus =
            [
                new("filling", BatchProperties.InitialConcentration.Name, null, supposed.ShareOfStart, false, "as supposed", null),
                new("dilution", SpectrometryProperties.Dilution.Name, null, supposed.ShareOfReading, false, "as supposed", null),
            ],
            Claims =
            [
                .. claims,
                new("stable", Rules.StableInWater.RuleId, ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, [KeyValuePair.Create("fraction", "40 %")]), null, 10, default),
            ],
        };
    }

    // A vessel without sorbent loses nothing.
    private static double Left(PlanDesign plan, PlanQuestion question, double margin, PlannedVessel vessel)
    {
        if (vessel.Role != SampleRole.Vessel)
            return vessel.InitialConcentration;
        var series = plan.Series.Single(s => s.Name == vessel.Series);
        return new Supposed(plan.Basis).Left(question, margin, series, series.LevelOf(vessel));
    }

    private static Sample Filled(PlannedVessel vessel, PlanBasis basis, SeededStream stream)
    {
        List<(Property, double)> numbers =
        [
            (BatchProperties.InitialConcentration, vessel.InitialConcentration), (BatchProperties.Volume, vessel.Volume), (BatchProperties.Mass, vessel.Mass), (BatchProperties.ContactTime, vessel.ContactTime),
        ];
        if (vessel.Ph is { } ph)
            numbers.AddRange([(BatchProperties.StartPh, ph), (BatchProperties.EndPh, ph + basis[PlanSetting.PhRise])]);
        if (vessel.Temperature is { } kelvin)
            numbers.Add((BatchProperties.Temperature, kelvin));
        if (vessel.Role == SampleRole.SorbentBlank)
            numbers.Add((StabilityProperties.DissolvedCalcium, 1000 * Dissolved * Constituent * vessel.Mass / vessel.Volume * (1 + Reading * stream.Normal())));
        var sample = Made(vessel.Code, vessel.Role, [.. numbers]);
        return sample with
        {
            Facts = sample.Facts.AddRange(new[] { (SampleProperties.Series, vessel.Series), (SampleProperties.Batch, vessel.Batch ?? "B1"), (SampleProperties.Matrix, "water") }
                .Select(w => KeyValuePair.Create(w.Item1.Name, new Fact(w.Item1.Name, null, null, null, w.Item2, w.Item2, File)))),
        };
    }

    private static Sample Made(string code, SampleRole role, params ReadOnlySpan<(Property Property, double Value)> numbers)
    {
        var facts = ImmutableSortedDictionary.CreateBuilder<string, Fact>(StringComparer.Ordinal);
        foreach (var (property, value) in numbers)
            facts[property.Name] = new(property.Name, value, null, null, null, "", File);
        return new(code, role, facts.ToImmutable());
    }
}
