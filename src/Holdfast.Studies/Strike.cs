namespace Holdfast.Studies;

/// <summary>A line through a sample or a reading: it stays legible and no longer counts.</summary>
/// <param name="Target">Sample code or reading id.</param>
/// <param name="Reason">Why; a reader will see this.</param>
/// <param name="Entry">Number of the history entry.</param>
/// <param name="When">When it was struck.</param>
/// <param name="Who">Who struck it.</param>
public sealed record Strike(string Target, string Reason, long Entry, DateTimeOffset When, string Who);
