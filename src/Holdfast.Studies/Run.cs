using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>One sitting at an instrument: its standards calibrate its samples.</summary>
/// <param name="Id">Stable id, from the file's name: "aas-run1".</param>
/// <param name="Signal">Name of the signal property read.</param>
/// <param name="Details">What the file said about itself, by key as written ("Element", "Wavelength"), for the methods text.</param>
/// <param name="Origin">The file.</param>
public sealed record Run(string Id, string Signal, ImmutableSortedDictionary<string, string> Details, Origin Origin);
