using System.Diagnostics.CodeAnalysis;
using System.Text;

namespace Holdfast.Statistics;

/// <summary>
/// Random numbers that any program in any language can repeat: one stream for each purpose, so that drawing for a new purpose
/// never changes the draws of another.
/// </summary>
/// <remarks>
/// Start state = FNV-1a-64 of the purpose's name in UTF-8, XOR the seed (G. Fowler, L. C. Noll, K.-P. Vo). Step = SplitMix64
/// (G. L. Steele, D. Lea, C. H. Flood, Proc. OOPSLA 2014, 453–472). Normal draws follow G. E. P. Box and M. E. Muller,
/// Ann. Math. Stat. 29 (1958) 610–611, cosine branch, a fresh pair of uniforms each time and nothing kept back.
/// </remarks>
[SuppressMessage("Naming", "CA1711", Justification = "A stream of random numbers; nothing of System.IO is meant.")]
public sealed class SeededStream
{
    private const ulong FnvOffset = 14695981039346656037;
    private const ulong FnvPrime = 1099511628211;

    private ulong state;

    /// <summary>The stream of a purpose.</summary>
    /// <param name="seed">Seed of the plan or study.</param>
    /// <param name="purpose">What the numbers are for, for example the name of a series; case and spaces count.</param>
    public SeededStream(ulong seed, string purpose) => state = Hash(purpose) ^ seed;

    /// <summary>FNV-1a hash, 64 bits, of a text in UTF-8.</summary>
    /// <param name="text">Any text.</param>
    public static ulong Hash(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var hash = FnvOffset;
        foreach (var b in Encoding.UTF8.GetBytes(text))
            hash = unchecked((hash ^ b) * FnvPrime);
        return hash;
    }

    /// <summary>The next 64 random bits.</summary>
    public ulong NextBits()
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            var z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    /// <summary>Uniform on [0, 1), with 53 bits.</summary>
    public double Uniform() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Standard normal: mean 0, standard deviation 1; takes two uniforms.</summary>
    public double Normal()
    {
        var u1 = Uniform();
        var u2 = Uniform();
        return Math.Sqrt(-2 * Math.Log(1 - u1)) * Math.Cos(2 * Math.PI * u2);
    }

    /// <summary>A whole number from 0 to <paramref name="limit"/> − 1, all equally likely (by rejection).</summary>
    /// <param name="limit">How many numbers there are to choose from; at least 1.</param>
    public int Below(int limit)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, 1);
        var n = (ulong)limit;
        var uneven = unchecked(0 - n) % n;
        while (true)
        {
            var bits = NextBits();
            if (bits >= uneven)
                return (int)(bits % n);
        }
    }

    /// <summary>Puts the items in random order, every order equally likely (R. A. Fisher and F. Yates, from the last item down).</summary>
    /// <param name="items">The items; changed in place.</param>
    public void Shuffle<T>(Span<T> items)
    {
        for (var i = items.Length - 1; i > 0; i--)
        {
            var j = Below(i + 1);
            (items[i], items[j]) = (items[j], items[i]);
        }
    }
}
