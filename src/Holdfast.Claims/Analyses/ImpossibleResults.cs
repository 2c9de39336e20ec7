using System.Collections.Immutable;
using Holdfast.Studies;

namespace Holdfast.Claims.Analyses;

/// <summary>Whether results are what a batch test can give, and the slip that would explain those that are not. Said before anything else is.</summary>
public static class ImpossibleResults
{
    /// <summary>Code of the findings.</summary>
    public const string Code = "HF-453";

    // Scatter alone takes a removal over its end by about two standard uncertainties.
    private const double Scatter = 2;
    private const int Several = 3;

    /// <summary>What cannot be, one finding a kind; none where all can.</summary>
    /// <param name="vessels">Vessels worked out.</param>
    /// <param name="limits">The limits.</param>
    public static ImmutableArray<Finding> Of(IEnumerable<Vessel> vessels, PhysicalLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        Vessel[] all = [.. vessels.Where(v => !v.IsStruck && v.Sample.Role == SampleRole.Vessel)];
        return
        [
            .. Exchanged(all),
            .. Beyond(
                all, v => v.Uptake?.Value, q => q > limits.MostUptake, $"take up more than {Phrase.With(limits.MostUptake, "mg/g")}", "mg/g",
                q => $"the mass was weighed in g and stands under mg, which would make it {Phrase.With(q / 1000, "mg/g")}, or a dilution is counted twice"),
            .. Beyond(
                all, v => v.Dose?.Value, d => d > limits.MostDose, $"hold more than {Phrase.With(limits.MostDose, "g/L")} of powder", "g/L",
                d => $"the mass was weighed in mg and stands under g, or the volume in L and stands under mL; either would make it {Phrase.With(d / 1000, "g/L")}"),
            .. Beyond(
                all, v => v.Removal?.Value, r => r < limits.LeastRemoval, $"remove less than {Phrase.With(limits.LeastRemoval, "%")}", "%",
                _ => "C0 and Ce are exchanged, a dilution is counted twice, or one of them stands under another unit"),
            .. Beyond(
                all, v => v.Removal is { } r && r.Value - (Scatter * r.U) > limits.MostRemoval ? r.Value : null, _ => true, $"remove more than {Phrase.With(limits.MostRemoval, "%")}", "%",
                _ => "a blank is taken off twice, or the line does not begin at zero"),
        ];
    }

    private static IEnumerable<Finding> Beyond(Vessel[] vessels, Func<Vessel, double?> quantity, Func<double, bool> isBeyond, string what, string unit, Func<double, string> slip)
    {
        (Vessel Vessel, double Value)[] odd = [.. vessels.Select(v => (Vessel: v, Value: quantity(v))).Where(v => v.Value is { } value && isBeyond(value)).Select(v => (v.Vessel, v.Value!.Value))];
        if (odd.Length == 0)
            yield break;
        var (vessel, worst) = odd.MaxBy(v => Math.Abs(v.Value));
        yield return new Finding(
            Code, Weight.Stop, $"{Phrase.Count(odd.Length, "vessel")} would {what}: {vessel.Code} {Phrase.With(worst, unit)}. Likely slip: {slip(worst)}. Check units and columns first.",
            [.. odd.Select(v => v.Vessel.Code)]);
    }

    private static IEnumerable<Finding> Exchanged(Vessel[] vessels)
    {
        foreach (var series in vessels.Where(v => v.Sample.Series is not null && v.Start is not null && v.End?.Value is not null).GroupBy(v => v.Sample.Series!, StringComparer.OrdinalIgnoreCase))
        {
            if (series.Count() >= Several && series.All(v => v.End!.Value!.Value.Value > v.Start!.Value.Value))
            {
                yield return new Finding(
                    Code, Weight.Stop, $"Every vessel of {series.Key} would hold more at the end than at the start. Likely slip: the columns C0 and Ce are exchanged, or stand under different units. Check them first.",
                    [.. series.Select(v => v.Code)]);
            }
        }
    }
}
