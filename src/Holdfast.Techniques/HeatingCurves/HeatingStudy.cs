using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Heating;
using Holdfast.Studies;

namespace Holdfast.Techniques.HeatingCurves;

/// <summary>The heating curves of a study with their steps. Struck ones are left out.</summary>
/// <param name="Curves">One for each measurement that makes a curve, in the order they came.</param>
/// <param name="Findings">What stands in the way of others.</param>
internal sealed record HeatingStudy(ImmutableArray<PowderHeated> Curves, ImmutableArray<Finding> Findings)
{
    /// <summary>A measurement that makes no curve, or one that does not say under what it was heated.</summary>
    internal const string NotSaid = "HF-781";

    /// <summary>A curve that ends while mass is still lost.</summary>
    internal const string Unfinished = "HF-782";

    private static readonly Analysis<HeatingStudy> Known = new(Work);

    /// <summary>What is found; the same object for the same evidence.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static HeatingStudy Of(Evidence evidence) => Known.Of(evidence);

    private static HeatingStudy Work(Evidence evidence)
    {
        var curves = ImmutableArray.CreateBuilder<PowderHeated>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var measurement in evidence.Study.Measurements.Where(m => m.Technique == HeatingFiles.TechniqueName && !evidence.Study.IsStruck(m)))
        {
            var outcome = Room.Of("the heating curve of " + measurement.Sample, () => new Heated(Curve(measurement) is { } made ? new PowderHeated(measurement, made, made.Steps()) : null), measurement.Id);
            findings.AddRange(outcome.Findings);
            if (outcome.Value is { Curve: { } curve })
                curves.Add(curve with { Findings = [.. About(curve)] });
            else if (outcome.Value is not null)
                findings.Add(Finding.Of(NotSaid, Weight.Stop, $"{measurement.Id} ({measurement.Sample}) is no heating curve: fewer than {HeatingCurve.FewestPoints} masses while the temperature rises. Strike it, or take the right file in.", measurement.Id));
        }

        return new(curves.ToImmutable(), findings.ToImmutable());
    }

    // A curve, or none where the measurement makes none.
    private sealed record Heated(PowderHeated? Curve);

    private static HeatingCurve? Curve(Measurement measurement)
    {
        if (measurement.Column(HeatingFiles.Temperature) is not { Numbers: { } t } temperature || measurement.Column(HeatingFiles.Mass) is not { Numbers: { } m } mass)
            return null;
        var (read, celsius) = (Unit.Parse(temperature.Unit), Unit.Parse("°C"));
        var points = t.Zip(m).Where(p => p.First is not null && p.Second is not null).Select(p => (read.Convert(p.First!.Value, celsius), p.Second!.Value));
        // Per cent of a mass that a line states; buoyancy cannot be judged without one.
        double? milligrams = mass.Unit == "%" ? measurement.Setting(HeatingFiles.Start)?.Value / 100 : Unit.Parse(mass.Unit).Convert(1, Unit.Parse("mg"));
        return HeatingCurve.Of(points, milligrams);
    }

    private static IEnumerable<Finding> About(PowderHeated curve)
    {
        var missing = new[] { (HeatingFiles.Gas, "the gas"), (HeatingFiles.Rate, "the heating rate") }.Where(s => curve.Measurement.Setting(s.Item1) is null).Select(s => s.Item2).ToArray();
        if (missing.Length > 0)
            yield return Finding.Of(NotSaid, Weight.Note, $"{curve.Powder}: {string.Join(" and ", missing)} {(missing.Length == 1 ? "is" : "are")} not recorded; steps move with both.", curve.Measurement.Id);
        if (!curve.Steps.IsEmpty && curve.Steps[^1].Endless)
            yield return Finding.Of(Unfinished, Weight.Caution, $"{curve.Powder} still loses mass where the curve ends: the last step and the residue are not complete. Heat further.", curve.Measurement.Id);
    }
}

/// <summary>One powder heated.</summary>
/// <param name="Measurement">What was taken in.</param>
/// <param name="Curve">Its curve.</param>
/// <param name="Steps">Its steps, from low to high temperatures.</param>
internal sealed record PowderHeated(Measurement Measurement, HeatingCurve Curve, ImmutableArray<HeatingStep> Steps)
{
    /// <summary>The powder.</summary>
    public string Powder => Measurement.Sample;

    /// <summary>What it says of itself.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Address of the loss of a step.</summary>
    /// <param name="step">The step.</param>
    public string Address(HeatingStep step) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"loss:{Measurement.Id}@{step.From:0}-{step.To:0}");

    /// <summary>Address of what is left.</summary>
    public string Residue => "residue:" + Measurement.Id;

    /// <summary>Loss of a step, per cent of the first mass.</summary>
    /// <param name="step">The step.</param>
    public Measured Loss(HeatingStep step) => Curve.Loss(step.From, step.To, Address(step));

    /// <summary>What is left at the end, per cent of the first mass.</summary>
    public Measured Left => 100 - Curve.Loss(Curve.Temperatures[0], Curve.Temperatures[^1], Residue);
}
