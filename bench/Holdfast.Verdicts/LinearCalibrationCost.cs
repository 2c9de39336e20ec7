using Holdfast.Claims.Rules;
using Holdfast.Fitting;

namespace Holdfast.Verdicts;

/// <summary>What a bend costs where standards are read back on a line through them, without noise.</summary>
/// <param name="Percent">Worst error of a level, %.</param>
/// <param name="Share">Worst error as a share of what may hide: half of the 10 %, at the lowest level 20 %, that reading back tolerates; no unit.</param>
internal sealed record LinearCalibrationCost(double Percent, double Share)
{
    /// <summary>Of a signal x(1 − bend·x/top).</summary>
    /// <param name="levels">Levels of the standards, the blank first.</param>
    /// <param name="bend">Bend at the top, as a share of the signal.</param>
    public static LinearCalibrationCost Of(double[] levels, double bend)
    {
        var top = levels.Max();
        var line = StraightLine.Through(levels, [.. levels.Select(x => x * (1 - bend * x / top))]);
        double[] errors = [.. levels.Where(x => x > 0).Select(x => 100 * Math.Abs((x * (1 - bend * x / top) - line.Intercept) / line.Slope / x - 1))];
        return new(errors.Max(), errors.Select((e, i) => e / (LinearCalibration.Limits.HalfOfReadBack * (i == 0 ? 20 : 10))).Max());
    }
}
