using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Particles;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Techniques.Micrographs;

namespace Holdfast.Web.Live;

/// <summary>What the page of a picture checks before it keeps a mark, and what it says afterwards.</summary>
internal static class PictureActs
{
    private const double Shortest = 1;

    /// <summary>What keeps a mark from being kept, or null.</summary>
    /// <param name="of">The micrograph before it.</param>
    /// <param name="kind">What was drawn.</param>
    /// <param name="points">Its points.</param>
    public static string? Trouble(Micrograph of, string kind, ImmutableArray<double> points)
    {
        var shape = points.Length >= 4 ? Outline.Of(Enumerable.Range(0, points.Length / 2).Select(i => (points[2 * i], points[2 * i + 1]))) : null;
        return kind switch
        {
            MarkKinds.Counted => of.Frame is { Across: 1, Down: 1 } ? "The field has no cells yet. Lay them below the picture first."
                : of.Frame.CellAt(points[0], points[1]) is not { } cell ? "That place lies outside the field, so no cell is counted."
                : of.Counted.Contains(cell) ? $"Cell {cell.ToString(CultureInfo.InvariantCulture)} is counted already." : null,
            _ when shape is null || shape.Longest < Shortest => "Both ends lie on one place, so nothing is kept. Draw it again.",
            MarkKinds.Outline when !(shape.Area >= Shortest) || shape.Shortest < Shortest => "The outline has no area, so nothing is kept. Draw it around the particle.",
            MarkKinds.Field when shape.Box.Width < Shortest || shape.Box.Height < Shortest => "The field has no area, so nothing is kept. Click two opposite corners.",
            _ => null,
        };
    }

    /// <summary>What was kept, in a sentence.</summary>
    /// <param name="now">The micrograph with it.</param>
    /// <param name="kind">What was drawn.</param>
    /// <param name="repeats">The mark that was drawn afresh, or null.</param>
    public static string Said(Micrograph now, string kind, string? repeats)
    {
        if (kind == MarkKinds.Bar)
            return now.Scale is { Draws: 1 } ? "The bar is kept. Draw it a second time, afresh, so that it is known how well it is read." : $"The bar is kept. {now.Scale}.";
        if (kind is not (MarkKinds.Line or MarkKinds.Outline))
            return kind == MarkKinds.Field ? "The field is kept. What touches its edge is not counted." : $"Counted: {InWords.Count(now.Counted.Length, "cell")} of {Text(now.Frame.Across * now.Frame.Down)}.";
        var particle = repeats is null ? now.Particles[^1] : now.Particles.First(p => p.Mark.Id == repeats);
        var (measurand, pixels, _) = particle.Sizes().First();
        return $"Particle {Text(particle.Number)}: {measurand} {Size(now, pixels, particle.Readings.Length)}"
            + (repeats is null ? "" : $", read {InWords.Count(particle.Readings.Length, "time")}; {Text(now.Repeated)} of {Text(Micrograph.ToRepeat)} measured again")
            + (particle.LeftOut is { } why ? $". Not counted: {why}." : ".");
    }

    /// <summary>A length with its standard uncertainty in the unit of the scale; in pixels while nothing says how large a pixel is.</summary>
    /// <param name="of">The micrograph.</param>
    /// <param name="pixels">The length in pixels.</param>
    /// <param name="readings">How often it was read.</param>
    public static string Size(Micrograph of, double pixels, int readings) => of.Scale is { } scale
        ? $"{Shown(pixels * scale.PerPixel, of.SizeU(pixels, readings)!.Value)} {Unit.Parse(scale.Unit).Pretty}" : Shown(pixels, of.OneReading / Math.Sqrt(readings)) + " px";

    private static string Shown(double value, double u) => InWords.PlusMinus(Measured.From(value, new Source("size", "reading and scale", u)));

    /// <summary>The next particle to be measured again: the one after, until ten are done.</summary>
    /// <param name="now">The micrograph.</param>
    /// <param name="last">The one that was measured again just now.</param>
    public static PictureMark? NextToRepeat(Micrograph now, string last)
    {
        if (now.Repeated >= Micrograph.ToRepeat)
            return null;
        var at = now.Particles.ToList().FindIndex(p => p.Mark.Id == last);
        return now.Particles.Skip(at + 1).Concat(now.Particles.Take(at)).FirstOrDefault(p => p.Readings.Length == 1)?.Mark;
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
