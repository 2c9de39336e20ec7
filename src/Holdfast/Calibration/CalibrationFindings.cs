using System.Globalization;

namespace Holdfast.Calibration;

/// <summary>What a calibration says about itself, sentence by sentence. Codes HF-403 and HF-440 to HF-448.</summary>
internal static class CalibrationFindings
{
    /// <summary>A reading above the top standard has no number.</summary>
    public static Finding AboveTop(string sample, double reading, double top, double? next)
        => next is { } d
            ? Of("HF-403", Weight.Stop, $"{sample} reads {reading:G4}, above the highest standard in use ({top:G4}): no concentration. Dilute {d:G4}-fold and read again.", sample)
            : Of("HF-403", Weight.Stop, $"{sample} reads {reading:G4}, above the highest standard in use ({top:G4}): no concentration. Dilute more than 1000-fold, in two steps.", sample);

    /// <summary>A reading above the straight part and inside the standards.</summary>
    public static Finding ReadOnQuadratic(string sample, double straight, double top, string unit)
        => Of("HF-441", Weight.Caution, $"{sample} lies above the straight part ({straight:G4} {unit}), inside the standards ({top:G4}): read on the quadratic. Dilute to check it.", sample);

    /// <summary>A reading that the curve never shows.</summary>
    public static Finding OffCurve(string sample, double reading)
        => Of("HF-403", Weight.Stop, $"The curve never shows {reading:G4}: {sample} has no concentration. Dilute it, or check the reading.", sample);

    /// <summary>A number below the lowest standard.</summary>
    public static Finding BelowLowest(string sample, double found, double lowest, string unit)
        => Of("HF-403", Weight.Caution, $"{sample} reads {found:G3} {unit}, between the detection limit and the lowest standard ({lowest:G3} {unit}): add a lower standard.", sample);

    /// <summary>Too little to test linearity.</summary>
    public static Finding NotTestable(int levels, bool replicates)
        => replicates
            ? Of("HF-440", Weight.Caution, $"{levels} levels cannot show whether the line is straight. Use five or more, three readings each.")
            : Of("HF-440", Weight.Caution, $"Without replicate readings the fit cannot be tested against scatter. Read each of the {levels} standards three times.");

    /// <summary>The full range bends and a shorter one is used.</summary>
    public static Finding Shortened(double from, double to, string why, string unit)
        => Of("HF-441", Weight.Note, $"The standards bend up to {from:G4} {unit} ({why}); the line is used to {to:G4} {unit}. Dilute samples above it.");

    /// <summary>The quadratic is used.</summary>
    public static Finding Quadratic(string why)
        => Of("HF-441", Weight.Note, $"The standards bend ({why}); a quadratic is used, inside the standards only.");

    /// <summary>Strong curvature.</summary>
    public static Finding StrongBend(double ratio)
        => Of("HF-441", Weight.Caution, $"The curve bends strongly (c₂·x/c₁ = {ratio:G2}, beyond −0.3): dilute samples and use a shorter range.");

    /// <summary>The bend is real but small.</summary>
    public static Finding SmallBend(string why, double percent)
        => Of("HF-441", Weight.Note, $"The standards bend ({why}), yet line and quadratic differ by {percent:G2} % at most: the line is kept.");

    /// <summary>A bent line is used because a line was asked for.</summary>
    public static Finding CurvedAsTold(string why)
        => Of("HF-441", Weight.Caution, $"The standards bend ({why}), yet a line was asked for: concentrations are biased. Shorten the range or use the quadratic.");

    /// <summary>A bent line is all there is.</summary>
    public static Finding Curved(string why)
        => Of("HF-441", Weight.Stop, $"The standards bend ({why}) and no straight part or quadratic is allowed: concentrations rest on a wrong line. Add standards.");

    /// <summary>A bent line shifts this sample.</summary>
    public static Finding BendAtSample(string sample, double percent)
        => Of("HF-441", Weight.Caution, $"At {sample} line and quadratic differ by {percent:G2} %: use the quadratic or a shorter range.", sample);

    /// <summary>Through zero was asked for and is not allowed.</summary>
    public static Finding ZeroRefused(double t, double p)
        => Of("HF-441", Weight.Caution, $"The intercept differs from zero (t = {t:G3}, p = {p:G2}): the line is not forced through zero.");

    /// <summary>Readings are weighted because scatter grows.</summary>
    public static Finding Weighted(NoiseLaw law)
        => Of("HF-442", Weight.Note, $"Scatter {Words(law)}: readings are weighted, so low samples keep their precision.");

    /// <summary>Scatter grows but the line was asked for without weights.</summary>
    public static Finding Unweighted(NoiseLaw law)
        => Of("HF-442", Weight.Caution, $"Scatter {Words(law)}, yet readings are weighted alike: weight them.");

    /// <summary>A law of scatter in words, with what showed it.</summary>
    public static string Words(NoiseLaw law)
        => (law.Kind switch
        {
            NoiseKind.Constant => "is the same at every level",
            NoiseKind.Proportional => "grows in proportion to the level",
            _ => "has a constant part and one in proportion to the level",
        }) + (law.Evidence switch
        {
            NoiseEvidence.Replicates => ", by replicates",
            NoiseEvidence.ReplicatesAndBlanks => ", by replicates and blanks",
            NoiseEvidence.Residuals => ", by residuals",
            NoiseEvidence.ResidualsAndBlanks => ", by residuals and blanks",
            _ => "",
        });

    /// <summary>One reading lies far from the curve.</summary>
    public static Finding OffStandard(StandardReading s, double sd, double with, double without, string unit)
        => Of("HF-443", Weight.Caution, $"A reading of the {s.Level:G4} {unit} standard lies {sd:G2} s off; slope {with:G4}, without it {without:G4}. Check its preparation.", s.Id);

    /// <summary>A level that does not read back.</summary>
    public static Finding LevelFailed(BackCalculated level, string unit)
        => Of("HF-443", Weight.Caution, $"The {level.Level:G4} {unit} standard reads back {level.ErrorPercent:+0.0;-0.0} % off (allowed {(level.IsLowest ? 20 : 10)} %): prepare it again.");

    /// <summary>A zero standard typed in, not measured.</summary>
    public static Finding TypedZero()
        => Plain("HF-443", Weight.Caution, "The zero standard reads exactly 0 each time: if the blank was already subtracted, this point is no measurement. Enter raw readings.");

    /// <summary>No usable slope.</summary>
    public static Finding NoSlope(string why)
        => Of("HF-444", Weight.Stop, $"There is no calibration: {why}. Read the standards again before any sample.");

    /// <summary>A result below the critical value.</summary>
    public static Finding NotDetected(string sample, double found, double limit, string unit)
        => Of("HF-445", Weight.Note, $"{sample} is not detected: < {limit:G3} {unit}. The signed value {found:G3} stays for means and fits.", sample);

    /// <summary>A result between the critical value and the detection limit.</summary>
    public static Finding BarelyDetected(string sample, double found, double limit, string unit)
        => Of("HF-445", Weight.Caution, $"{sample} reads {found:G3} {unit}, detected but below the detection limit {limit:G3} {unit}: too uncertain to rest a claim on.", sample);

    /// <summary>A limit from few blanks.</summary>
    public static Finding FewBlanks(int n, double low, double high)
        => Of("HF-445", Weight.Caution, $"The detection limit rests on {n} blanks and may be {low:G2} to {high:G3} times as large. Read ten independent blanks.");

    /// <summary>Blanks that say nothing about scatter.</summary>
    public static Finding BlanksWithoutScatter(int n)
        => Of("HF-445", Weight.Caution, $"{n} blank readings show no scatter: the detection limit is taken from the calibration line. Read ten independent blanks.");

    /// <summary>A sample that scatters more than the standards.</summary>
    public static Finding LessRepeatable(string sample, double f, double critical)
        => Of("HF-446", Weight.Caution, $"{sample} is less repeatable than the standards (variance ratio {f:G3} above {critical:G3}): its own scatter is used. Look for bubbles or particles.", sample);

    /// <summary>A reading below the blank by more than chance.</summary>
    public static Finding BelowBlank(string sample, double found, double u, string unit)
        => Of("HF-446", Weight.Caution, $"{sample} reads {found:G3} ± {u:G2} {unit}, below zero by more than chance: check baseline and blank.", sample);

    /// <summary>A sensitivity far from the table's.</summary>
    public static Finding Insensitive(double found, FlameLine line)
        => Of("HF-447", Weight.Caution, $"{line.Element} {line.WavelengthNm:0.0} nm: 1 % absorption needs {found:G3} mg/L, usually {line.Characteristic:G3}. Lamp, flame, uptake or stock is off.");

    /// <summary>All standards from one stock.</summary>
    public static Finding OneStock(string stock)
        => Of("HF-447", Weight.Caution, $"All standards come from {stock}: an error of that stock is invisible. Read a check standard from a second source.");

    /// <summary>A curve from another day.</summary>
    public static Finding Old(double days)
        => Of("HF-447", Weight.Caution, $"The curve is {days:G3} days older than the samples: it is not this run's line. Read the standards again.");

    /// <summary>Additions shorter than the way back to the sample.</summary>
    public static Finding LongExtrapolation(string run, double native, double last)
        => Of("HF-403", Weight.Caution, $"{run}: the last addition ({last:G3}) is less than the native amount ({native:G3}): the extrapolation is longer than the range. Add more.", run);

    /// <summary>Additions that bend.</summary>
    public static Finding BentAdditions(string run)
        => Of("HF-441", Weight.Stop, $"{run}: the additions bend, so carrying the line back to zero is not allowed. Use smaller additions.", run);

    /// <summary>A check standard outside its window.</summary>
    public static Finding CheckFailed(string id, double percent)
        => Of("HF-448", Weight.Stop, $"Check standard {id} reads {percent:0.0} % of its value (allowed 90 to 110 %): recalibrate, rerun samples since the last pass.", id);

    /// <summary>Duplicates that do not agree.</summary>
    public static Finding DuplicatesApart(string id, Duplicates pair)
        => pair.IsNearLimit
            ? Of("HF-448", Weight.Caution, $"Duplicates of {id} differ by {Math.Abs(pair.First - pair.Second):G2}, more than the detection limit {pair.Limit:G2}. Repeat both.", id)
            : Of("HF-448", Weight.Caution, $"Duplicates of {id} differ by {pair.RelativeDifferencePercent:0.0} % (allowed 20 %). Repeat both.", id);

    /// <summary>A spike that cannot show anything.</summary>
    public static Finding SpikeTooSmall(string id, double added, double native, double u)
        => Of("HF-448", Weight.Stop, $"The spike of {id} ({added:G3}) is too small beside {native:G3} ± {u:G2}: no recovery. Spike one to three times the native amount.", id);

    /// <summary>A recovery outside its window.</summary>
    public static Finding RecoveryOutside(string id, SpikeRecovery recovery)
        => Of("HF-448", Weight.Caution, $"Recovery of {id} is {100 * recovery.Recovery.Value:0.0} % (allowed {100 * recovery.Low:0} to {100 * recovery.High:0} %): matrix or loss. Try standard additions.", id);

    /// <summary>A slope that moved.</summary>
    public static Finding Drifted(string run, Drift drift)
        => drift.Remedy == DriftRemedy.Interpolate
            ? Of("HF-448", Weight.Caution, $"The slope of {run} drifted by {100 * drift.Relative:+0.0;-0.0} %: interpolate it in time, or rerun.", run)
            : Of("HF-448", Weight.Stop, $"The slope of {run} drifted by {100 * drift.Relative:+0.0;-0.0} %, more than 10 %: the run is refused. Read it again.", run);

    /// <summary>A blank that remembers the sample before.</summary>
    public static Finding CarriedOver(string id, double found, double limit)
        => Of("HF-448", Weight.Caution, $"Blank {id} after the highest sample reads {found:G3}, above the detection limit {limit:G3}: carry-over. Rinse longer, read again.", id);

    /// <summary>A blank with metal in it.</summary>
    public static Finding Contaminated(string id, double found, double limit)
        => Of("HF-448", Weight.Stop, $"Blank {id} reads {found:G3}, above the detection limit {limit:G3}, without metal in the step: contamination. Find it first.", id);

    /// <summary>A broken rule of the control chart.</summary>
    public static Finding OutOfControl(ControlSignal signal)
        => Of("HF-448", Weight.Stop, $"Check standard, run {signal.Run + 1}: {Words(signal.Rule)}. The method has changed: stop and find out why.");

    /// <summary>Two dilutions that do not agree.</summary>
    public static Finding DilutionsDisagree(string sample, double first, double second)
        => Of("HF-446", Weight.Caution, $"Two dilutions of {sample} give {first:G4} and {second:G4}, apart by more than their uncertainty: matrix effect or a slip.", sample);

    private static string Words(ControlRule rule) => rule switch
    {
        ControlRule.OneBeyondThree => "beyond three standard deviations",
        ControlRule.TwoOfThreeBeyondTwo => "two of three beyond two standard deviations",
        _ => "eight in a row on one side",
    };

    private static Finding Of(string code, Weight weight, FormattableString sentence, string? concerns = null)
        => Plain(code, weight, sentence.ToString(CultureInfo.InvariantCulture), concerns);

    private static Finding Plain(string code, Weight weight, string sentence, string? concerns = null)
        => concerns is null ? Finding.Of(code, weight, sentence) : Finding.Of(code, weight, sentence, concerns);
}
