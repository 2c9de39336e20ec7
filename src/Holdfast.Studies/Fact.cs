namespace Holdfast.Studies;

/// <summary>One thing recorded about a sample, as it was understood and as it was written.</summary>
/// <param name="Property">Name of the <see cref="Studies.Property"/>.</param>
/// <param name="Value">The number in the property's unit; null for words, for a censored value and for what is not a number.</param>
/// <param name="U">Standard uncertainty that came with it, in the property's unit, or null.</param>
/// <param name="Below">Limit of a censored value ("&lt; 0.05"), in the property's unit, or null.</param>
/// <param name="Words">The words, for a property that holds words.</param>
/// <param name="Written">The cell as it was written, with its unit.</param>
/// <param name="Origin">Where it was read.</param>
public sealed record Fact(string Property, double? Value, double? U, double? Below, string? Words, string Written, Origin Origin);
