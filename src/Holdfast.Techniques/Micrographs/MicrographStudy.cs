using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;

namespace Holdfast.Techniques.Micrographs;

/// <summary>The micrographs of a study. Struck ones are left out.</summary>
/// <param name="Pictures">Each with what was drawn on it, in the order they came.</param>
public sealed record MicrographStudy(ImmutableArray<Micrograph> Pictures)
{
    private const int MostReasons = 3;

    private static readonly Analysis<MicrographStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static MicrographStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>What is said of a micrograph: its scale, how often it was read, what is left out.</summary>
    /// <param name="picture">The micrograph.</param>
    public static ImmutableArray<Finding> Findings(Micrograph picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var name = $"{picture.Measurement.Id} ({picture.Measurement.Origin.FileName})";
        if (picture.Scale is { IsContradicted: true, ByBar: { } bar, ByFile: { } file } scale)
        {
            findings.Add(Finding.Of(MicrographCodes.Contradicted, scale.IsSettled ? Weight.Note : Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"{name}: a pixel is {bar:G5} {scale.Unit} by the bar and {file:G5} {scale.Unit} by the file, {100 * Math.Abs(bar / file - 1):0.0} % apart; reading the bar explains {200 * scale.ReadingU:0.0} %. ")
                + (scale.IsSettled ? $"You said that the {(scale.IsByFile ? "file" : "bar")} holds." : "One of them is wrong. Look for a calibration and say which holds; until then the sizes are by the bar, and their uncertainty covers both."), picture.Measurement.Id));
        }

        if (picture.Particles.IsEmpty)
            return findings.ToImmutable();
        if (picture.Scale is null)
        {
            findings.Add(Finding.Of(MicrographCodes.NoScale, Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"{name}: {picture.Particles.Length} particles are marked and nothing says how large a pixel is, so they have no size. Draw the scale bar and type its length."), picture.Measurement.Id));
            return findings.ToImmutable();
        }

        if (picture.Scale.Draws == 1 || picture.Repeated < Micrograph.ToRepeat)
        {
            string[] missing = [.. picture.Scale.Draws == 1 ? ["the bar was drawn once"] : Array.Empty<string>(), .. picture.Repeated < Micrograph.ToRepeat ? [string.Create(CultureInfo.InvariantCulture, $"{picture.Repeated} of {Micrograph.ToRepeat} particles were measured again")] : Array.Empty<string>()];
            findings.Add(Finding.Of(MicrographCodes.ReadOnce, Weight.Note, $"{name}: {string.Join(", and ", missing)}. " + (picture.Readers.Repeatability is null ? "How well it is read is assumed: half a pixel for each end." : "How well it is read rests on these few."), picture.Measurement.Id));
        }

        if (Cut(picture) is { } cut)
            findings.Add(Finding.Of(MicrographCodes.Cut, Weight.Note, $"{name}: {cut}", picture.Measurement.Id));
        return findings.ToImmutable();
    }

    // Long particles are cut by the edge more often than short ones: what is left is too short by so much.
    private static string? Cut(Micrograph picture)
    {
        var left = picture.Particles.Count(p => p.LeftOut is not null);
        if (left == 0)
            return null;
        var said = string.Create(CultureInfo.InvariantCulture, $"{left} of {picture.Particles.Length} marked particles are not counted: {string.Join("; ", picture.Particles.Where(p => p.LeftOut is not null).GroupBy(p => p.LeftOut).Take(MostReasons).Select(g => $"{g.Count()} {g.Key}"))}.");
        (double Size, double Weight)[] inside = [.. picture.Particles.Where(p => p.LeftOut is null && p.Shape.Box.Width < picture.Frame.Field.Width && p.Shape.Box.Height < picture.Frame.Field.Height)
            .Select(p => (p.Sizes().First().Value * picture.Scale!.PerPixel, picture.Frame.Weight(p.Shape.Box)))];
        if (inside.Length < 2 || !picture.Counted.IsEmpty)
            return said;
        var weighted = CountingFrame.Weighted(inside);
        return said + string.Create(CultureInfo.InvariantCulture, $" The edge takes long ones more often: weighted by their chance to lie inside, the mean is {weighted.Mean:G4} {picture.Scale!.Unit} instead of {inside.Average(s => s.Size):G4}.");
    }

    private static MicrographStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        return new([.. study.Measurements.Where(m => !study.IsStruck(m)).Select(m => Micrograph.Of(study, m)).OfType<Micrograph>()]);
    }
}

/// <summary>Codes of what micrographs say of themselves.</summary>
internal static class MicrographCodes
{
    /// <summary>Bar and file state different sizes of a pixel.</summary>
    public const string Contradicted = "HF-773";

    /// <summary>Particles are marked and no scale is known.</summary>
    public const string NoScale = "HF-774";

    /// <summary>The bar was drawn once, or fewer than ten particles were measured again.</summary>
    public const string ReadOnce = "HF-775";

    /// <summary>Particles are left out by the counting rule.</summary>
    public const string Cut = "HF-776";
}
