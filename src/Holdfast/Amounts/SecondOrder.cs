namespace Holdfast.Amounts;

/// <summary>Whether a formula bends so much within the uncertainty of its inputs that the first-order law misleads (JCGM 100, 5.1.2 note).</summary>
/// <remarks>
/// In standard units z of the independent sources the added variance is Σ over i, j of (½·g_ij² + g_i·g_ijj), for normal sources. The
/// derivatives are central differences; they are exact for formulas up to second degree.
/// </remarks>
/// <param name="FirstOrder">Standard uncertainty by the first-order law, in the unit of the result.</param>
/// <param name="WithSecondOrder">Standard uncertainty with the second-order terms; null when they make the variance negative.</param>
public sealed record SecondOrder(double FirstOrder, double? WithSecondOrder)
{
    private const double Step = 0.25;

    /// <summary>A larger change asks for Monte Carlo; share.</summary>
    public const double LargestChange = 0.10;

    /// <summary>True when the first-order law is not enough here.</summary>
    public bool NeedsMonteCarlo
        => WithSecondOrder is not { } second || Math.Abs(second - FirstOrder) > LargestChange * FirstOrder || (FirstOrder == 0 && second > 0);

    /// <summary>Checks a formula.</summary>
    /// <param name="inputs">Its inputs.</param>
    /// <param name="formula">The formula, on plain numbers in the order of the inputs.</param>
    public static SecondOrder Of(ReadOnlySpan<Measured> inputs, Func<ReadOnlySpan<double>, double> formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var columns = new SortedDictionary<string, double[]>(StringComparer.Ordinal);
        var centres = new double[inputs.Length];
        for (var i = 0; i < inputs.Length; i++)
        {
            centres[i] = inputs[i].Value;
            foreach (var c in inputs[i].Contributions)
            {
                if (!columns.TryGetValue(c.Source.Id, out var column))
                    columns[c.Source.Id] = column = new double[inputs.Length];
                column[i] = c.D;
            }
        }

        double[][] d = [.. columns.Values];
        var x = new double[inputs.Length];
        double At(int i, double zi, int j, double zj)
        {
            for (var k = 0; k < x.Length; k++)
                x[k] = centres[k] + d[i][k] * zi + d[j][k] * zj;
            return formula(x);
        }

        var centre = formula(centres);
        double first = 0, second = 0;
        for (var i = 0; i < d.Length; i++)
        {
            double up = At(i, Step, i, 0), down = At(i, -Step, i, 0);
            var slope = (up - down) / (2 * Step);

            // The slope is extrapolated from two step widths, so that a cubic term does not leak into it.
            slope = (4 * slope - (At(i, 2 * Step, i, 0) - At(i, -2 * Step, i, 0)) / (4 * Step)) / 3;
            first += slope * slope;
            for (var j = 0; j < d.Length; j++)
            {
                double bend, turn;
                if (i == j)
                {
                    bend = (up - 2 * centre + down) / (Step * Step);
                    turn = (At(i, 2 * Step, i, 0) - 2 * up + 2 * down - At(i, -2 * Step, i, 0)) / (2 * Step * Step * Step);
                }
                else
                {
                    double pp = At(i, Step, j, Step), pm = At(i, Step, j, -Step), mp = At(i, -Step, j, Step), mm = At(i, -Step, j, -Step);
                    bend = (pp - pm - mp + mm) / (4 * Step * Step);
                    turn = (pp - 2 * up + pm - (mp - 2 * down + mm)) / (2 * Step * Step * Step);
                }

                second += 0.5 * bend * bend + slope * turn;
            }
        }

        return new(Math.Sqrt(first), first + second >= 0 ? Math.Sqrt(first + second) : null);
    }
}
