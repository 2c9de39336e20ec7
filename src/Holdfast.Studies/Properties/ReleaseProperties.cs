namespace Holdfast.Studies.Properties;

/// <summary>What is recorded about a loaded sorbent that was put into fresh liquid.</summary>
public static class ReleaseProperties
{
    /// <summary>Share of the loaded metal that metal-free water at the same pH took off.</summary>
    public static readonly Property ReleasedInWater = Property.Number("released-in-water", "released by plain water", "%", null, "releasedinwater", "waterrelease", "desorbedinwater");
}
