using Holdfast.Fitting;
using Holdfast.Fluorescence;
using Holdfast.Isotherms;
using Holdfast.Kinetics;

namespace Holdfast.Claims.Analyses;

/// <summary>A family of curves that can be fitted to a study's series or to a table of points.</summary>
/// <param name="Name">Name as typed: "kinetics".</param>
/// <param name="Curves">Its curves.</param>
/// <param name="Axes">The two columns a table of points has: "t and q".</param>
/// <param name="XUnit">Unit of x where the table states none.</param>
/// <param name="YUnit">Unit of y where the table states none.</param>
/// <param name="Absent">What to say when the study has no such series.</param>
/// <param name="OfStudy">The study's own series with their fits.</param>
public sealed record CurveFamily(
    string Name, IReadOnlyList<Model> Curves, string Axes, string XUnit, string YUnit, string Absent,
    Func<Evidence, IEnumerable<(string Series, IReadOnlyList<FitResult> Fits)>> OfStudy)
{
    /// <summary>Every family.</summary>
    public static IReadOnlyList<CurveFamily> All { get; } =
    [
        new("kinetics", Kinetic.All, "t and q", "min", "mg/g", "No series of this study varies the contact time alone. Record the contact time of each vessel.",
            e => e.Kinetics.Select(f => (f.Series.Name, (IReadOnlyList<FitResult>)f.Fits))),
        new("isotherm", Isotherm.All, "Ce and q", "mg/L", "mg/g", "No series of this study varies the start concentration alone. Record C0 of each vessel.",
            e => e.Isotherms.Select(f => (f.Series.Name, (IReadOnlyList<FitResult>)f.Fits))),
        new("quenching", Quenching.All, "Q and F", "µmol/L", "", "No series of this study has signals at several levels of quencher. Record the quencher of each vessel.",
            e => Sensing.Of(e).Series.Where(s => !s.Fits.IsEmpty).Select(s => (s.Name, (IReadOnlyList<FitResult>)s.Fits))),
    ];

    /// <summary>Points with the weights of the family: signals without stated uncertainties have a constant relative error.</summary>
    /// <param name="points">Points as read.</param>
    public Outcome<Points> Weighed(Points points)
        => Name == "quenching" && points.U is null ? Quenching.PointsOf(points.X, points.Y, points.XUnit, points.YUnit, points.Ids) : new(points, []);
}
