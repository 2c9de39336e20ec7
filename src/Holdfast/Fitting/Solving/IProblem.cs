namespace Holdfast.Fitting.Solving;

/// <summary>
/// A prediction whose type is no longer known. Profiles, resamples, deletions and robust weights all ask the same thing of it: the
/// same design with other readings, other weights, or a parameter held. One virtual call is paid for each fit, none for each point.
/// </summary>
internal interface IProblem
{
    /// <summary>The coordinates of the parameters.</summary>
    Coordinates Coordinates { get; }

    /// <summary>Number of observations.</summary>
    int Count { get; }

    /// <summary>A fast inner fit, from and to <paramref name="theta"/>.</summary>
    /// <param name="y">Readings.</param>
    /// <param name="w">Weights; 0 leaves an observation out.</param>
    /// <param name="theta">Start, and end.</param>
    /// <param name="held">Bit j set: parameter j stays where it is.</param>
    /// <param name="mu">First damping: <see cref="Damping.Cold"/> or <see cref="Damping.Warm"/>.</param>
    /// <param name="downhill">Receives J′Wr at the end, one number for each parameter.</param>
    /// <param name="spread">Receives the diagonal of (J′WJ)⁻¹ in natural units; may be empty.</param>
    Refit.End Refit(
        ReadOnlySpan<double> y, ReadOnlySpan<double> w, Span<double> theta, uint held, double mu, Span<double> downhill, Span<double> spread);

    /// <summary>A thorough fit, from and to <paramref name="theta"/>.</summary>
    LevenbergMarquardt.End Fit(ReadOnlySpan<double> y, ReadOnlySpan<double> w, Span<double> theta, uint held, int mostIterations, Workspace memory);

    /// <summary>Weighted residuals and slopes by θ at a point, into the workspace, with roots of the weights taken from it.</summary>
    double Evaluate(ReadOnlySpan<double> y, ReadOnlySpan<double> theta, Workspace memory);

    /// <summary>Predicted readings.</summary>
    /// <param name="theta">Where, in the solver's coordinates.</param>
    /// <param name="f">Receives the predictions.</param>
    void Predict(ReadOnlySpan<double> theta, Span<double> f);
}
