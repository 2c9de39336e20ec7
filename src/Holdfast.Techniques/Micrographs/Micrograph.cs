using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Particles;
using Holdfast.Studies;

namespace Holdfast.Techniques.Micrographs;

/// <summary>A micrograph with what was drawn on it: its scale, its field, its particles, how well they are read.</summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="Scale">Size of a pixel; null while nothing says it.</param>
/// <param name="Frame">Field and cells.</param>
/// <param name="Counted">Cells that are counted, from 1; empty for all.</param>
/// <param name="Particles">Every particle that is not struck, in the order of their marks.</param>
/// <param name="Readers">How well a particle is read, in pixels.</param>
/// <param name="Marks">Every mark of the picture, struck ones included.</param>
public sealed record Micrograph(
    Measurement Measurement, PixelScale? Scale, CountingFrame Frame, ImmutableArray<int> Counted, ImmutableArray<MarkedParticle> Particles, Observers Readers, ImmutableArray<PictureMark> Marks)
{
    /// <summary>Particles to be measured again before the repeatability is known well enough (a decision of this project).</summary>
    public const int ToRepeat = 10;

    /// <summary>Most cells across or down.</summary>
    public const int MostCells = 50;

    /// <summary>Pixels across.</summary>
    public int Width => Pixels(MicrographFiles.Width);

    /// <summary>Pixels down.</summary>
    public int Height => Pixels(MicrographFiles.Height);

    /// <summary>Page of the file that holds the picture, from 0.</summary>
    public int Page => Pixels(MicrographFiles.Page) - 1;

    /// <summary>Standard deviation of one reading, in pixels: from repeats where there are some, else both ends as placed once (assumed).</summary>
    public double OneReading => Readers.OneReading ?? Math.Sqrt(2) * ScaleBar.EndOnce;

    /// <summary>Particles that were measured again and are not struck.</summary>
    public int Repeated => Particles.Count(p => p.Readings.Length > 1);

    /// <summary>What was drawn on the picture of a measurement; null for one that is no micrograph.</summary>
    /// <param name="study">The study.</param>
    /// <param name="measurement">The measurement.</param>
    public static Micrograph? Of(Study study, Measurement measurement)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(measurement);
        if (measurement.Technique != MicrographFiles.TechniqueName)
            return null;
        ImmutableArray<PictureMark> all = [.. study.Marks.Where(m => m.Measurement == measurement.Id)];
        ImmutableArray<PictureMark> marks = [.. all.Where(m => study.StrikeOf(m) is null && m.Points.Length >= 2 * MarkKinds.Points.GetValueOrDefault(m.Kind, 0))];
        var empty = new Micrograph(measurement, null, new CountingFrame(default), [], [], Observers.Of([], []), all);
        var frame = FrameOf(marks, empty.Width, empty.Height);
        ImmutableArray<int> counted = [.. marks.Where(m => m.Kind == MarkKinds.Counted).Select(m => frame.CellAt(m.Points[0], m.Points[1])).OfType<int>().Distinct().Order()];
        var settled = marks.LastOrDefault(m => m.Kind == MarkKinds.Settled)?.Written.Split(':')[0];
        var stated = measurement.Setting(MicrographFiles.PixelSize)?.Value;
        return empty with
        {
            Scale = PixelScale.Of([.. marks.Where(m => m.Kind == MarkKinds.Bar)], stated, settled),
            Frame = frame,
            Counted = counted,
            Particles = ParticlesOf(marks, frame, counted),
            Readers = ReadersOf(marks),
        };
    }

    /// <summary>Standard uncertainty of one size of a particle, in the unit of the scale: its readings and the scale.</summary>
    /// <param name="pixels">The size in pixels.</param>
    /// <param name="readings">How often it was read.</param>
    public double? SizeU(double pixels, int readings) => Scale is null ? null : ScaleBar.Combine(pixels * Scale.PerPixel, OneReading * Scale.PerPixel / Math.Sqrt(readings), Scale.RelativeU);

    private int Pixels(string setting) => (int)(Measurement.Setting(setting)?.Value ?? 1);

    private static CountingFrame FrameOf(ImmutableArray<PictureMark> marks, int width, int height)
    {
        var field = marks.LastOrDefault(m => m.Kind == MarkKinds.Field) is { } drawn ? Outline.Of(drawn.Places()).Box : new PictureBox(0, 0, width, height);
        var cells = marks.LastOrDefault(m => m.Kind == MarkKinds.Cells)?.Written.Split('x', StringSplitOptions.TrimEntries);
        return cells is [var across, var down] && Cells(across) is { } columns && Cells(down) is { } rows ? new(field, columns, rows) : new(field);
    }

    private static int? Cells(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n is >= 1 and <= MostCells ? n : null;

    private static ImmutableArray<MarkedParticle> ParticlesOf(ImmutableArray<PictureMark> marks, CountingFrame frame, ImmutableArray<int> counted)
    {
        var particles = ImmutableArray.CreateBuilder<MarkedParticle>();
        foreach (var mark in marks.Where(m => m.Kind is MarkKinds.Line or MarkKinds.Outline && m.Repeats is null))
        {
            var shape = Outline.Of(mark.Places());
            var cell = frame.CellOf(shape.Box);
            var why = shape.Longest <= 0 || (mark.Kind == MarkKinds.Outline && !(shape.Area > 0)) ? "no size"
                : frame.IsCut(shape.Box) ? "touches the edge of the field"
                : !counted.IsEmpty && !counted.Contains(cell ?? 0) ? cell is null ? "outside the field" : $"in cell {cell.Value.ToString(CultureInfo.InvariantCulture)}, which is not counted" : null;
            particles.Add(new(mark, particles.Count + 1, shape, [.. marks.Where(m => m.Id == mark.Id || m.Repeats == mark.Id)], why));
        }

        return particles.ToImmutable();
    }

    private static Observers ReadersOf(ImmutableArray<PictureMark> marks)
    {
        var particles = marks.Where(m => m.Kind is MarkKinds.Line or MarkKinds.Outline).GroupBy(m => m.Repeats ?? m.Id, StringComparer.Ordinal).Select(g => g.GroupBy(m => m.Who, StringComparer.Ordinal).ToArray()).ToArray();
        double[][] repeats = [.. particles.SelectMany(p => p.Select(who => who.Select(MarkedParticle.Reading).ToArray()))];
        string[] people = [.. particles.SelectMany(p => p.Select(who => who.Key)).Distinct(StringComparer.Ordinal)];
        var common = particles.Where(p => p.Length == people.Length).ToArray();
        double[][] table = people.Length > 1 && common.Length > 1
            ? [.. people.Select(name => common.Select(p => MarkedParticle.Reading(p.First(who => who.Key == name).First())).ToArray())] : [];
        return Observers.Of(repeats, table);
    }
}
