using Holdfast.Claims.Analyses;

namespace Holdfast.Reports.Trails;

/// <summary>
/// The derived numbers of one area of work, in one file: what follows from many vessels together. Areas are found by <see cref="Studies.Catalogue"/> and need a constructor
/// without parameters.
/// </summary>
/// <remarks>
/// An address is what the number is, a colon, and what it belongs to: "dH:TEMP-298". Where one thing has several, the second part says which after an @:
/// "qm:ISO-298@langmuir". It is made of names from the study alone, so that it stays the same when other data come.
/// </remarks>
internal interface IDerivedNumbers
{
    /// <summary>Every derived number of this area with its trail; none when the study holds nothing for it.</summary>
    /// <param name="evidence">The study worked out.</param>
    IEnumerable<NumberTrail> Of(Evidence evidence);
}
