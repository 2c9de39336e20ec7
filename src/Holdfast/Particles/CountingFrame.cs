using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>
/// Where particles are counted: the field of a picture without its strip of text, cut into cells. A particle belongs to the one cell that it touches without crossing the cell's right
/// or lower edge, so that none is counted twice and none is missed.
/// </summary>
/// <param name="Field">The field.</param>
/// <param name="Across">Cells across, 1 or more.</param>
/// <param name="Down">Cells down, 1 or more.</param>
/// <remarks>Rule of the two open and two forbidden edges (H. J. G. Gundersen, J. Microsc. 111 (1977) 219); weight W·H/((W − Fx)(H − Fy)) of what lies inside a field (R. E. Miles, C. Lantuéjoul); both from memory.</remarks>
public sealed record CountingFrame(PictureBox Field, int Across = 1, int Down = 1)
{
    /// <summary>A mark that ends this near to the edge of the field touches it, in pixels (a decision of this project).</summary>
    public const double Touching = 1;

    /// <summary>True when a particle touches the edge of the field: its size is not seen whole.</summary>
    /// <param name="particle">The rectangle around it.</param>
    public bool IsCut(PictureBox particle) => particle.Left <= Field.Left + Touching || particle.Top <= Field.Top + Touching
        || particle.Right >= Field.Right - Touching || particle.Bottom >= Field.Bottom - Touching;

    /// <summary>The cell that a particle belongs to, from 1, row by row: that of the lower right corner of the rectangle around it; null outside the field.</summary>
    /// <param name="particle">The rectangle around it.</param>
    public int? CellOf(PictureBox particle) => CellAt(particle.Right, particle.Bottom);

    /// <summary>The cell at a point, from 1, row by row; null outside the field.</summary>
    /// <param name="x">Pixels from the left.</param>
    /// <param name="y">Pixels from above.</param>
    public int? CellAt(double x, double y)
    {
        int column = (int)Math.Floor((x - Field.Left) / Field.Width * Across), row = (int)Math.Floor((y - Field.Top) / Field.Height * Down);
        return column < 0 || row < 0 || column >= Across || row >= Down ? null : row * Across + column + 1;
    }

    /// <summary>How many particles of this kind stand behind one that lies wholly inside: the larger it is, the rarer it does. No unit.</summary>
    /// <param name="particle">The rectangle around it, smaller than the field.</param>
    public double Weight(PictureBox particle) => Field.Width * Field.Height / ((Field.Width - particle.Width) * (Field.Height - particle.Height));

    /// <summary>Mean and standard deviation with such weights, in the unit of the sizes.</summary>
    /// <param name="sizes">Sizes with their weights, two or more.</param>
    /// <returns>Mean, standard deviation √(Σw(x − m)²/Σw · n/(n − 1)), and n = (Σw)²/Σw².</returns>
    public static (double Mean, double Sd, double EffectiveN) Weighted(IReadOnlyList<(double Size, double Weight)> sizes)
    {
        ArgumentNullException.ThrowIfNull(sizes);
        ArgumentOutOfRangeException.ThrowIfLessThan(sizes.Count, 2, nameof(sizes));
        Values.Require([.. sizes.Select(s => s.Size)]);
        double sum = sizes.Sum(s => s.Weight), mean = sizes.Sum(s => s.Size * s.Weight) / sum, n = sum * sum / sizes.Sum(s => s.Weight * s.Weight);
        return (mean, Math.Sqrt(sizes.Sum(s => s.Weight * (s.Size - mean) * (s.Size - mean)) / sum * n / (n - 1)), n);
    }
}
