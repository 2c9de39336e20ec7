using System.Collections.Immutable;

namespace Holdfast.Reports.Trails;

/// <summary>The fit or line behind a derived number, with the points it went through.</summary>
/// <param name="How">What was fitted to how much, in a sentence, with the scatter that was left.</param>
/// <param name="X">Abscissa with its unit: "Ce (mg/L)".</param>
/// <param name="Y">Ordinate with its unit.</param>
/// <param name="Points">The points, in the order of the fit.</param>
public sealed record TrailFit(string How, string X, string Y, ImmutableArray<TrailPoint> Points);

/// <summary>One point of a fit.</summary>
/// <param name="Name">The sample, or the series whose own fit gave it.</param>
/// <param name="X">Abscissa, in the unit of the fit.</param>
/// <param name="Y">Ordinate as measured, in the unit of the fit.</param>
/// <param name="Fitted">Ordinate of the curve, in the same unit.</param>
/// <param name="Trail">Address of the trail that leads on from the point; null where it has none.</param>
public sealed record TrailPoint(string Name, double X, double Y, double Fitted, string? Trail);
