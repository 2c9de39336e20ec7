namespace Holdfast.Infrared;

/// <summary>What the numbers of a spectrum say about their scale, whatever stands above them.</summary>
/// <param name="Lowest">Smallest ordinate, as written.</param>
/// <param name="Highest">Largest ordinate, as written.</param>
/// <param name="Direction">1 when bands point up, −1 when they point down, 0 when that is not clear.</param>
public sealed record OrdinateEvidence(double Lowest, double Highest, int Direction)
{
    /// <summary>No bench instrument reads an absorbance above this (common practice); no unit.</summary>
    public const double HighestAbsorbance = 6;

    /// <summary>A fraction of light stays below this, background errors included; no unit.</summary>
    public const double HighestFraction = 1.5;

    private const double HighestPercent = 150;
    private const double HighestDoubtfulFraction = 2;
    private const double ClearSkewness = 0.5;
    private const int Stretches = 300;

    /// <summary>Looks at the ordinates.</summary>
    /// <param name="ordinates">In the order of the wavenumbers, at least 25.</param>
    public static OrdinateEvidence Of(IReadOnlyList<double> ordinates)
    {
        ArgumentNullException.ThrowIfNull(ordinates);
        ArgumentOutOfRangeException.ThrowIfLessThan(ordinates.Count, 25, nameof(ordinates));
        return new(ordinates.Min(), ordinates.Max(), Pointing(ordinates));
    }

    /// <summary>The scales that the numbers allow, the likeliest first; empty when they fit none.</summary>
    public IReadOnlyList<OrdinateScale> Possible
    {
        get
        {
            var possible = new List<OrdinateScale>();
            if (Highest <= HighestAbsorbance && Direction >= 0)
                possible.Add(OrdinateScale.Absorbance);
            if (Highest is > 0 and <= HighestDoubtfulFraction && Lowest > -0.1 && Direction <= 0)
                possible.Add(OrdinateScale.Transmittance);
            if (Highest is > HighestFraction and <= HighestPercent && Lowest > -10 && Direction <= 0)
                possible.Add(OrdinateScale.PercentTransmittance);
            return possible;
        }
    }

    // At the top of a narrow band the second difference is large, beside it small: its skewness tells which way bands point, whatever the baseline.
    // The spectrum is first averaged into stretches, so that noise does not count.
    private static int Pointing(IReadOnlyList<double> y)
    {
        var size = Math.Max(1, y.Count / Stretches);
        double[] means = [.. y.Chunk(size).Select(c => c.Average())];
        double[] bends = [.. Enumerable.Range(1, means.Length - 2).Select(i => means[i + 1] - 2 * means[i] + means[i - 1])];
        var squares = bends.Sum(b => b * b);
        if (squares == 0)
            return 0;
        var skewness = bends.Sum(b => b * b * b) / bends.Length / Math.Pow(squares / bends.Length, 1.5);
        return skewness < -ClearSkewness ? 1 : skewness > ClearSkewness ? -1 : 0;
    }
}
