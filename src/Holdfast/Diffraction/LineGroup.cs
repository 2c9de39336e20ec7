using Holdfast.Fitting;
using Holdfast.Fitting.Solving;

namespace Holdfast.Diffraction;

/// <summary>Neighbouring lines on one background, fitted together.</summary>
/// <remarks>Parameters: background b0, b1, b2 (b2 held at 0 for a straight one), Lorentz share of the group, then place, height and width of each line.</remarks>
internal sealed class LineGroup
{
    private const int Backgrounds = 3, Mixing = 3, Common = 4, PerLine = 3;
    private const int MostSteps = 80;

    // A bent background is kept when it takes this much off χ² (in units of max(1, χ²ᵣ)): chance would do so once in 2000 times.
    private const double BendPays = 12;
    private const double Entangled = 0.98;
    private const double UncertainWidth = 0.3;
    private const double InstrumentShare = 0.7;

    private readonly List<FoundPeak> starts;
    private readonly Radiation radiation;
    private readonly double middle, reach;
    private readonly int[] points;
    private double[] theta = [];
    private double[] u = [];
    private double[] correlation = [];
    private double[,]? covariance;
    private int[] free = [];
    private double chi = double.NaN;
    private bool settled;
    private bool? bends;

    public LineGroup(IEnumerable<FoundPeak> peaks, Radiation radiation, int[] points, double middle, double reach)
        => (starts, this.radiation, this.points, this.middle, this.reach) = ([.. peaks], radiation, points, middle, reach);

    /// <summary>Number of lines.</summary>
    public int Lines => starts.Count;

    /// <summary>The readings it is fitted on.</summary>
    public ReadOnlySpan<int> Points => points;

    /// <summary>Largest z of its lines.</summary>
    public double Significance => starts.Max(p => p.Significance);

    /// <summary>χ² of the last fit.</summary>
    public double ChiSquare { get; private set; } = double.NaN;

    /// <summary>Lorentz share as fitted, or as given.</summary>
    public double Eta => theta[Mixing];

    /// <summary>Fits, with what other groups add already known.</summary>
    /// <param name="scan">The pattern.</param>
    /// <param name="others">Intensity of all other groups at each reading.</param>
    /// <param name="model">Expected intensity for the weights; null takes the readings.</param>
    /// <param name="eta">Lorentz share to hold for a group too weak to tell its own; null fits it.</param>
    public void Fit(PowderScan scan, double[] others, double[]? model, double? eta)
    {
        double[] x = [.. points.Select(i => scan.TwoTheta[i])];
        double[] y = [.. points.Select(i => scan.Counts[i] - others[i])];
        double[] w = [.. points.Select(i => 1 / scan.Variance(model?[i] ?? scan.Counts[i]))];
        var (lower, upper, start) = Bounds(scan, y);
        if (theta.Length > 0)
            theta.CopyTo(start, 0);
        if (eta is { } held)
            (lower[Mixing], upper[Mixing], start[Mixing]) = (held, held, held);
        // Whether the background bends is settled once.
        var best = Run(x, y, w, lower, upper, [.. start], bent: bends ?? false);
        if (bends is null && points.Length > start.Length + 3)
        {
            var bent = Run(x, y, w, lower, upper, [.. best.Theta], bent: true);
            bends = best.S - bent.S > BendPays * Math.Max(1, bent.S / (points.Length - start.Length));
            best = bends.Value ? bent : best;
        }

        Take(best, lower, upper);
    }

    /// <summary>Intensity of the lines at an angle.</summary>
    public double LinesAt(double x)
    {
        var sum = 0.0;
        for (var k = 0; k < Lines; k++)
        {
            var at = Common + k * PerLine;
            sum += theta[at + 1] * Line(x, theta[at], theta[at + 2], theta[Mixing]).Value;
        }

        return sum;
    }

    /// <summary>Background at an angle.</summary>
    public double BackgroundAt(double x)
    {
        var t = (x - middle) / reach;
        return theta[0] + t * (theta[1] + t * theta[2]);
    }

    /// <summary>The lines as fitted.</summary>
    public IEnumerable<FittedLine> Results(double? instrumentWidth)
    {
        for (var k = 0; k < Lines; k++)
        {
            var at = Common + k * PerLine;
            var (x, h, w, eta) = (theta[at], theta[at + 1], theta[at + 2], theta[Mixing]);
            var flags = LineDoubts.None;
            if (Array.IndexOf(free, Mixing) < 0 && eta is <= 1e-9 or >= 1 - 1e-9)
                flags |= LineDoubts.MixingAtBound;
            if (instrumentWidth is { } b && w < InstrumentShare * b)
                flags |= LineDoubts.NarrowerThanInstrument;
            if (!(u[at + 2] <= UncertainWidth * w))
                flags |= LineDoubts.WidthUncertain;
            if (correlation[k] > Entangled)
                flags |= LineDoubts.Entangled;
            if (!settled || !double.IsFinite(u[at]) || u[at] <= 0 || h <= 0)
                flags |= LineDoubts.NotSettled;
            var spacing = Bragg.Spacing(x, radiation.Ka1);
            yield return new(x, u[at], spacing, spacing / Math.Tan(Bragg.Theta(x)) * u[at] * Math.PI / 360, h, w, u[at + 2], eta,
                h * w * PseudoVoigt.Area(eta), AreaU(at, h, w, eta), starts[k].Significance, chi, flags);
        }
    }

    /// <summary>The starts that led to nothing: at a limit, or an area that could be chance.</summary>
    public IEnumerable<FoundPeak> Empty()
    {
        foreach (var (start, line) in starts.Zip(Results(null)))
        {
            if (line.IsEmpty)
                yield return start;
        }
    }

    private double AreaU(int at, double h, double w, double eta)
    {
        if (covariance is null)
            return double.NaN;
        var byEta = (PseudoVoigt.Area(1) - PseudoVoigt.Area(0)) * h * w;
        (int Index, double Slope)[] slopes = [(at + 1, w * PseudoVoigt.Area(eta)), (at + 2, h * PseudoVoigt.Area(eta)), (Mixing, byEta)];
        var variance = 0.0;
        foreach (var (i, si) in slopes)
        {
            foreach (var (j, sj) in slopes)
            {
                if (Array.IndexOf(free, i) is var a and >= 0 && Array.IndexOf(free, j) is var b and >= 0)
                    variance += si * sj * covariance[a, b];
            }
        }

        return Math.Sqrt(variance * Math.Max(1, chi));
    }

    private (double[] Lower, double[] Upper, double[] Start) Bounds(PowderScan scan, double[] y)
    {
        var count = Common + PerLine * Lines;
        var (lower, upper, start) = (new double[count], new double[count], new double[count]);
        Array.Fill(lower, double.NegativeInfinity);
        Array.Fill(upper, double.PositiveInfinity);
        (lower[Mixing], upper[Mixing], start[Mixing]) = (0, 1, 0.5);
        start[0] = y.Order().Skip(y.Length / 10).First();
        for (var k = 0; k < Lines; k++)
        {
            var at = Common + k * PerLine;
            var peak = starts[k];
            var room = Math.Max(0.7 * peak.Width, 2 * scan.Step);
            (lower[at], upper[at], start[at]) = (peak.TwoTheta - room, peak.TwoTheta + room, peak.TwoTheta);
            (lower[at + 1], start[at + 1]) = (0, peak.Height);
            (lower[at + 2], upper[at + 2], start[at + 2]) = (0.7 * scan.Step, Math.Max(4 * peak.Width, 6 * scan.Step), peak.Width);
        }

        return (lower, upper, start);
    }

    private Outcome Run(double[] x, double[] y, double[] w, double[] lower, double[] upper, double[] start, bool bent)
    {
        (lower, upper) = ([.. lower], [.. upper]);
        if (!bent)
            (start[2], lower[2], upper[2]) = (0, 0, 0);
        var coordinates = new Coordinates(lower, upper);
        var memory = new Workspace(x.Length, start.Length);
        var end = LevenbergMarquardt.Run(new Residuals(this, x), coordinates, y, w, start, 0, MostSteps, memory);
        var fixedOnes = LevenbergMarquardt.Factorise(coordinates, start, 0, memory);
        return new(start, end.S, end.Stop, memory, fixedOnes);
    }

    private void Take(Outcome best, double[] lower, double[] upper)
    {
        theta = best.Theta;
        free = best.Memory.Free[..best.Free];
        ChiSquare = best.S;
        chi = best.S / Math.Max(1, points.Length - best.Free);
        covariance = points.Length > best.Free ? Householder.Inverse(best.Memory.Factor, points.Length, best.Free) : null;
        u = new double[theta.Length];
        correlation = new double[Lines];
        settled = best.Stop is not (StopReason.Refused or StopReason.IterationLimit) && covariance is not null;
        Array.Fill(u, double.NaN);
        for (var a = 0; covariance is not null && a < free.Length; a++)
        {
            u[free[a]] = Math.Sqrt(covariance[a, a] * Math.Max(1, chi));
            for (var b = 0; b < a; b++)
            {
                // Only between lines: height, width and mixing of one line always go together.
                var (k, m) = ((free[a] - Common) / PerLine, (free[b] - Common) / PerLine);
                if (free[b] < Common || k == m)
                    continue;
                var r = Math.Abs(covariance[a, b]) / Math.Sqrt(covariance[a, a] * covariance[b, b]);
                (correlation[k], correlation[m]) = (Math.Max(correlation[k], r), Math.Max(correlation[m], r));
            }
        }

        for (var k = 0; k < Lines; k++)
        {
            var at = Common + k * PerLine;
            if (theta[at + 2] <= lower[at + 2] || theta[at + 2] >= upper[at + 2] || theta[at] <= lower[at] || theta[at] >= upper[at])
                u[at] = double.NaN;
        }
    }

    // Kα1 and its partner: same width and mixing, place by the ratio of the wavelengths.
    private (double Value, double ByPlace, double ByWidth, double ByEta) Line(double x, double place, double width, double eta)
    {
        var first = PseudoVoigt.At(x - place, width, eta);
        if (radiation.Ka2 is not { } second || Bragg.Moved(place, radiation.Ka1, second) is not { } partner)
            return first;
        var r = radiation.Ratio;
        var other = PseudoVoigt.At(x - partner, width, eta);
        var stretch = second / radiation.Ka1 * Math.Cos(Bragg.Theta(place)) / Math.Cos(Bragg.Theta(partner));
        return (first.Value + r * other.Value, first.ByPlace + r * stretch * other.ByPlace, first.ByWidth + r * other.ByWidth, first.ByEta + r * other.ByEta);
    }

    private sealed record Outcome(double[] Theta, double S, StopReason Stop, Workspace Memory, int Free);

    private readonly struct Residuals(LineGroup group, double[] x) : IResiduals
    {
        public double Evaluate(ReadOnlySpan<double> theta, ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight, Span<double> residual, Span<double> jacobian)
        {
            var n = x.Length;
            double sum = 0, check = 0;
            jacobian.Clear();
            for (var i = 0; i < n; i++)
            {
                var root = rootWeight[i];
                var t = (x[i] - group.middle) / group.reach;
                var model = theta[0] + t * (theta[1] + t * theta[2]);
                jacobian[i] = root;
                jacobian[n + i] = root * t;
                jacobian[2 * n + i] = root * t * t;
                for (var at = Common; at < theta.Length; at += PerLine)
                {
                    var h = theta[at + 1];
                    var (value, byPlace, byWidth, byEta) = group.Line(x[i], theta[at], theta[at + 2], theta[Mixing]);
                    model += h * value;
                    jacobian[at * n + i] = root * h * byPlace;
                    jacobian[(at + 1) * n + i] = root * value;
                    jacobian[(at + 2) * n + i] = root * h * byWidth;
                    jacobian[Mixing * n + i] += root * h * byEta;
                }

                residual[i] = root * (y[i] - model);
                sum += residual[i] * residual[i];
                check += model;
            }

            return double.IsFinite(check) ? sum : double.NaN;
        }

        public double Size(ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight)
        {
            double sum = 0;
            for (var i = 0; i < y.Length; i++)
                sum += rootWeight[i] * rootWeight[i] * y[i] * y[i];
            return sum;
        }
    }
}
