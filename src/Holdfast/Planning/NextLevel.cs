namespace Holdfast.Planning;

/// <summary>The level whose reading would tell most, given what is known already.</summary>
/// <param name="Level">The level, in its own unit.</param>
/// <param name="Ratio">d(x) there: variance of the prediction over that of one reading.</param>
public readonly record struct NextLevel(double Level, double Ratio)
{
    /// <summary>What one reading there adds to ln det M: ln(1 + d).</summary>
    public double Gain => Math.Log(1 + Ratio);

    /// <summary>The best of the candidate levels; null while the readings so far leave a combination of parameters unknown.</summary>
    /// <param name="known">Information of the readings so far.</param>
    /// <param name="candidates">Levels that can be run.</param>
    /// <param name="row">Slopes by the parameters over the reading's standard uncertainty, at a level.</param>
    public static NextLevel? Of(Information known, IEnumerable<double> candidates, Func<double, double[]> row)
    {
        ArgumentNullException.ThrowIfNull(known);
        ArgumentNullException.ThrowIfNull(candidates);
        NextLevel? best = null;
        foreach (var level in candidates)
        {
            if (known.Variance(row(level)) is { } ratio && !(ratio <= best?.Ratio))
                best = new(level, ratio);
        }

        return best;
    }
}
