using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>One check standard over many runs: is the method still the one it was?</summary>
/// <remarks>W. A. Shewhart's limits with the run rules of the Western Electric handbook of 1956 (from memory). Fewer than 20 runs are shown, not judged.</remarks>
/// <param name="Centre">Mean, in the unit of the check standard.</param>
/// <param name="Sd">Mean moving range over d₂ = 1.128, same unit.</param>
/// <param name="Signals">What broke a rule; empty below 20 runs.</param>
/// <param name="Runs">How many runs.</param>
public sealed record ControlChart(double Centre, double Sd, IReadOnlyList<ControlSignal> Signals, int Runs)
{
    /// <summary>The fewest runs that are judged.</summary>
    public const int FewestRuns = 20;

    /// <summary>True when there are enough runs to judge.</summary>
    public bool IsJudged => Runs >= FewestRuns;

    /// <summary>Draws the chart from the runs in their order.</summary>
    /// <param name="values">Check standard of each run, any unit; two or more that differ.</param>
    public static Outcome<ControlChart> Of(IReadOnlyList<double> values)
    {
        var summary = Summary.Of(values);
        if (summary.Sd is null or 0)
            return Outcome<ControlChart>.None(NoScatter.Of(summary.N));
        var movingRange = Enumerable.Range(1, values.Count - 1).Average(i => Math.Abs(values[i] - values[i - 1]));
        var chart = Against(values, summary.Mean, movingRange / ControlChartConstants.D2(2));
        return new(chart, [.. chart.Signals.Select(s => CalibrationFindings.OutOfControl(s))]);
    }

    /// <summary>Judges new runs against a centre and sd that are already known.</summary>
    /// <param name="values">Runs in their order, any unit.</param>
    /// <param name="centre">Known centre, same unit.</param>
    /// <param name="sd">Known standard deviation, above 0, same unit.</param>
    public static ControlChart Against(IReadOnlyList<double> values, double centre, double sd)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sd);
        double[] z = [.. values.Select(v => (v - centre) / sd)];
        List<ControlSignal> signals = [];
        for (var i = 0; i < z.Length && z.Length >= FewestRuns; i++)
        {
            if (Math.Abs(z[i]) > 3)
                signals.Add(new(i, ControlRule.OneBeyondThree));
            if (i >= 2 && (z[(i - 2)..(i + 1)].Count(v => v > 2) >= 2 || z[(i - 2)..(i + 1)].Count(v => v < -2) >= 2))
                signals.Add(new(i, ControlRule.TwoOfThreeBeyondTwo));
            if (i >= 7 && (z[(i - 7)..(i + 1)].All(v => v > 0) || z[(i - 7)..(i + 1)].All(v => v < 0)))
                signals.Add(new(i, ControlRule.EightOnOneSide));
        }

        return new(centre, sd, signals, z.Length);
    }
}

/// <summary>A broken rule.</summary>
/// <param name="Run">Index of the run that completed it.</param>
/// <param name="Rule">The rule.</param>
public sealed record ControlSignal(int Run, ControlRule Rule);

/// <summary>Rules that stop a method.</summary>
public enum ControlRule
{
    /// <summary>One run beyond three standard deviations.</summary>
    OneBeyondThree,

    /// <summary>Two of three runs beyond two standard deviations on one side.</summary>
    TwoOfThreeBeyondTwo,

    /// <summary>Eight runs in a row on one side.</summary>
    EightOnOneSide,
}
