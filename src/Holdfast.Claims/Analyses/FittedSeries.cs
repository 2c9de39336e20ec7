namespace Holdfast.Claims.Analyses;

/// <summary>Every curve of one family fitted to one series.</summary>
/// <param name="Series">The series.</param>
public sealed record FittedSeries(Series Series);
