using Holdfast.Techniques.Micrographs;

namespace Holdfast.Web.Live;

/// <summary>Pictures that pages are looking at, unpacked once each and kept while there is room: a browser is given pieces, never the whole.</summary>
/// <param name="study">Where the originals are.</param>
public sealed class OpenPictures(OpenStudy study)
{
    private const long MostKept = 420L << 20;

    private readonly Lock gate = new();
    private readonly LinkedList<(string Key, Picture Picture)> kept = [];

    /// <summary>A picture, from memory or from its original.</summary>
    /// <param name="micrograph">The micrograph.</param>
    /// <exception cref="Studies.StudyException">The original is missing or damaged (HF-432), or no picture (HF-406).</exception>
    public Picture Of(Micrograph micrograph)
    {
        ArgumentNullException.ThrowIfNull(micrograph);
        var origin = micrograph.Measurement.Origin;
        var key = FormattableString.Invariant($"{origin.Original}/{micrograph.Page}");
        // One after the other: two windows on one large picture would otherwise unpack it twice.
        lock (gate)
        {
            var found = kept.FirstOrDefault(k => k.Key == key);
            if (found.Picture is not null)
                kept.Remove(found);
            else
                found = (key, Picture.Of(study.Original(origin.Original ?? ""), micrograph.Page, origin.FileName));
            kept.AddFirst(found);
            while (kept.Count > 1 && kept.Sum(k => k.Picture.Bytes) > MostKept)
                kept.RemoveLast();
            return found.Picture;
        }
    }
}
