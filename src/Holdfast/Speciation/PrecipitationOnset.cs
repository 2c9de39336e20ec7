using Holdfast.Statistics;

namespace Holdfast.Speciation;

/// <summary>The pH from which a solid can form, with a range from the uncertainty of the constants.</summary>
/// <param name="Solid">The solid.</param>
/// <param name="Ph">Lowest pH at which the saturation index is 0; null when it stays below.</param>
/// <param name="RedissolvesAt">The pH above which the index is below 0 again; null when it stays above up to pH 14 or was never reached.</param>
/// <param name="LargestIndex">Largest saturation index between pH 0 and 14; null for a carbonate without carbonate.</param>
/// <param name="U">Standard uncertainty of <paramref name="Ph"/>; null without one.</param>
/// <param name="Low">Lowest pH at which the index plus two standard uncertainties is 0: below it the solid cannot form. Null when it cannot form at all.</param>
/// <param name="High">Lowest pH at which the index less two standard uncertainties is 0: above it the solid can form. Null when that is never sure.</param>
/// <param name="HighEnd">The pH above which it is no longer sure, by the same measure; null when it stays so up to pH 14.</param>
public sealed record PrecipitationOnset(
    Solid Solid, double? Ph, double? RedissolvesAt, double? LargestIndex, double? U, double? Low, double? High, double? HighEnd)
{
    /// <summary>Change of an onset for each kelvin away from 25 °C that the constants do not follow: 0.2 to 0.3 pH for 10 K, from memory. pH/K.</summary>
    public const double PerKelvin = 0.025;

    private const double Step = 0.02;
    private const int Steps = 700;
    private const double Coverage = 2;

    /// <summary>Searches pH 0 to 14.</summary>
    /// <param name="water">The metal in its water.</param>
    /// <param name="solid">A solid of this ion.</param>
    /// <param name="temperature">Temperature, K; away from 298.15 K the uncertainty widens.</param>
    public static PrecipitationOnset Of(MetalInWater water, Solid solid, double temperature = Constants.TableTemperature)
    {
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(solid);
        if (solid.Carbonates > 0 && water.LgCarbonDioxide is null)
            return new(solid, null, null, null, null, null, null, null);
        var off = PerKelvin * Math.Abs(temperature - Constants.TableTemperature);
        var grid = new SaturationIndex[Steps + 1];
        for (var i = 0; i <= Steps; i++)
            grid[i] = water.Index(solid, i * Step);

        var onset = Rise(0);
        var low = Rise(Coverage);
        var high = Rise(-Coverage);
        return new(solid, onset, Fall(0, onset), grid.Max(g => g.Value), onset is { } at ? UAt(at) : null, low, high, Fall(-Coverage, high));

        double UAt(double ph)
        {
            var index = water.Index(solid, ph);
            return Width(index, off) / Math.Max(index.Slope, double.Epsilon);
        }

        double Shifted(double ph, double times)
        {
            var index = water.Index(solid, ph);
            return index.Value + times * Width(index, off);
        }

        double? Rise(double times) => Crossing(times, 0, rising: true);

        double? Fall(double times, double? from) => from is { } ph ? Crossing(times, (int)Math.Ceiling(ph / Step), rising: false) : null;

        double? Crossing(double times, int first, bool rising)
        {
            for (var i = first; i <= Steps; i++)
            {
                if (rising ? grid[i].Value + times * Width(grid[i], off) < 0 : grid[i].Value + times * Width(grid[i], off) >= 0)
                    continue;
                return i == first ? i * Step : Root.Of(ph => Shifted(ph, times), (i - 1) * Step, i * Step);
            }

            return null;
        }
    }

    // Uncertainty of the index: that of the constants, and the shift with temperature carried over by the slope.
    private static double Width(SaturationIndex index, double off) => Math.Sqrt(index.U * index.U + Math.Pow(off * index.Slope, 2));
}
