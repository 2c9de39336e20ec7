using System.Collections.Immutable;

namespace Holdfast.Diffraction;

/// <summary>A cubic cell that explains a list of lines.</summary>
/// <param name="Lattice">"P", "I", "F" or "F (diamond)".</param>
/// <param name="A">Cell edge from all lines, ångström.</param>
/// <param name="N">h² + k² + l² of each line.</param>
/// <param name="Missing">Allowed values of N up to the last line that were not seen.</param>
/// <remarks>sin²θ is proportional to N = h² + k² + l² (common practice). P lacks 7, 15, 23…; I has even N; F unmixed h, k, l; diamond F without 4n + 2 sums.</remarks>
public sealed record CubicIndexing(string Lattice, double A, ImmutableArray<int> N, ImmutableArray<int> Missing)
{
    private const int LargestFirst = 8;
    private const double Tolerance = 0.02;

    // Beyond this, neighbouring values of N lie closer than the lines are measured.
    private const int LargestN = 400;

    // The least part of the allowed lines that must have been seen: a cell so large that it explains any line explains none.
    private const double LeastSeen = 0.5;

    /// <summary>All cubic cells that explain every line, those that leave fewest allowed lines unseen first; empty when there is none.</summary>
    /// <param name="twoTheta">2θ of the lines, degrees, three or more.</param>
    /// <param name="u">Standard uncertainty of 2θ, degrees.</param>
    /// <param name="wavelength">Wavelength, ångström.</param>
    public static ImmutableArray<CubicIndexing> Of(IReadOnlyList<double> twoTheta, double u, double wavelength)
    {
        ArgumentNullException.ThrowIfNull(twoTheta);
        if (twoTheta.Count < 3)
            throw new ArgumentException("Three lines at least.", nameof(twoTheta));
        double[] theta = [.. twoTheta.Order().Select(Bragg.Theta)];
        double[] q = [.. theta.Select(t => Math.Pow(Math.Sin(t), 2))];
        var found = new List<CubicIndexing>();
        foreach (var (name, allowed) in Lattices)
        {
            foreach (var first in allowed.Where(n => n <= LargestFirst))
            {
                var n = new int[q.Length];
                var fits = true;
                for (var i = 0; i < q.Length && fits; i++)
                {
                    var value = first * q[i] / q[0];
                    // u(sin²θ)/sin²θ = 2·u(θ)/tan θ, of this line and of the first.
                    var relative = u * Math.PI / 180 * Math.Sqrt(Math.Pow(1 / Math.Tan(theta[i]), 2) + Math.Pow(1 / Math.Tan(theta[0]), 2));
                    var tolerance = Math.Max(Tolerance * Math.Min(value, 25), 3 * relative * value);
                    n[i] = allowed.Where(a => Math.Abs(a - value) <= Math.Min(tolerance, 0.5)).OrderBy(a => Math.Abs(a - value)).FirstOrDefault();
                    fits = n[i] > 0 && (i == 0 || n[i] > n[i - 1]);
                }

                if (!fits)
                    continue;
                // Least squares of q = (λ/2a)²·N; a from all lines.
                var slope = q.Zip(n, (x, y) => x * y).Sum() / n.Sum(x => (double)x * x);
                ImmutableArray<int> missing = [.. allowed.Where(a => a < n[^1] && !n.Contains(a))];
                if (n.Length >= LeastSeen * (n.Length + missing.Length))
                    found.Add(new(name, wavelength / (2 * Math.Sqrt(slope)), [.. n], missing));
            }
        }

        return [.. found.OrderBy(f => f.Missing.Length).ThenBy(f => f.A)];
    }

    private static IEnumerable<(string Name, int[] Allowed)> Lattices
        => [("F (diamond)", Sums(Diamond)), ("F", Sums(Unmixed)), ("I", Sums((h, k, l) => (h + k + l) % 2 == 0)), ("P", Sums((_, _, _) => true))];

    private static bool Unmixed(int h, int k, int l) => h % 2 == k % 2 && k % 2 == l % 2;

    private static bool Diamond(int h, int k, int l) => Unmixed(h, k, l) && (h % 2 == 1 || (h + k + l) % 4 == 0);

    private static int[] Sums(Func<int, int, int, bool> allowed)
    {
        var sums = new SortedSet<int>();
        for (var h = 0; h * h <= LargestN; h++)
        {
            for (var k = 0; k <= h && h * h + k * k <= LargestN; k++)
            {
                for (var l = 0; l <= k; l++)
                {
                    if (h * h + k * k + l * l is var n && n is > 0 and <= LargestN && allowed(h, k, l))
                        sums.Add(n);
                }
            }
        }

        return [.. sums];
    }
}
