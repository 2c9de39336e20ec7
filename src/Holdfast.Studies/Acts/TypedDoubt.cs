using System.Globalization;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Acts;

/// <summary>Why a typed value hardly can be: the questions a file is asked, asked of a cell.</summary>
public static class TypedDoubt
{
    // As for files: beyond a tenth or ten times what was planned, or fifty times what the others hold, a unit has slipped.
    private const double FarBelow = 0.1, FarAbove = 10, FarFromOthers = 50;
    private const int EnoughOthers = 3;

    /// <summary>Words that follow "is": "unlikely large", "100 times the planned 20 mg"; null when nothing speaks against it.</summary>
    /// <param name="study">The study.</param>
    /// <param name="sample">The sample it is typed for.</param>
    /// <param name="fact">The fact as it would be.</param>
    public static string? Of(Study study, Sample sample, Fact fact)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(sample);
        ArgumentNullException.ThrowIfNull(fact);
        if (fact.Value is not { } value || Property.Named(fact.Property) is not { } property)
            return null;
        return Plausible.Doubt(property, value, out _) is { } doubt ? doubt
            : study.Planned(sample.Code) is { } planned && Target(planned, property, value) is { } off ? off
            : property == BatchProperties.Mass ? Mass(sample, value) ?? Others(study, sample, property, value)
            : property == BatchProperties.Volume || property == BatchProperties.InitialConcentration || property == SpectrometryProperties.StandardConcentration ? Others(study, sample, property, value)
            : null;
    }

    private static string? Target(PlannedVessel planned, Property property, double value)
    {
        var target = property == BatchProperties.Mass ? planned.Mass : property == BatchProperties.Volume ? planned.Volume : (double?)null;
        return target is { } wanted && Math.Abs(value - wanted) > PlannedVessel.AmountTolerance * wanted ? $"planned as {Text(wanted)} {property.Unit}" : null;
    }

    private static string? Mass(Sample sample, double mass)
    {
        if (!(sample.Number(BatchProperties.Dose) is > 0 and var dose && sample.Number(BatchProperties.Volume) is > 0 and var volume))
            return null;
        var planned = dose * volume;
        return mass > 0 && mass / planned is < FarBelow or > FarAbove ? $"{Times(mass / planned)} the planned {Text(planned)} mg" : null;
    }

    private static string? Others(Study study, Sample sample, Property property, double value)
    {
        double[] others = [.. study.Samples.Where(s => s.Code != sample.Code && s.Series == sample.Series).Select(s => s.Number(property)).OfType<double>().Where(v => v > 0).Order()];
        if (others.Length < EnoughOthers || !(value > 0))
            return null;
        var middle = others[others.Length / 2];
        return value > middle * FarFromOthers || value < middle / FarFromOthers ? $"{Times(value / middle)} what most samples of its series hold" : null;
    }

    private static string Times(double ratio) => Text(ratio) + " times";

    private static string Text(double value) => value.ToString("G3", CultureInfo.InvariantCulture);
}
