namespace Holdfast;

/// <summary>
/// A value that the data may or may not be able to give, with the findings that go with it. Both may be present: a chemist
/// needs the number together with its caveat. Nothing here is thrown; a wrong call is.
/// </summary>
/// <typeparam name="T">What was asked for.</typeparam>
/// <param name="Value">The value, or null when the data cannot answer.</param>
/// <param name="Findings">Caveats, and the reason when there is no value.</param>
public sealed record Outcome<T>(T? Value, IReadOnlyList<Finding> Findings) where T : class
{
    /// <summary>True when there is a value.</summary>
    [System.Diagnostics.CodeAnalysis.MemberNotNullWhen(true, nameof(Value))]
    public bool HasValue => Value is not null;

    /// <summary>No value, for the reason given.</summary>
    public static Outcome<T> None(params Finding[] findings) => new(null, findings);
}
