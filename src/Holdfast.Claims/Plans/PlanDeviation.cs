using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Plans;

/// <summary>Where what was done differs from what was planned. It is shown, never corrected.</summary>
public static class PlanDeviation
{
    /// <summary>A contact time may differ by this share, common practice.</summary>
    public const double Time = 0.05;

    /// <summary>The deviations of a vessel, in words.</summary>
    /// <param name="planned">Its targets.</param>
    /// <param name="sample">What was recorded of it.</param>
    public static IEnumerable<string> Of(PlannedVessel planned, Sample sample)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(sample);
        if (sample.Number(BatchProperties.Mass) is { } mass && Math.Abs(mass - planned.Mass) > PlannedVessel.AmountTolerance * planned.Mass)
            yield return $"{Phrase.With(mass, "mg")} weighed for {Phrase.With(planned.Mass, "mg")}";
        if (sample.Number(BatchProperties.Volume) is { } volume && Math.Abs(volume - planned.Volume) > PlannedVessel.AmountTolerance * planned.Volume)
            yield return $"{Phrase.With(volume, "mL")} filled for {Phrase.With(planned.Volume, "mL")}";
        if (sample.Number(BatchProperties.ContactTime) is { } time && Math.Abs(time - planned.ContactTime) > Time * planned.ContactTime)
            yield return $"{Phrase.With(time, "min")} in contact for {Phrase.With(planned.ContactTime, "min")}";
        if (sample.Number(BatchProperties.StartPh) is { } ph && planned.Ph is { } wanted && !Tolerances.SamePh(ph, wanted))
            yield return $"start pH {Phrase.Number(ph)} for {Phrase.Number(wanted)}";
    }
}
