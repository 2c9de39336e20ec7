using System.Collections.Immutable;
using Holdfast.Particles;
using Holdfast.Studies;

namespace Holdfast.Techniques.Micrographs;

/// <summary>A particle that was marked on a micrograph: a line along it, or its outline.</summary>
/// <param name="Mark">The mark that stands for it.</param>
/// <param name="Number">Its number in the picture, from 1.</param>
/// <param name="Shape">Its line or outline, in pixels.</param>
/// <param name="Readings">Marks that are not struck: the first, and those that were drawn afresh.</param>
/// <param name="LeftOut">Why it is not counted, in words; null for one that is.</param>
public sealed record MarkedParticle(PictureMark Mark, int Number, Outline Shape, ImmutableArray<PictureMark> Readings, string? LeftOut)
{
    /// <summary>Name of the length of a line.</summary>
    public const string Length = "length";

    /// <summary>Name of the diameter of the disk of the same area.</summary>
    public const string EqualArea = "equal-area diameter";

    private const string Longest = "greatest Feret diameter", Shortest = "least Feret diameter", Aspect = "aspect ratio", Circularity = "circularity";

    /// <summary>What is measured of it: each with its name, its value, in pixels or without unit, and whether it is a length.</summary>
    public IEnumerable<(string Measurand, double Value, bool IsLength)> Sizes()
    {
        Outline[] drawn = [.. Readings.Select(r => Outline.Of(r.Places()))];
        if (Mark.Kind == MarkKinds.Line)
            return [(Length, drawn.Average(d => d.Longest), true)];
        return
        [
            (EqualArea, drawn.Average(d => ParticleShape.EquivalentDiameter(d.Area)), true), (Longest, drawn.Average(d => d.Longest), true), (Shortest, drawn.Average(d => d.Shortest), true),
            (Aspect, drawn.Average(d => ParticleShape.AspectRatio(d.Longest, d.Shortest)), false), (Circularity, drawn.Average(d => ParticleShape.Circularity(d.Area, d.Perimeter)), false),
        ];
    }

    /// <summary>The one number by which readings of one particle are compared, in pixels: the length, or the diameter of the disk of the same area.</summary>
    /// <param name="mark">A line or outline.</param>
    internal static double Reading(PictureMark mark)
    {
        var shape = Outline.Of(mark.Places());
        return mark.Kind == MarkKinds.Line ? shape.Longest : ParticleShape.EquivalentDiameter(shape.Area);
    }
}
