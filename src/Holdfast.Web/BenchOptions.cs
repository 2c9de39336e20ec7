namespace Holdfast.Web;

/// <summary>What the bench needs to know of the world.</summary>
/// <param name="Folder">The study's folder, or one in which a study is to be begun.</param>
/// <param name="Clock">The time.</param>
/// <param name="Who">The author's name as it stands in the Daybook.</param>
/// <param name="Port">Port on this computer; 0 for a free one.</param>
public sealed record BenchOptions(string Folder, TimeProvider Clock, string Who, int Port = 0)
{
    /// <summary>Makes the worked example, invented, to be read beside one's own study; null where there is none.</summary>
    public Func<Studies.Study>? Example { get; init; }
}
