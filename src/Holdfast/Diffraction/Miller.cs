namespace Holdfast.Diffraction;

/// <summary>Indices of a set of planes.</summary>
/// <param name="H">h.</param>
/// <param name="K">k.</param>
/// <param name="L">l.</param>
public readonly record struct Miller(int H, int K, int L)
{
    /// <summary>The planes seen from the other side.</summary>
    public Miller Opposite => new(-H, -K, -L);

    /// <inheritdoc/>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{H} {K} {L}");
}
