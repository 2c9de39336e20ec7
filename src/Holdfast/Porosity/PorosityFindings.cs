using System.Globalization;

namespace Holdfast.Porosity;

/// <summary>What a nitrogen isotherm says about itself. Codes HF-710 to HF-718.</summary>
internal static class PorosityFindings
{
    /// <summary>The code of distributions that show no sizes.</summary>
    public const string NoSizes = "HF-716";

    /// <summary>Points that cannot be on a branch.</summary>
    public static Finding Dropped(int count, string why)
        => Of("HF-710", Weight.Note, $"{count} {(count == 1 ? "point is" : "points are")} left out: {why}.");

    /// <summary>Amounts that no solid holds.</summary>
    public static Finding Impossible(int count)
        => Of("HF-710", Weight.Caution, $"{count} {(count == 1 ? "point is" : "points are")} left out: more than {Nitrogen.LargestUptakeStp:0} cm3(STP)/g, which no solid holds. Check the unit and the mass.");

    /// <summary>Less nitrogen at a higher pressure.</summary>
    public static Finding AmountFalls(double at)
        => Of("HF-711", Weight.Caution, $"The amount falls while p/p0 rises above {at:0.###}: leak, drift or loss of sample. No volume is taken above that point.");

    /// <summary>Too few points for a line.</summary>
    public static Finding TooFewForBet(int points)
        => Of("HF-712", Weight.Stop, $"{points} adsorption points up to p/p0 {BetArea.UpperEnd:0.0#} are too few for a BET area; {BetArea.FewestPoints} are needed. Measure more there.");

    /// <summary>No window passes the criteria.</summary>
    public static Finding NoConsistentWindow(int tested, string failing)
        => Of("HF-712", Weight.Stop, $"None of {tested} windows is consistent with BET ({failing}): no area. Look at the isotherm for a step, or measure more points at low pressure.");

    /// <summary>Amounts at the edge of what the method sees.</summary>
    public static Finding UptakeTooSmall(double total)
        => Of("HF-712", Weight.Stop, $"The whole sample has about {total:0.##} m2, under {BetArea.SmallestTotal:0.#} m2: nitrogen cannot tell its area. Weigh in more, or use krypton.");

    /// <summary>Few points in the chosen window.</summary>
    public static Finding FewPoints(int points)
        => Of("HF-713", Weight.Caution, $"The BET window has {points} points; ten or more fix it well.");

    /// <summary>A total area that weighs little.</summary>
    public static Finding SmallTotal(double total)
        => Of("HF-713", Weight.Caution, $"The whole sample has about {total:0.##} m2; below {BetArea.SmallTotal:0.#} m2 the uncertainty grows quickly. Weigh in more.");

    /// <summary>A weak knee.</summary>
    public static Finding WeakKnee(double c)
        => Of("HF-713", Weight.Caution, $"C is {c:0.#}, below {BetArea.WeakKnee:0}: the isotherm has hardly a knee and the full layer is poorly defined.");

    /// <summary>No knee at all.</summary>
    public static Finding NoKnee(double c)
        => Of("HF-712", Weight.Stop, $"C is {c:0.##}, below {BetArea.NoKnee:0}: the isotherm has no knee, so no full layer and no area can be told.");

    /// <summary>Micropores, or sites of another kind.</summary>
    public static Finding StrongSites(double c)
        => Of("HF-713", Weight.Caution, $"C is {c:0}, above {BetArea.StrongSites:0}: micropores or special sites. The value is an apparent BET area; look at the t-plot.");

    /// <summary>The usual window would mislead.</summary>
    public static Finding FixedRangeRefused(double c)
        => Of("HF-713", Weight.Note, double.IsFinite(c) ? $"The usual window 0.05 to 0.30 gives C = {c:0.#}: it must not be used here." : (FormattableString)$"The usual window 0.05 to 0.30 makes no line: it must not be used here.");

    /// <summary>A t-plot that is no line.</summary>
    public static Finding NoTPlot(string why)
        => Of("HF-714", Weight.Caution, $"No micropore volume by the t-plot: {why}.");

    /// <summary>A negative intercept.</summary>
    public static Finding NegativeIntercept(double volume)
        => Of("HF-714", Weight.Caution, $"The t-plot's intercept is negative ({volume:0.####} cm3/g): no micropores, or its range lies in a step or in condensation.");

    /// <summary>External area above the whole.</summary>
    public static Finding ExternalAboveWhole(double external, double whole)
        => Of("HF-714", Weight.Caution, $"The external area by the t-plot, {external:0.#} m2/g, exceeds the BET area, {whole:0.#} m2/g: the two rest on different layers; take neither for exact.");

    /// <summary>A pore volume without a plateau.</summary>
    public static Finding NoPlateau(double rise)
        => Of("HF-715", Weight.Caution, $"From p/p0 0.90 to 0.99 the amount rises by {100 * rise:0} %: no plateau, so the pore volume at 0.95 is where the line was drawn, no property.");

    /// <summary>A branch that does not reach so far.</summary>
    public static Finding DoesNotReach(double at, double top)
        => Of("HF-715", Weight.Caution, $"The adsorption branch ends at p/p0 {top:0.###}: no pore volume at {at:0.##}. Measure up to 0.99.");

    /// <summary>An average that stands for nothing.</summary>
    public static Finding OddAverage(double diameter)
        => Of("HF-715", Weight.Caution, $"4V/A gives {diameter:0.##} nm, no diameter of a pore that nitrogen fills: check the units and the mass.");

    /// <summary>The closing of the loop looks like pores.</summary>
    public static Finding CavitationPeak(double diameter)
        => Of(NoSizes, Weight.Caution, $"The peak at {diameter:0.0} nm stands on the desorption branch alone: the loop closes there by cavitation. It is no pore of that size.");

    /// <summary>Kelvin does not hold here.</summary>
    public static Finding NotForKelvin(string type)
        => Of(NoSizes, Weight.Caution, $"A pore distribution by Kelvin's equation needs a type IV isotherm; this one is {type}. Take it as a picture, not as sizes.");

    /// <summary>Two areas that should agree.</summary>
    public static Finding AreasDisagree(double pores, double bet)
        => Of(NoSizes, Weight.Caution, $"The pores by BJH have {pores:0.#} m2/g, the BET area is {bet:0.#} m2/g, more than {100 * PoreSizes.AreasAgreeWithin:0} % apart: their sizes are not shown.");

    /// <summary>A loop that stays open.</summary>
    public static Finding OpenLoop(double gap)
        => Of("HF-717", Weight.Caution, $"The branches still differ by {100 * gap:0.#} % of the whole at p/p0 0.2: slow equilibrium, leak, swelling or irreversible uptake. No loop is named.");

    /// <summary>A saturation pressure that is no nitrogen's at its boiling point.</summary>
    public static Finding OddSaturation(double kilopascal)
        => Of("HF-718", Weight.Caution, $"p0 is {kilopascal:0.#} kPa, outside 95 to 106 kPa at the bath of nitrogen: impure bath, wrong gauge or unit, or a place high up. Check it.");

    private static Finding Of(string code, Weight weight, FormattableString sentence) => Finding.Of(code, weight, sentence.ToString(CultureInfo.InvariantCulture));
}
