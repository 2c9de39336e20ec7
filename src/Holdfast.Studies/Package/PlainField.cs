namespace Holdfast.Studies.Package;

/// <summary>A column of a table of the plain package.</summary>
/// <param name="Name">Heading; holds the unit where there is one: "mass_mg".</param>
/// <param name="Type">Type of the Table Schema: "string", "number", "integer", "boolean", "datetime", "object".</param>
/// <param name="Description">What it holds, in words.</param>
/// <param name="Unit">Its unit, or null.</param>
public sealed record PlainField(string Name, string Type, string Description, string? Unit = null);
