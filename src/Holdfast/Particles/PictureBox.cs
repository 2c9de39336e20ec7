namespace Holdfast.Particles;

/// <summary>An upright rectangle in a picture, x to the right and y down.</summary>
/// <param name="Left">Left edge, in pixels.</param>
/// <param name="Top">Upper edge, in pixels.</param>
/// <param name="Right">Right edge, in pixels.</param>
/// <param name="Bottom">Lower edge, in pixels.</param>
public readonly record struct PictureBox(double Left, double Top, double Right, double Bottom)
{
    /// <summary>Width, in pixels.</summary>
    public double Width => Right - Left;

    /// <summary>Height, in pixels.</summary>
    public double Height => Bottom - Top;
}
