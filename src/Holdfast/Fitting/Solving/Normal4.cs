using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Holdfast.Amounts;

namespace Holdfast.Fitting.Solving;

/// <summary>
/// Normal equations of at most four parameters, gathered in one pass over the data: J′WJ, J′Wr and the sum of squares, each row of
/// the matrix in one vector register. They square the condition number, so they serve only where that is small; see <see cref="Refit"/>.
/// </summary>
[InlineArray(Width * (Width + 1))]
internal struct Normal4
{
    /// <summary>Doubles in a register: the most parameters.</summary>
    public const int Width = 4;

    /// <summary>Where J′Wr begins, after the rows of J′WJ.</summary>
    public const int Gradient = Width * Width;

    private double first;

    /// <summary>One pass over the data.</summary>
    /// <param name="prediction">The model.</param>
    /// <param name="seeds">Parameters, each with its slope by its own coordinate.</param>
    /// <param name="y">Readings.</param>
    /// <param name="w">Weights; an observation of weight 0 is passed over.</param>
    /// <param name="normal">Receives J′WJ and J′Wr.</param>
    /// <returns>The weighted sum of squares.</returns>
    public static double Gather<TPrediction>(
        in TPrediction prediction,
        ReadOnlySpan<Slopes> seeds,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> w,
        out Normal4 normal)
        where TPrediction : struct, IPrediction
    {
        Vector256<double> a0 = default, a1 = default, a2 = default, a3 = default, g = default;
        var sum = 0.0;
        for (var i = 0; i < y.Length; i++)
        {
            if (w[i] == 0)
                continue;
            var f = prediction.At(i, seeds);
            var r = y[i] - f.Value;
            var wr = w[i] * r;
            sum += wr * r;
            var slopes = f.Partials;
            var weighted = slopes * w[i];
            a0 += slopes * Vector256.Create(weighted.GetElement(0));
            a1 += slopes * Vector256.Create(weighted.GetElement(1));
            a2 += slopes * Vector256.Create(weighted.GetElement(2));
            a3 += slopes * Vector256.Create(weighted.GetElement(3));
            g += slopes * Vector256.Create(wr);
        }

        Unsafe.SkipInit(out normal);
        Span<double> to = normal;
        a0.CopyTo(to);
        a1.CopyTo(to[Width..]);
        a2.CopyTo(to[(2 * Width)..]);
        a3.CopyTo(to[(3 * Width)..]);
        g.CopyTo(to[Gradient..]);
        return sum;
    }
}
