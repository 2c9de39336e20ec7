using Holdfast.Fitting;
using Holdfast.Statistics;

namespace Holdfast.BatchSorption;

/// <summary>
/// Whether uptake has stopped changing (rule K1): the rise per doubling of time, with one-sided 95 % limits, against a margin of the mean.
/// It is an equivalence test, since scattered data also "show no change".
/// </summary>
/// <remarks>Two one-sided tests after D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657–680 (citation from memory), on the regression of q on log2 t.</remarks>
/// <param name="Rise">Change of uptake per doubling of time, in the unit of uptake.</param>
/// <param name="RiseError">Standard error of the rise, same unit.</param>
/// <param name="Mean">Mean uptake, same unit.</param>
/// <param name="Lower">Lower one-sided 95 % limit of the rise as a share of the mean; no unit.</param>
/// <param name="Upper">Upper one-sided 95 % limit of the rise as a share of the mean; no unit.</param>
/// <param name="Reached">Whether equilibrium is shown.</param>
/// <param name="Reason">Why, in plain words.</param>
public sealed record Plateau(double Rise, double RiseError, double Mean, double Lower, double Upper, Ruling Reached, string Reason)
{
    /// <summary>Margin per doubling of time, as a share of the mean uptake; common practice.</summary>
    public const double Margin = 0.05;

    /// <summary>The test on the points that are said to lie on the plateau.</summary>
    /// <param name="times">Contact times, any unit, above 0; replicates count singly.</param>
    /// <param name="uptakes">Uptake at each time, any unit.</param>
    /// <param name="margin">Margin per doubling as a share of the mean.</param>
    public static Outcome<Plateau> Test(ReadOnlySpan<double> times, ReadOnlySpan<double> uptakes, double margin = Margin)
    {
        if (times.Length != uptakes.Length)
            throw new ArgumentException($"{times.Length} times, {uptakes.Length} uptakes.", nameof(uptakes));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(margin);
        if (times.Length < 3)
            return Outcome<Plateau>.None(Finding.Of("HF-480", Weight.Stop, "A plateau needs three readings or more; add later times."));

        var doublings = new double[times.Length];
        double first = times[0], last = times[0], mean = 0;
        for (var i = 0; i < times.Length; i++)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(times[i], nameof(times));
            doublings[i] = Math.Log2(times[i]);
            first = Math.Min(first, times[i]);
            last = Math.Max(last, times[i]);
            mean += uptakes[i] / uptakes.Length;
        }

        if (first.Equals(last))
            return Outcome<Plateau>.None(Finding.Of("HF-480", Weight.Stop, "All readings are of one time; a plateau needs several."));
        if (!(mean > 0))
            return Outcome<Plateau>.None(Finding.Of("HF-481", Weight.Stop, "The mean uptake is not above 0: there is no plateau to judge."));

        var line = StraightLine.Through(doublings, uptakes);
        var error = line.SlopeError!.Value;
        var arm = StudentDistribution.Quantile(0.95, times.Length - 2) * error;
        double lower = (line.Slope - arm) / mean, upper = (line.Slope + arm) / mean;
        var (reached, reason) = last / first < 2
            ? (Ruling.NotShownYet, "the times span less than one doubling")
            : Judge(lower, upper, margin);
        return new(new Plateau(line.Slope, error, mean, lower, upper, reached, reason), []);
    }

    /// <summary>The verdict on the limits of the rise.</summary>
    /// <param name="lower">Lower one-sided 95 % limit, share of the mean for each doubling of time.</param>
    /// <param name="upper">Upper one-sided 95 % limit, share of the mean for each doubling of time.</param>
    /// <param name="margin">Margin, share of the mean.</param>
    public static (Ruling Reached, string Reason) Judge(double lower, double upper, double margin = Margin)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(upper, lower);
        if (lower > margin)
            return (Ruling.Contradicted, "uptake still rises");
        if (upper < -margin)
            return (Ruling.Contradicted, "uptake falls: look for desorption, dissolution or a drift of pH");
        return lower >= -margin && upper <= margin
            ? (Ruling.Holds, "the change per doubling of time stays inside the margin")
            : (Ruling.NotShownYet, "the readings scatter too much or are too few to decide");
    }
}
