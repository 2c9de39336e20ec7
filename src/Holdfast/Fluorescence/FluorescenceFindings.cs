using System.Globalization;
using Holdfast.Statistics;

namespace Holdfast.Fluorescence;

/// <summary>What fluorescence readings say about themselves. Codes HF-570 to HF-585.</summary>
internal static class FluorescenceFindings
{
    /// <summary>The code of constants that are not real; a law that carries it is not ranked.</summary>
    public const string NotReal = "HF-570";

    /// <summary>A sum and a product that no two constants have.</summary>
    public static Finding ConstantsNotReal(double sum, double product)
        => Of(NotReal, Weight.Stop, $"Sum {sum:G3} and product {product:G3} belong to no two real constants: static with dynamic quenching is excluded. Try the sphere of action.");

    /// <summary>A level without light cannot weigh in a relative fit.</summary>
    public static Finding SignalNotAboveZero(double level, double mean, string unit)
        => mean > 0
            ? Of("HF-571", Weight.Stop, $"The mean signal at {level:G4} {unit} is {mean:G4}, which no instrument shows: no quenching curve. Check the column and its unit.")
            : Of("HF-571", Weight.Stop, $"The mean signal at {level:G4} {unit} is not above zero after correction: no quenching curve. Check blank and dark readings.");

    /// <summary>The detector runs out of range.</summary>
    public static Finding Saturated(string id, double raw, double range)
        => Of("HF-572", Weight.Stop, $"{id} reads {raw:G4} of at most {range:G4}: the detector saturates above 80 %. Narrow the slits and read again.", id);

    /// <summary>Too much light is absorbed for any formula.</summary>
    public static Finding InnerFilterRefused(string id, double sum)
        => Of("HF-573", Weight.Stop, $"{id} absorbs {sum:G3} at excitation and emission together, above 0.7: no corrected signal. Dilute, or use a thin cell.", id);

    /// <summary>Much light is absorbed; both formulas are shown.</summary>
    public static Finding InnerFilterLarge(string id, double sum, double centre, double whole)
        => Of("HF-573", Weight.Caution, $"{id} absorbs {sum:G3} in all: the correction is {centre:G4} or {whole:G4}, by where the cell is seen. Dilute if you can.", id);

    /// <summary>The straight line does not start at 1.</summary>
    public static Finding InterceptNotOne(double intercept, double u)
        => Of("HF-574", Weight.Caution, $"F0/F begins at {intercept:G4} ± {u:G2}, not at 1: F0 and the series do not belong together, or the curve bends.");

    /// <summary>A straightened plot is a check, not a result.</summary>
    public static Finding StraightPlotMisleads(string name)
        => Of("HF-575", Weight.Note, $"{name} is drawn as a check: it takes added for free quencher and misses the constant even without noise.");

    /// <summary>A straightened plot without points.</summary>
    public static Finding NoStraightPlot(string name, int points)
        => Of("HF-575", Weight.Note, $"{name} has {points} usable points; it needs two levels with less light than F0.");

    /// <summary>Faster than diffusion.</summary>
    public static Finding FasterThanDiffusion(double kq)
        => Of("HF-576", Weight.Caution, $"kq is {kq:0.0e0} L/(mol·s), above 2e10: collisions alone cannot do this. Think of complexes, inner filter or transfer.");

    /// <summary>Slower than diffusion says nothing.</summary>
    public static Finding DiffusionDoesNotDecide(double kq)
        => Of("HF-576", Weight.Note, $"kq is {kq:0.0e0} L/(mol·s), below 2e10: that decides nothing. Read lifetimes at the same levels, or vary the temperature.");

    /// <summary>Two regions of use.</summary>
    public static Finding TwoRegions(double at, double gain)
        => Of("HF-577", Weight.Note, $"Two lines meeting at {at:G4} beat one by {gain:G3} AICc. A smooth bend does the same: these are two regions, not two mechanisms.");

    /// <summary>No two regions.</summary>
    public static Finding OneSmoothCurve(double? gain)
        => gain is { } g
            ? Of("HF-577", Weight.Note, $"Two lines gain {g:G3} AICc over one, less than 4: one smooth curve describes the data.")
            : Of("HF-577", Weight.Note, $"Two lines cannot be weighed against one at so few points: one smooth curve describes the data.");

    /// <summary>Too few points for two lines.</summary>
    public static Finding TooFewForTwoLines(int points)
        => Of("HF-577", Weight.Note, $"{points} points leave no three levels on either side of a break: two lines are not looked for.");

    /// <summary>Few separate blanks.</summary>
    public static Finding FewPreparations(int preparations)
        => Of("HF-578", Weight.Caution, $"The detection limit rests on {preparations} separately prepared blanks; repeated reads of one scatter too little. Prepare ten.");

    /// <summary>A limit lower than anything that was read.</summary>
    public static Finding LimitBelowLowest(double limit, double lowest, string unit)
        => Of("HF-578", Weight.Caution, $"The detection limit is {limit:G3} {unit}, but the lowest level read is {lowest:G3} {unit}: not shown. Read one to two times the limit.");

    /// <summary>The drift vessel follows no smooth law.</summary>
    public static Finding DriftNotSmooth()
        => Of("HF-579", Weight.Caution, $"The drift vessel follows no smooth law: the series cannot be corrected by it. Close the shutter between reads and repeat.");

    /// <summary>The drift is as large as what is claimed.</summary>
    public static Finding DriftOutweighs(double loss, double effect, double u)
        => Of("HF-579", Weight.Caution, $"Drift over the series is {100 * loss:0.0} %, more than three times the uncertainty of the smallest effect ({100 * effect:0.0} ± {100 * u:0.0} %): not shown.");

    /// <summary>An ion without replicates.</summary>
    public static Finding NoReplicates(string ion, int n)
        => Of("HF-580", Weight.Caution, $"{ion} was read in {n} vessels without scatter: its interference is not judged. Read three separate vessels.", ion);

    /// <summary>Too few readings of a response.</summary>
    public static Finding TooFewForResponse(int n)
        => Of("HF-581", Weight.Stop, $"{n} readings are too few for a response time. Read eight times or more, three of them before the plateau.");

    /// <summary>The signal still moves at the end.</summary>
    public static Finding NoPlateau()
        => Of("HF-581", Weight.Stop, $"The signal still moves at the last readings: no plateau, no response time. Read on.");

    /// <summary>The plateau was there before the readings were.</summary>
    public static Finding FasterThanReadings(double reached, string unit)
        => Of("HF-581", Weight.Caution, $"Fewer than three readings lie before {reached:G3} {unit}: the response is at most that slow. Read faster at the start.");

    /// <summary>A window with too few points.</summary>
    public static Finding WindowTooNarrow(double from, double to, int points)
        => Of("HF-582", Weight.Stop, $"Between {from:G4} and {to:G4} nm stand {points} points; a peak needs five. Widen the window.");

    /// <summary>A band that goes on outside the window.</summary>
    public static Finding MaximumAtTheEdge(double at)
        => Of("HF-582", Weight.Stop, $"The largest intensity stands at the edge of the window ({at:G4} nm): the band goes on outside. Widen the window.");

    /// <summary>Added is not free.</summary>
    public static Finding QuencherTakenUp(double level, double share, string unit)
        => Of("HF-583", Weight.Caution, $"At {level:G4} {unit} the sorbent takes up {100 * share:0} % of the quencher: plot against what is free, not what was added.");

    /// <summary>A coloured quencher without absorbances.</summary>
    public static Finding ColouredWithoutAbsorbance(string quencher)
        => Of("HF-584", Weight.Caution, $"{quencher} is coloured and no absorbance was read: quenching is not separated from absorption. Read A at excitation and emission.", quencher);

    /// <summary>The water changes the response.</summary>
    public static Finding MatrixChangesSlope(Estimate slope)
        => Of("HF-585", Weight.Caution, $"Found rises {slope.Value:G3} per added (95 % {slope.Interval(0.95).Low:G3} to {slope.Interval(0.95).High:G3}), not 1: the water changes the response. Use standard additions.");

    /// <summary>Too few additions.</summary>
    public static Finding TooFewSpikes(int levels)
        => Of("HF-585", Weight.Stop, $"{levels} levels of addition give no recovery. Read the water as it is and at three additions, three vessels each.");

    private static Finding Of(string code, Weight weight, FormattableString sentence, string? concerns = null)
    {
        var words = sentence.ToString(CultureInfo.InvariantCulture);
        return concerns is null ? Finding.Of(code, weight, words) : Finding.Of(code, weight, words, concerns);
    }
}
