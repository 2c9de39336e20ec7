using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyFigures;

/// <summary>All figures of a study, and what its figures share: names for files, marks with their bars, who made them.</summary>
public static class StudyFigure
{
    private static readonly Lazy<ImmutableArray<IStudyFigure>> Found = new(() =>
        [.. Catalogue.Of<IStudyFigure>().OrderBy(f => f.Place).ThenBy(f => f.GetType().Name, StringComparer.Ordinal)]);

    private static readonly ConditionalWeakTable<Dossier, Dictionary<IStudyFigure, Outcome<Figure[]>>> Known = [];

    /// <summary>Every kind of figure, in the order of the report.</summary>
    public static ImmutableArray<IStudyFigure> Kinds => Found.Value;

    /// <summary>Every figure of a study, in the order of the report.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static ImmutableArray<Figure> All(Dossier dossier) => [.. Kinds.SelectMany(k => Made(dossier, k).Value ?? [])];

    /// <summary>Kinds of figure that could not be made of this study.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static ImmutableArray<Finding> Fallen(Dossier dossier) => [.. Kinds.SelectMany(k => Made(dossier, k).Findings)];

    /// <summary>The figures of one kind.</summary>
    /// <typeparam name="TKind">The kind.</typeparam>
    /// <param name="dossier">The study worked out.</param>
    internal static IEnumerable<Figure> Of<TKind>(Dossier dossier) where TKind : IStudyFigure => Kinds.OfType<TKind>().SelectMany(k => Made(dossier, k).Value ?? []);

    // Each kind is a room of its own, made once for all who show it.
    private static Outcome<Figure[]> Made(Dossier dossier, IStudyFigure kind)
    {
        var made = Known.GetOrCreateValue(dossier);
        lock (made)
        {
            if (!made.TryGetValue(kind, out var figures))
                made[kind] = figures = Room.Of($"the figure {kind.GetType().Name.Replace("Figure", "", StringComparison.Ordinal).ToLowerInvariant()}", () => kind.Of(dossier).ToArray());
            return figures;
        }
    }

    /// <summary>A name for a figure and its file: letters, digits and hyphens of what it shows.</summary>
    /// <param name="kind">Kind of figure: "kinetics".</param>
    /// <param name="of">What it shows: the series or run.</param>
    internal static string Id(string kind, string of)
        => kind + "-" + LevelTable.Id(of);

    /// <summary>What a figure was made from: the study's version and fingerprint, and that it is invented where it is.</summary>
    /// <param name="dossier">The study worked out.</param>
    internal static IReadOnlyList<string> MadeFrom(Dossier dossier)
    {
        var study = dossier.Evidence.Study;
        var made = new List<string>
        {
            string.Create(CultureInfo.InvariantCulture, $"study {study.Title}, entry {study.Version}, fingerprint {study.Fingerprint}"),
        };
        if (study.Invented)
            made.Insert(0, "INVENTED demo data: nothing was measured");
        return made;
    }

    /// <summary>The 95 % bar of a measured value: half-width from its own degrees of freedom.</summary>
    /// <param name="value">The value.</param>
    internal static ErrorBar? Bar(Measured value)
        => value.U > 0 ? ErrorBar.Around(value.Value, ExpandedUncertainty.Of(value).U) : null;

    /// <summary>Marks of vessels; struck ones hollow, ones without a value left out.</summary>
    /// <param name="vessels">Vessels that count.</param>
    /// <param name="struck">Struck vessels.</param>
    /// <param name="x">Abscissa of a vessel, or null.</param>
    /// <param name="y">Ordinate of a vessel, or null.</param>
    /// <param name="bars">True to draw the 95 % bars of single vessels.</param>
    internal static IReadOnlyList<Mark> Marks(
        IEnumerable<Vessel> vessels, IEnumerable<Vessel> struck, Func<Vessel, Measured?> x, Func<Vessel, Measured?> y, bool bars = true)
    {
        return [.. vessels.Select(v => One(v, MarkState.Measured)).OfType<Mark>(), .. struck.Select(v => One(v, MarkState.Struck)).OfType<Mark>()];

        Mark? One(Vessel vessel, MarkState state)
            => x(vessel) is { } across && y(vessel) is { } up
                ? new Mark(across.Value, up.Value) { State = state, Id = vessel.Code, XBar = bars ? Bar(across) : null, YBar = bars ? Bar(up) : null }
                : null;
    }
}
