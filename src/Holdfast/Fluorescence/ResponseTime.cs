using Holdfast.Fitting;
using Holdfast.Kinetics;
using Holdfast.Statistics;

namespace Holdfast.Fluorescence;

/// <summary>How long the signal takes to reach its plateau and to stay there.</summary>
/// <remarks>
/// Common practice: within 5 % of the whole change, or within two standard deviations of the plateau where those are wider; from the first reading after
/// which none leaves the band. The scatter of the plateau is taken about a line, so that a signal that still moves does not pass for scatter. One
/// exponential is fitted beside it, as the change since the start.
/// </remarks>
/// <param name="Reached">Time from which every reading lies in the band, in the unit of the times.</param>
/// <param name="Plateau">Mean of the last third of the readings, in the unit of the signal.</param>
/// <param name="Band">Half-width of the band, in the unit of the signal.</param>
/// <param name="ReadingsBefore">Readings after the start and before that time: at least three are needed to speak of a time.</param>
/// <param name="Exponential">One exponential fitted to the change since the first reading.</param>
public sealed record ResponseTime(double Reached, double Plateau, double Band, int ReadingsBefore, FitResult Exponential)
{
    private const double Share = 0.05;
    private const int FewestBefore = 3;
    private const int FewestOnPlateau = 4;
    private const int FewestReadings = 1 + FewestBefore + FewestOnPlateau;

    /// <summary>Time to 95 % of the change by the exponential, ln(20)/k, in the unit of the times; null without a fit.</summary>
    public double? ByExponential => Exponential.IsFit ? Math.Log(1 / Share) / Exponential["k1"].Value : null;

    /// <summary>Reads a response.</summary>
    /// <param name="time">Times after the addition, each above the one before, any unit; the first reading is the start.</param>
    /// <param name="signal">Signals, any unit.</param>
    /// <param name="timeUnit">Unit of the times.</param>
    /// <param name="signalUnit">Unit of the signals.</param>
    /// <returns>The time; none with fewer than eight readings or where the last ones still move.</returns>
    public static Outcome<ResponseTime> Of(IReadOnlyList<double> time, IReadOnlyList<double> signal, string timeUnit, string signalUnit = "")
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(signal);
        if (time.Count != signal.Count || time.Zip(time.Skip(1)).Any(p => p.Second <= p.First))
            throw new ArgumentException("Times and signals come in pairs, each time above the one before.", nameof(time));
        if (time.Count < FewestReadings)
            return Outcome<ResponseTime>.None(FluorescenceFindings.TooFewForResponse(time.Count));
        var onPlateau = Math.Max(FewestOnPlateau, signal.Count / 3);
        var plateau = signal.TakeLast(onPlateau).Average();
        var scatter = PolynomialFit.Of([.. time.TakeLast(onPlateau)], [.. signal.TakeLast(onPlateau)]).ResidualSd;
        var band = Math.Max(Share * Math.Abs(signal[0] - plateau), 2 * scatter);
        var outside = Enumerable.Range(0, signal.Count).Where(i => Math.Abs(signal[i] - plateau) > band).DefaultIfEmpty(-1).Last();
        if (outside >= signal.Count - onPlateau)
            return Outcome<ResponseTime>.None(FluorescenceFindings.NoPlateau());
        var sign = Math.Sign(plateau - signal[0]);
        var exponential = Fit.Of<PseudoFirstOrder>(new Points(
            [.. time.Select(t => t - time[0])], [.. signal.Select(f => sign * (f - signal[0]))], timeUnit, signalUnit), new FitOptions { Profiles = false });
        var found = new ResponseTime(time[outside + 1] - time[0], plateau, band, Math.Max(outside, 0), exponential);
        return new(found, found.ReadingsBefore < FewestBefore ? [FluorescenceFindings.FasterThanReadings(found.Reached, timeUnit)] : []);
    }
}
