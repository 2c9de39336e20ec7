using System.Collections.Immutable;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>The start solutions of a study whose concentration was reported, as far as a check of what is taken in needs them; the work-up has them with their uncertainties.</summary>
internal sealed class StartSolutions
{
    private StartSolutions(ImmutableArray<(Sample Sample, double Read, Reading First)> each) => Each = each;

    /// <summary>Each, with the mean of what was read of it in mg/L, and its first reading.</summary>
    public ImmutableArray<(Sample Sample, double Read, Reading First)> Each { get; }

    /// <summary>Their mean, mg/L; not a number where there are none.</summary>
    public double Mean => Each.Select(s => s.Read).DefaultIfEmpty(double.NaN).Average();

    /// <summary>True where they may all be one solution.</summary>
    public bool AreOne => !Each.IsEmpty && Tolerances.SameSolution(Each.Min(s => s.Read), Each.Max(s => s.Read)) && Each.Select(s => s.Sample.Number(BatchProperties.InitialConcentration)).Distinct().Count() == 1;

    /// <summary>The start solutions of a study.</summary>
    /// <param name="study">The study.</param>
    public static StartSolutions Of(Study study)
    {
        var solutions = study.Samples.Where(s => s.Role == SampleRole.StartSolution).ToList();
        if (solutions.Count == 0)
            return new([]);
        var read = study.Readings.Where(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name && r.Value is not null && !study.IsStruck(r)).ToLookup(r => r.Sample, StringComparer.Ordinal);
        return new([.. solutions.Where(s => read[s.Code].Any()).Select(s => (s, read[s.Code].Average(r => r.Value!.Value * r.Dilution), read[s.Code].First()))]);
    }

    /// <summary>What a vessel began with: what was written down, else what was read of the solution that it names, or of the only one; null for none.</summary>
    /// <param name="vessel">The vessel.</param>
    public Fact? Of(Sample vessel)
    {
        if (vessel.Fact(BatchProperties.InitialConcentration) is { } stated)
            return stated;
        var named = vessel.Words(BatchProperties.StartSolution) is { } name ? Each.FirstOrDefault(s => string.Equals(s.Sample.Code, name, StringComparison.OrdinalIgnoreCase)) : default;
        return named.Sample is not null ? Read(named.Read, named.First) : AreOne ? Read(Mean, Each[0].First) : null;
    }

    private static Fact Read(double value, Reading first) => new(BatchProperties.InitialConcentration.Name, value, null, null, null, first.Written, first.Origin);
}
