using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>One part of the results: the stated claims about one area of work, in their order, with the figures they rest on.</summary>
/// <param name="Kind">The area; null for claims that no area's figure shows.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Claims">Its claims.</param>
/// <param name="Figures">Its figures, each once.</param>
/// <param name="RestsOn">The figure of each claim that rests on one, by the claim's id.</param>
internal sealed record Topic(IResultSection? Kind, string Title, ImmutableArray<Verdict> Claims, ImmutableArray<Figure> Figures, IReadOnlyDictionary<string, Figure> RestsOn);
