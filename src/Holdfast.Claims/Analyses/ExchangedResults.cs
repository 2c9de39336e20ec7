using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// Two vessels whose own results, as her sheet states them, contradict their readings and are each what the other's reading gives: two lines were exchanged, in the sheet or
/// before the instrument. Nothing is moved; both vessels say it.
/// </summary>
internal static class ExchangedResults
{
    // What contradicts in more vessels than these is no slip of two lines.
    private const int MostInDoubt = 40;

    // A removal in whole per cent says what is left to half a hundredth of the start.
    private const double RoundingOfShares = 0.01;

    /// <summary>The vessels, with what is to be said of such pairs.</summary>
    /// <param name="vessels">Vessels, worked out.</param>
    public static ImmutableArray<Vessel> Say(ImmutableArray<Vessel> vessels)
    {
        var doubted = vessels.Select((v, i) => (Place: i, Vessel: v, Hers: v.IsStruck ? null : Stated(v))).Where(d => d.Hers is { } hers && !Fits(hers, d.Vessel)).Take(MostInDoubt + 1).ToList();
        if (doubted.Count is < 2 or > MostInDoubt)
            return vessels;
        foreach (var one in doubted)
        {
            List<(int Place, Vessel Vessel, (double End, double Within)? Hers)> others = [.. doubted.Where(d => d.Place != one.Place && Fits(one.Hers!.Value, d.Vessel) && Fits(d.Hers!.Value, one.Vessel))];
            if (others is not [var other])
                continue;
            var sentence = string.Create(CultureInfo.InvariantCulture,
                $"{one.Vessel.Code} and {other.Vessel.Code} look exchanged: by the sheet {one.Hers!.Value.End:0.####} mg/L are left in {one.Vessel.Code}, which is what {other.Vessel.Code} reads, and the other way round. Were two lines exchanged when copying, or two vessels when reading?");
            vessels = vessels.SetItem(one.Place, vessels[one.Place] with { Findings = vessels[one.Place].Findings.Add(Finding.Of("HF-672", Weight.Caution, sentence, one.Vessel.Code, other.Vessel.Code)) });
        }

        return vessels;
    }

    // What is left by her own number: stated, or from her uptake or removal; with how finely it is stated.
    private static (double End, double Within)? Stated(Vessel vessel)
    {
        if (vessel is not { End.Value: not null, Start.Value: > 0 and var start })
            return null;
        if (vessel.Sample.Number(BatchProperties.ReportedEnd) is { } end)
            return (end, 0);
        if (vessel.Sample.Number(BatchProperties.ReportedUptake) is { } uptake && vessel.Dose is { Value: > 0 } dose)
            return (start - (uptake * dose.Value), RoundingOfShares * start);
        return vessel.Sample.Number(BatchProperties.ReportedRemoval) is { } removal ? (start * (1 - (removal / 100)), RoundingOfShares * start) : null;
    }

    private static bool Fits((double End, double Within) hers, Vessel vessel)
        => vessel.End!.Value is { } read && Math.Abs(hers.End - read.Value) <= (VesselWorkup.AgreesWithin * Math.Abs(read.Value)) + hers.Within;
}
