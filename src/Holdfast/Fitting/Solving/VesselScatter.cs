namespace Holdfast.Fitting.Solving;

/// <summary>
/// The scatter from vessel to vessel by restricted likelihood: V = V₀ + σ²·diag(z), with what is stated in V₀ and σ relative to the uptake. One step of
/// Fisher's scoring moves σ² by (z′(Pr)² − tr PZ)/tr PZPZ, where P takes out what the parameters can take up.
/// </summary>
/// <remarks>
/// H. D. Patterson and R. Thompson, Biometrika 58 (1971) 545; correction of the covariance for few vessels: M. G. Kenward and J. H. Roger, Biometrics 53
/// (1997) 983 (from memory).
/// </remarks>
internal sealed class VesselScatter
{
    private readonly int n, p;
    private readonly double[] stated, z, slopes;

    /// <summary>The scatter of points about a curve.</summary>
    /// <param name="stated">V₀ by rows.</param>
    /// <param name="reach">How far a relative change of the uptake moves each point: √z.</param>
    /// <param name="slopes">What the mean may take up, by rows, n × p.</param>
    /// <param name="columns">p.</param>
    public VesselScatter(double[] stated, ReadOnlySpan<double> reach, double[] slopes, int columns)
    {
        (this.stated, this.slopes, n, p) = (stated, slopes, reach.Length, columns);
        z = new double[n];
        for (var i = 0; i < n; i++)
            z[i] = reach[i] * reach[i];
    }

    /// <summary>Everything that follows from one σ², or null when the covariance is not positive.</summary>
    /// <param name="sigma2">Square of the relative scatter.</param>
    public At? For(double sigma2) => At.Of(this, sigma2);

    /// <summary>σ² where the restricted likelihood is greatest, from a first guess; residuals do not move with it.</summary>
    /// <param name="residual">Reading less curve.</param>
    /// <param name="sigma2">First guess.</param>
    /// <param name="steps">Most steps of scoring.</param>
    public double Restricted(ReadOnlySpan<double> residual, double sigma2, int steps)
    {
        for (var step = 0; step < steps; step++)
        {
            if (For(sigma2) is not { } at)
                return sigma2;
            var next = Next(at.Projector, residual, sigma2);
            if (Math.Abs(next - sigma2) <= 1e-6 * (next + sigma2))
                return next;
            sigma2 = next;
        }

        return sigma2;
    }

    /// <summary>−2 ln of the full likelihood, constants dropped, at the σ² where it is greatest.</summary>
    /// <param name="residual">Reading less curve.</param>
    /// <param name="sigma2">First guess.</param>
    public double Deviance(ReadOnlySpan<double> residual, double sigma2)
    {
        const int mostSteps = 30;
        var least = double.PositiveInfinity;
        for (var step = 0; step < mostSteps; step++)
        {
            if (For(sigma2) is not { } at)
                break;
            var deviance = at.LogDeterminant + at.Square(residual);
            var settled = Math.Abs(deviance - least) <= 1e-8 * (1 + Math.Abs(deviance));
            least = Math.Min(least, deviance);
            if (settled)
                break;
            sigma2 = Next(at.Weight, residual, sigma2);
        }

        return least;
    }

    /// <summary>One step of scoring.</summary>
    /// <param name="projector">P for the restricted likelihood, W for the full one, at <paramref name="sigma2"/>.</param>
    /// <param name="residual">Reading less curve.</param>
    /// <param name="sigma2">Where it stands.</param>
    public double Next(double[] projector, ReadOnlySpan<double> residual, double sigma2)
    {
        double quadratic = 0, trace = 0, information = 0;
        for (var i = 0; i < n; i++)
        {
            double turned = 0, shared = 0;
            for (var j = 0; j < n; j++)
            {
                var m = projector[i * n + j];
                turned += m * residual[j];
                shared += z[j] * m * m;
            }

            information += z[i] * shared;
            quadratic += z[i] * turned * turned;
            trace += z[i] * projector[i * n + i];
        }

        return information > 0 ? Math.Max(sigma2 + (quadratic - trace) / information, 0) : sigma2;
    }

    /// <summary>Weights, projector and covariance of the parameters at one σ².</summary>
    internal sealed class At
    {
        private readonly VesselScatter owner;

        private At(VesselScatter owner, double[] covariance, double[] weight, double logDeterminant, double[] spread, double[] projector)
            => (this.owner, Covariance, Weight, LogDeterminant, Spread, Projector) = (owner, covariance, weight, logDeterminant, spread, projector);

        /// <summary>V by rows.</summary>
        public double[] Covariance { get; }

        /// <summary>W = V⁻¹ by rows.</summary>
        public double[] Weight { get; }

        /// <summary>ln |V|.</summary>
        public double LogDeterminant { get; }

        /// <summary>Φ = (J′WJ)⁻¹ by rows.</summary>
        public double[] Spread { get; }

        /// <summary>P = W − WJΦJ′W by rows.</summary>
        public double[] Projector { get; }

        public static At? Of(VesselScatter owner, double sigma2)
        {
            var (n, p, j) = (owner.n, owner.p, owner.slopes);
            double[] covariance = [.. owner.stated];
            for (var i = 0; i < n; i++)
                covariance[i * n + i] += sigma2 * owner.z[i];
            double[] triangle = [.. covariance];
            var logarithm = Triangle.Factor(triangle, n);
            if (!double.IsFinite(logarithm))
                return null;
            var w = Triangle.Inverse(triangle, n);
            var wj = Product(w, n, n, j, p);
            var information = new double[p * p];
            for (var a = 0; a < p; a++)
            {
                for (var b = 0; b < p; b++)
                {
                    for (var i = 0; i < n; i++)
                        information[a * p + b] += j[i * p + a] * wj[i * p + b];
                }
            }

            if (!double.IsFinite(Triangle.Factor(information, p)))
                return null;
            var spread = Triangle.Inverse(information, p);
            double[] projector = [.. w];
            var half = Product(wj, n, p, spread, p);
            for (var i = 0; i < n; i++)
            {
                for (var k = 0; k < n; k++)
                {
                    for (var a = 0; a < p; a++)
                        projector[i * n + k] -= half[i * p + a] * wj[k * p + a];
                }
            }

            return new(owner, covariance, w, logarithm, spread, projector);
        }

        /// <summary>r′Wr.</summary>
        public double Square(ReadOnlySpan<double> residual) => Form(Weight, residual);

        /// <summary>r′Pr: what the parameters leave of the residuals.</summary>
        public double Left(ReadOnlySpan<double> residual) => Form(Projector, residual);

        /// <summary>tr PU: how much of what the parameters leave rests on a part U of the covariance.</summary>
        /// <param name="part">U by rows.</param>
        public double Rests(double[] part)
        {
            var sum = 0.0;
            for (var i = 0; i < part.Length; i++)
                sum += Projector[i] * part[i];
            return sum;
        }

        /// <summary>What a part U of the covariance of the readings adds to that of the parameters: the gain on both sides, p × p.</summary>
        /// <param name="gain">How far each parameter moves with each reading.</param>
        /// <param name="part">U by rows.</param>
        public double[,] Carried(double[,] gain, double[] part)
        {
            var (n, p) = (owner.n, owner.p);
            double[,] half = new double[p, n], carried = new double[p, p];
            for (var a = 0; a < p; a++)
            {
                for (var i = 0; i < n; i++)
                {
                    for (var k = 0; k < n; k++)
                        half[a, k] += gain[a, i] * part[i * n + k];
                }

                for (var b = 0; b < p; b++)
                {
                    for (var k = 0; k < n; k++)
                        carried[a, b] += half[a, k] * gain[b, k];
                }
            }

            return carried;
        }

        /// <summary>2/tr PZPZ: variance of the estimate of σ².</summary>
        public double VarianceOfScatter()
        {
            double information = 0;
            for (var i = 0; i < owner.n; i++)
            {
                for (var k = 0; k < owner.n; k++)
                    information += owner.z[i] * owner.z[k] * Projector[i * owner.n + k] * Projector[i * owner.n + k];
            }

            return 2 / information;
        }

        /// <summary>ΦJ′W: how far each parameter moves with each reading, p × n.</summary>
        public double[,] Gain()
        {
            var (n, p) = (owner.n, owner.p);
            var wj = Product(Weight, n, n, owner.slopes, p);
            var gain = new double[p, n];
            for (var a = 0; a < p; a++)
            {
                for (var i = 0; i < n; i++)
                {
                    for (var b = 0; b < p; b++)
                        gain[a, i] += Spread[a * p + b] * wj[i * p + b];
                }
            }

            return gain;
        }

        /// <summary>∂Φ/∂σ² = ΦJ′WZWJΦ, p × p, from the gain.</summary>
        public double[,] Growth(double[,] gain)
        {
            var p = owner.p;
            var growth = new double[p, p];
            for (var a = 0; a < p; a++)
            {
                for (var b = 0; b < p; b++)
                {
                    for (var i = 0; i < owner.n; i++)
                        growth[a, b] += gain[a, i] * owner.z[i] * gain[b, i];
                }
            }

            return growth;
        }

        /// <summary>
        /// Φ with what the estimation of σ² adds for few vessels: Φ + 2·var(σ²)·(ΦJ′WZPZWJΦ), nothing when the scatter is all there is.
        /// </summary>
        public double[,] Adjusted(double[,] gain, double varianceOfScatter)
        {
            var (n, p) = (owner.n, owner.p);
            var adjusted = new double[p, p];
            for (var a = 0; a < p; a++)
            {
                for (var b = 0; b < p; b++)
                {
                    double sum = 0;
                    for (var i = 0; i < n; i++)
                    {
                        for (var k = 0; k < n; k++)
                            sum += gain[a, i] * owner.z[i] * Projector[i * n + k] * owner.z[k] * gain[b, k];
                    }

                    adjusted[a, b] = Spread[a * p + b] + 2 * varianceOfScatter * sum;
                }
            }

            return adjusted;
        }

        private double Form(double[] m, ReadOnlySpan<double> r)
        {
            double sum = 0;
            for (var i = 0; i < r.Length; i++)
            {
                for (var k = 0; k < r.Length; k++)
                    sum += r[i] * m[i * owner.n + k] * r[k];
            }

            return sum;
        }

        private static double[] Product(double[] a, int rows, int inner, double[] b, int columns)
        {
            var product = new double[rows * columns];
            for (var i = 0; i < rows; i++)
            {
                for (var k = 0; k < inner; k++)
                {
                    var factor = a[i * inner + k];
                    for (var j = 0; j < columns; j++)
                        product[i * columns + j] += factor * b[k * columns + j];
                }
            }

            return product;
        }
    }
}
