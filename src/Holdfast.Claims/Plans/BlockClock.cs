using Holdfast.Planning;

namespace Holdfast.Claims.Plans;

/// <summary>The table of starts of one series and block.</summary>
/// <param name="Series">Its series.</param>
/// <param name="Block">Its block.</param>
/// <param name="Starts">The table.</param>
/// <param name="StartCorrelation">Largest |ρ| between level and order of starting; null where contact times decide the order.</param>
/// <param name="ReadCorrelation">The same for the order of reading.</param>
public sealed record BlockClock(string Series, int Block, StaggeredStarts Starts, double? StartCorrelation, double? ReadCorrelation);
