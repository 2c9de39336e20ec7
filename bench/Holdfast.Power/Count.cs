namespace Holdfast.Power;

/// <summary>In how many studies the claim held, and in how many it did not.</summary>
/// <param name="Holds">Studies in which it held.</param>
/// <param name="Others">Studies in which it did not.</param>
internal readonly record struct Count(int Holds, int Others)
{
    /// <summary>Largest difference between what is promised and what is obtained; no unit.</summary>
    public const double Tolerated = 0.03;

    /// <summary>Studies.</summary>
    public int Studies => Holds + Others;

    /// <summary>Share in which it held.</summary>
    public double Obtained => Holds / (double)Studies;

    /// <summary>Binomial standard error of that share.</summary>
    public double Error => Math.Sqrt(Math.Max(Obtained * (1 - Obtained), 1.0 / Studies) / Studies);

    /// <summary>Whether the difference is larger than what is tolerated by more than two standard errors.</summary>
    /// <param name="promised">What the plan promises.</param>
    public bool Misses(double promised) => Studies > 0 && Math.Abs(Obtained - promised) > Tolerated + 2 * Error;
}
