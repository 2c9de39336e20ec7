namespace Holdfast.Speciation;

/// <summary>
/// Several components among their species: the x = ln activities for which every total is met, with any number of solids held at saturation.
/// </summary>
/// <remarks>
/// With c = exp(L + A x) the totals are met where F(x) = Σ c − T·x is smallest; F is strictly convex as every component is a species itself, so the
/// solution is one and Newton's method with a line search on F finds it from any start. A solid at saturation is a plane N x = k; the search stays on it. The
/// amounts of the solids are the multipliers of the planes, and a negative one says that the solid dissolves.
/// </remarks>
internal sealed class MassAction
{
    private const int MostSteps = 500;
    private const int MostHalvings = 40;
    private const int Sweeps = 3;
    private const double LongestStep = 4;
    private const double Closed = 1e-13;

    private readonly int components;
    private readonly double[] parts;
    private readonly double[] lnFactors;
    private readonly double[] totals;
    private readonly double[] concentrations;
    private readonly double[] trial;
    private readonly double[] sums;

    /// <summary>A set of balances.</summary>
    /// <param name="parts">How much of each component a species holds, species by species, from 0.</param>
    /// <param name="lnFactors">ln of each species' concentration, mol/L, at unit activity of all components.</param>
    /// <param name="totals">Total of each component, mol/L, above 0.</param>
    public MassAction(double[] parts, double[] lnFactors, double[] totals)
    {
        components = totals.Length;
        this.parts = parts;
        this.lnFactors = lnFactors;
        this.totals = totals;
        concentrations = new double[lnFactors.Length];
        trial = new double[lnFactors.Length];
        sums = new double[components];
    }

    /// <summary>Concentrations of the species at the last solution, mol/L.</summary>
    public IReadOnlyList<double> Concentrations => concentrations;

    /// <summary>Dissolved total of each component at the last solution, mol/L.</summary>
    public IReadOnlyList<double> Dissolved => sums;

    /// <summary>Newton steps that the last solution took.</summary>
    public int Steps { get; private set; }

    /// <summary>Solves without solids.</summary>
    /// <param name="x">ln activities: the start, then the solution.</param>
    public void Solve(double[] x)
    {
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            for (var j = 0; j < components; j++)
                x[j] = Alone(x, j);
        }

        var free = new double[components * components];
        for (var j = 0; j < components; j++)
            free[j * components + j] = 1;
        Search(x, free, components);
    }

    /// <summary>Solves with solids at saturation.</summary>
    /// <param name="x">ln activities: the start, then the solution.</param>
    /// <param name="plane">The planes that the solids span.</param>
    public void Solve(double[] x, SaturationPlane plane)
    {
        plane.Project(x);
        Search(x, plane.Directions, plane.Free);
    }

    // ln activity of one component that meets its total while the others are held.
    private double Alone(double[] x, int j)
    {
        var at = x[j];
        for (var step = 0; step < 100; step++)
        {
            double largest = double.NegativeInfinity, sum = 0, slope = 0;
            for (var i = 0; i < lnFactors.Length; i++)
            {
                if (parts[i * components + j] > 0)
                    largest = Math.Max(largest, Exponent(x, i, j, at));
            }

            for (var i = 0; i < lnFactors.Length; i++)
            {
                if (parts[i * components + j] is not (> 0 and var p))
                    continue;
                var share = p * Math.Exp(Exponent(x, i, j, at) - largest);
                sum += share;
                slope += p * share;
            }

            var move = (Math.Log(sum) + largest - Math.Log(totals[j])) * sum / slope;
            at -= move;
            if (Math.Abs(move) < 1e-3)
                break;
        }

        return at;
    }

    private double Exponent(double[] x, int i, int j, double at)
    {
        var e = lnFactors[i];
        for (var k = 0; k < components; k++)
            e += parts[i * components + k] * (k == j ? at : x[k]);
        return e;
    }

    private void Search(double[] x, double[] directions, int free)
    {
        Span<double> gradient = stackalloc double[components];
        Span<double> hessian = stackalloc double[components * components];
        Span<double> step = stackalloc double[components];
        var next = new double[components];
        var value = Value(x, concentrations);
        for (Steps = 0; Steps < MostSteps; Steps++)
        {
            Sum(concentrations, sums);
            var open = Gradient(sums, directions, free, gradient);
            if (open <= Closed)
                return;
            Curvature(directions, free, hessian);
            Cholesky.Solve(hessian, gradient, free);
            var longest = 0.0;
            for (var j = 0; j < components; j++)
            {
                step[j] = 0;
                for (var d = 0; d < free; d++)
                    step[j] -= directions[j * free + d] * gradient[d];
                longest = Math.Max(longest, Math.Abs(step[j]));
            }

            var share = Math.Min(1, LongestStep / longest);
            for (var halving = 0; ; halving++)
            {
                for (var j = 0; j < components; j++)
                    next[j] = x[j] + share * step[j];
                var there = Value(next, trial);
                if (there < value || (double.IsFinite(there) && Openness(directions, free) < open))
                {
                    value = there;
                    break;
                }

                // Rounding alone is left when halving the step brings nothing.
                if (halving >= MostHalvings)
                    return;
                share /= 2;
            }

            next.CopyTo(x, 0);
            trial.CopyTo(concentrations, 0);
        }
    }

    private double Openness(double[] directions, int free)
    {
        Span<double> dissolved = stackalloc double[components];
        Span<double> gradient = stackalloc double[components];
        Sum(trial, dissolved);
        return Gradient(dissolved, directions, free, gradient);
    }

    private double Value(double[] x, double[] into)
    {
        var value = 0.0;
        for (var i = 0; i < lnFactors.Length; i++)
        {
            var e = lnFactors[i];
            for (var k = 0; k < components; k++)
                e += parts[i * components + k] * x[k];
            into[i] = Math.Exp(e);
            value += into[i];
        }

        for (var k = 0; k < components; k++)
            value -= totals[k] * x[k];
        return value;
    }

    private void Sum(double[] of, Span<double> into)
    {
        into.Clear();
        for (var i = 0; i < lnFactors.Length; i++)
        {
            for (var k = 0; k < components; k++)
                into[k] += parts[i * components + k] * of[i];
        }
    }

    // Gradient of F along the directions; returns the largest share of a balance that is still open.
    private double Gradient(ReadOnlySpan<double> dissolved, double[] directions, int free, Span<double> gradient)
    {
        var open = 0.0;
        for (var d = 0; d < free; d++)
        {
            double along = 0, size = 0;
            for (var k = 0; k < components; k++)
            {
                along += directions[k * free + d] * (dissolved[k] - totals[k]);
                size += Math.Abs(directions[k * free + d]) * totals[k];
            }

            gradient[d] = along;
            open = Math.Max(open, Math.Abs(along) / size);
        }

        return open;
    }

    private void Curvature(double[] directions, int free, Span<double> hessian)
    {
        Span<double> along = stackalloc double[free];
        hessian.Clear();
        for (var i = 0; i < lnFactors.Length; i++)
        {
            if (concentrations[i] == 0)
                continue;
            for (var d = 0; d < free; d++)
            {
                along[d] = 0;
                for (var k = 0; k < components; k++)
                    along[d] += parts[i * components + k] * directions[k * free + d];
            }

            for (var d = 0; d < free; d++)
            {
                for (var e = 0; e <= d; e++)
                    hessian[d * free + e] += concentrations[i] * along[d] * along[e];
            }
        }
    }
}
