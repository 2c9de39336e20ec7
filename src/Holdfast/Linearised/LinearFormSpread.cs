using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Statistics;

namespace Holdfast.Linearised;

/// <summary>
/// How far the capacity of a Langmuir isotherm would scatter by each linear form and by the direct fit, were the isotherm known and only the readings
/// uncertain: drawn at the study's own levels, so that the choice of form can be discussed before it is made.
/// </summary>
/// <param name="Form">Name of the plot, or "direct".</param>
/// <param name="Median">Median capacity over the drawn sets, in the unit of uptake.</param>
/// <param name="Spread">Robust standard deviation, 1.4826 times the median absolute deviation, in the unit of uptake.</param>
/// <param name="ShareOff">Share of sets whose capacity is off by more than 20 %, or negative.</param>
/// <param name="Sets">Number of sets that counted: those without a negative reading, which no logarithm or reciprocal can show.</param>
public sealed record LinearFormSpread(string Form, double Median, double Spread, double ShareOff, int Sets)
{
    /// <summary>Name of the row of the direct fit.</summary>
    public const string Direct = "direct";

    /// <summary>Draws sets around a Langmuir isotherm and takes the capacity from each by every linear form and directly.</summary>
    /// <param name="levels">Equilibrium concentrations above 0, at least three different.</param>
    /// <param name="qm">Capacity held true, above 0.</param>
    /// <param name="k">Affinity held true, one over concentration, above 0.</param>
    /// <param name="scatter">Standard deviation of an uptake, from that uptake, in its unit.</param>
    /// <param name="sets">Number of sets.</param>
    /// <param name="seed">Seed of the study.</param>
    /// <returns>The direct fit first, then the forms in the order of <see cref="LinearForms.All"/>.</returns>
    public static IReadOnlyList<LinearFormSpread> OfLangmuir(
        IReadOnlyList<double> levels, double qm, double k, Func<double, double> scatter, int sets, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(levels);
        ArgumentNullException.ThrowIfNull(scatter);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(qm);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(k);
        ArgumentOutOfRangeException.ThrowIfLessThan(sets, 1);
        var chance = new SeededStream(seed, "linear forms of Langmuir");
        var forms = LinearForms.Of(Langmuir.Card.Name).ToArray();
        double[] c = [.. levels];
        double[] truth = [.. c.Select(x => Langmuir.Value<Number>(x, [qm, k]).Value)];
        var options = new FitOptions { Profiles = false, Scan = false, Starts = [[qm, k]] };
        var found = Enumerable.Range(0, forms.Length + 1).Select(_ => new List<double>(sets)).ToArray();
        for (var set = 0; set < sets; set++)
        {
            double[] q = [.. truth.Select(v => v + scatter(v) * chance.Normal())];
            if (q.Any(v => v <= 0))
                continue;

            // A fit that ran away says "no capacity", which is off by more than 20 % and has no finite size.
            var fit = Fit.Of<Langmuir>(new(c, q), options);
            found[0].Add(fit.IsFit ? fit["qm"].Value : double.PositiveInfinity);
            for (var i = 0; i < forms.Length; i++)
                found[i + 1].Add(forms[i].Display(c, q).Value is { } line ? line.Parameters[0] : double.PositiveInfinity);
        }

        return [.. found.Select((values, i) => Row(i == 0 ? Direct : forms[i - 1].Name, values, qm))];
    }

    private static LinearFormSpread Row(string form, List<double> values, double qm)
    {
        if (values.Count == 0)
            throw new ArgumentException("Every drawn set held a negative reading; the scatter is too large for linear forms.", nameof(values));
        var median = MedianOf(values);
        return new(form, median, 1.4826 * MedianOf(values.Select(v => Math.Abs(v - median))), values.Count(v => !(Math.Abs(v / qm - 1) <= 0.2)) / (double)values.Count, values.Count);
    }

    private static double MedianOf(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
