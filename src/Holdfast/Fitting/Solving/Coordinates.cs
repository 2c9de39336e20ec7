namespace Holdfast.Fitting.Solving;

/// <summary>
/// The coordinates θ in which the solver moves. A parameter that must stay above a limit moves in ln(b − limit): its sign is safe
/// and a capacity and a rate become commensurate. A share and every upper limit are held by projection, which says honestly
/// when the bound is active instead of creeping to infinity.
/// </summary>
internal sealed class Coordinates
{
    private readonly bool[] logarithmic;
    private readonly double[] floor;

    /// <summary>The coordinates that a card's limits ask for.</summary>
    public Coordinates(IReadOnlyList<Parameter> parameters)
    {
        Count = parameters.Count;
        logarithmic = new bool[Count];
        floor = new double[Count];
        Lower = new double[Count];
        Upper = new double[Count];
        for (var j = 0; j < Count; j++)
        {
            var (above, below) = (parameters[j].Above, parameters[j].Below);
            logarithmic[j] = above is not null && parameters[j].Kind != Kind.Fraction;
            floor[j] = above ?? 0;
            Lower[j] = logarithmic[j] ? double.NegativeInfinity : above ?? double.NegativeInfinity;
            Upper[j] = below is not { } limit ? double.PositiveInfinity : logarithmic[j] ? Math.Log(limit - floor[j]) : limit;
        }
    }

    /// <summary>Coordinates that are the parameters themselves, held between bounds by projection.</summary>
    /// <param name="lower">Lowest values; −∞ where there is none.</param>
    /// <param name="upper">Highest values; +∞ where there is none.</param>
    public Coordinates(double[] lower, double[] upper)
    {
        Count = lower.Length;
        logarithmic = new bool[Count];
        floor = new double[Count];
        (Lower, Upper) = (lower, upper);
    }

    /// <summary>Number of parameters.</summary>
    public int Count { get; }

    /// <summary>Lower bounds of θ, held by projection; −∞ where there is none.</summary>
    public double[] Lower { get; }

    /// <summary>Upper bounds of θ, held by projection; +∞ where there is none.</summary>
    public double[] Upper { get; }

    /// <summary>True when parameter j moves in its logarithm.</summary>
    public bool IsLogarithmic(int j) => logarithmic[j];

    /// <summary>θ of a natural value; clipped into the bounds.</summary>
    public double ToTheta(int j, double natural)
    {
        var theta = logarithmic[j] ? Math.Log(Math.Max(natural - floor[j], 1e-300)) : natural;
        return Clip(j, theta);
    }

    /// <summary>The natural value at θ.</summary>
    public double ToNatural(int j, double theta) => logarithmic[j] ? floor[j] + Math.Exp(theta) : theta;

    /// <summary>db/dθ.</summary>
    public double Slope(int j, double theta) => logarithmic[j] ? Math.Exp(theta) : 1;

    /// <summary>θ brought back between its bounds.</summary>
    public double Clip(int j, double theta) => Math.Min(Math.Max(theta, Lower[j]), Upper[j]);

    /// <summary>True at a bound with the downhill direction pointing out of it.</summary>
    /// <param name="j">Which parameter.</param>
    /// <param name="theta">Where it is.</param>
    /// <param name="downhill">Component of J′Wr: the direction in which the sum of squares falls.</param>
    public bool IsPinned(int j, double theta, double downhill)
        => (theta >= Upper[j] && downhill >= 0) || (theta <= Lower[j] && downhill <= 0);

    /// <summary>The size against which a step in θ is small: 1 in a logarithm (a relative change), else |θ|.</summary>
    public double Size(int j, double theta) => logarithmic[j] ? 1 : Math.Abs(theta) + 1e-30;

    /// <summary>The longest step of one iteration: a factor e² for a logarithm, unlimited otherwise.</summary>
    public double LongestStep(int j) => logarithmic[j] ? 2 : double.PositiveInfinity;
}
