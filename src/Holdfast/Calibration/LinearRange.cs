namespace Holdfast.Calibration;

/// <summary>How far up from the bottom the standards stay straight: the last level that passed, never one that was not measured.</summary>
/// <param name="Steps">Each range tried, shortest first; the search ends with the first that bends.</param>
public sealed record LinearRange(IReadOnlyList<LinearRange.Step> Steps)
{
    /// <summary>The fewest levels that a search begins with.</summary>
    public const int FewestLevels = 5;

    /// <summary>Searches upward from the lowest five levels.</summary>
    /// <param name="standards">Five or more levels.</param>
    /// <param name="weights">Makes weights for a range, or null for equal ones.</param>
    public static LinearRange Of(IReadOnlyList<StandardReading> standards, Func<IReadOnlyList<StandardReading>, Weights?>? weights = null)
    {
        ArgumentNullException.ThrowIfNull(standards);
        var steps = new List<Step>();
        foreach (var top in Level.Of(standards).Skip(FewestLevels - 1))
        {
            StandardReading[] used = [.. standards.Where(s => s.Level <= top.Value)];
            steps.Add(new(top.Value, used, Linearity.Of(used, weights?.Invoke(used))));
            if (steps[^1].Linearity.Verdict == LinearityVerdict.Curved)
                break;
        }

        return new(steps);
    }

    /// <summary>The longest range that did not bend, or null when the lowest five levels already do.</summary>
    public Step? Longest => Steps.LastOrDefault(s => s.Linearity.Verdict != LinearityVerdict.Curved);

    /// <summary>One range tried.</summary>
    /// <param name="Top">Its highest level, in the unit of the standards.</param>
    /// <param name="Standards">The readings in it.</param>
    /// <param name="Linearity">What the tests say.</param>
    public sealed record Step(double Top, IReadOnlyList<StandardReading> Standards, Linearity Linearity);
}
