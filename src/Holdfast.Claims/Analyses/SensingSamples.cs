using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Which samples of a study belong to sensing alone: no sorption follows from them.</summary>
internal static class SensingSamples
{
    private static readonly Property[] Own =
    [
        FluorescenceProperties.Quencher, FluorescenceProperties.Exposure, FluorescenceProperties.TimeAfterAddition, FluorescenceProperties.Interferent, FluorescenceProperties.Added, FluorescenceProperties.Found,
    ];

    private static readonly Property[] OfSorption =
    [
        BatchProperties.InitialConcentration, BatchProperties.Volume, BatchProperties.Mass, BatchProperties.Dose, BatchProperties.ContactTime, BatchProperties.UptakeBySolid,
    ];

    /// <summary>Codes of samples with a signal or a record of sensing, and no record of sorption.</summary>
    /// <param name="study">The study.</param>
    public static IReadOnlySet<string> Of(Study study)
    {
        var read = study.Readings.Where(r => IsSignal(r.Signal)).Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        var absorbed = study.Readings.Where(r => !IsSignal(r.Signal)).Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        return study.Samples
            .Where(s => (read.Contains(s.Code) || Array.Exists(Own, p => s.Fact(p) is not null)) && !absorbed.Contains(s.Code) && !Array.Exists(OfSorption, p => s.Fact(p) is not null))
            .Select(s => s.Code)
            .ToHashSet(StringComparer.Ordinal);
    }

    private static bool IsSignal(string signal)
        => signal == FluorescenceProperties.Intensity.Name || signal == FluorescenceProperties.Emission.Name || signal == FluorescenceProperties.Lifetime.Name;
}
