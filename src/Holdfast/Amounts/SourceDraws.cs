using Holdfast.Statistics;

namespace Holdfast.Amounts;

/// <summary>Draws of the independent sources behind a set of inputs, and the inputs that follow from each draw.</summary>
internal sealed class SourceDraws
{
    private readonly SeededStream stream;
    private readonly Source[] sources;
    private readonly int[] groups;
    private readonly double[] groupDegrees;
    private readonly double[] groupFactors;
    private readonly double[] centres;
    private readonly (int Source, double D)[][] terms;
    private readonly double[] standard;

    /// <summary>Prepares the draws; sources are drawn in the order of their ids, whatever the order of the inputs.</summary>
    public SourceDraws(ReadOnlySpan<Measured> inputs, SeededStream stream)
    {
        this.stream = stream;
        var found = new SortedDictionary<string, Source>(StringComparer.Ordinal);
        foreach (var input in inputs)
        {
            foreach (var c in input.Contributions)
                found[c.Source.Id] = c.Source;
        }

        sources = [.. found.Values];
        standard = new double[sources.Length];
        var order = found.Keys.Select((id, at) => (id, at)).ToDictionary(p => p.id, p => p.at, StringComparer.Ordinal);
        centres = new double[inputs.Length];
        terms = new (int, double)[inputs.Length][];
        for (var i = 0; i < inputs.Length; i++)
        {
            centres[i] = inputs[i].Value;
            terms[i] = [.. inputs[i].Contributions.ToArray().Select(c => (order[c.Source.Id], c.D))];
        }

        // Sources of one fit share the fit's unknown scatter: one chi-square for the group makes them a joint t.
        var names = sources.Select(s => s.GroupOrSelf).Distinct(StringComparer.Ordinal).ToList();
        groups = [.. sources.Select(s => names.IndexOf(s.GroupOrSelf))];
        groupDegrees = [.. names.Select(n => sources.Where(s => s.GroupOrSelf == n && s.Shape == Shape.Normal).Select(s => s.DegreesOfFreedom).DefaultIfEmpty(double.PositiveInfinity).Min())];
        groupFactors = new double[names.Count];
        HasInfiniteVariance = groupDegrees.Any(d => d <= 2);
        Findings = HasInfiniteVariance
            ? [Finding.Of("HF-493", Weight.Caution, "An input rests on three readings or fewer: its spread is not known. Pool readings of the same kind first.")]
            : [];
    }

    /// <summary>True when an input has so few degrees of freedom that its t has no variance.</summary>
    public bool HasInfiniteVariance { get; }

    /// <summary>What must be said about the inputs.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The next draw of all inputs.</summary>
    /// <param name="inputs">Receives the inputs, each in its own unit.</param>
    public void Next(Span<double> inputs)
    {
        for (var g = 0; g < groupFactors.Length; g++)
            groupFactors[g] = double.IsPositiveInfinity(groupDegrees[g]) ? 1 : Math.Sqrt(groupDegrees[g] / ChiSquare(groupDegrees[g]));
        for (var s = 0; s < sources.Length; s++)
        {
            standard[s] = sources[s].Shape switch
            {
                Shape.Rectangular => Math.Sqrt(3) * (2 * stream.Uniform() - 1),
                Shape.Triangular => Math.Sqrt(6) * (stream.Uniform() + stream.Uniform() - 1),
                Shape.Arcsine => Math.Sqrt(2) * Math.Cos(Math.PI * stream.Uniform()),
                _ => stream.Normal() * groupFactors[groups[s]],
            };
        }

        for (var i = 0; i < inputs.Length; i++)
        {
            var sum = centres[i];
            foreach (var (source, d) in terms[i])
                sum += d * standard[source];
            inputs[i] = sum;
        }
    }

    // G. Marsaglia and W. W. Tsang, ACM Trans. Math. Softw. 26 (2000) 363–372: gamma draws by squeezed rejection; below shape 1 by a power of a uniform.
    private double ChiSquare(double degrees)
    {
        var shape = degrees / 2;
        var boost = 1.0;
        if (shape < 1)
        {
            boost = Math.Pow(1 - stream.Uniform(), 1 / shape);
            shape++;
        }

        var d = shape - 1.0 / 3;
        var c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var x = stream.Normal();
            var v = 1 + c * x;
            if (v <= 0)
                continue;
            v = v * v * v;
            if (Math.Log(1 - stream.Uniform()) < 0.5 * x * x + d * (1 - v + Math.Log(v)))
                return 2 * d * v * boost;
        }
    }
}
