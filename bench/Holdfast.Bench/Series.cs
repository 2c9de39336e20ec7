using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;

namespace Holdfast.Bench;

/// <summary>The eight small series of reference/regression/synthetic-curves.json with their stated starts.</summary>
internal static class Series
{
    private static readonly double[] Concentrations = [0.8, 2.5, 6, 12, 22, 38, 60, 95];
    private static readonly double[] Times = [2, 5, 10, 20, 30, 45, 60, 90, 120, 180];

    /// <summary>Name, model, points and start of each.</summary>
    public static IReadOnlyList<(string Name, Model Model, Points Points, double[] Start)> All { get; } =
    [
        ("Langmuir", Model.Of<Langmuir>(), new(Concentrations, [4.29, 11.68, 24.135, 36.279, 50.471, 61.593, 66.909, 72.714]), [60, 0.02]),
        ("Freundlich", Model.Of<Freundlich>(), new([2.5, 6, 12, 22, 38, 60], [14.315, 22.499, 31.577, 40.942, 53.381, 67.686]), [5, 1.3]),
        ("PseudoFirstOrder", Model.Of<PseudoFirstOrder>(), new(Times, [4.224, 9.798, 17.588, 26.997, 33.822, 36.911, 39.962, 39.651, 41.313, 41.736]), [30, 0.02]),
        ("PseudoSecondOrder", Model.Of<PseudoSecondOrder>(), new(Times, [6.755, 14.283, 21.089, 29.612, 32.434, 37.005, 39.328, 40.363, 41.744, 43.856]), [35, 0.005]),
        ("Sips", Model.Of<Sips>(), new(Concentrations, [7.07, 15.212, 27.082, 39.116, 48.956, 58.829, 67.368, 71.703]), [70, 0.03, 1]),
        ("RedlichPeterson", Model.Of<RedlichPeterson>(), new(Concentrations, [4.613, 12.19, 23.756, 37.27, 49.028, 62.9, 70.032, 81.369]), [4, 0.05, 1]),
        ("Elovich", Model.Of<Elovich>(), new(Times, [8.774, 13.853, 19.113, 23.304, 27.028, 28.973, 32.206, 35.627, 36.781, 40.047]), [4, 0.08]),
        ("Toth", Model.Of<Toth>(), new(Concentrations, [4.796, 12.646, 22.513, 34.816, 46.579, 55.338, 63.52, 72.004]), [75, 0.04, 1]),
    ];

    /// <summary>One of them.</summary>
    public static (string Name, Model Model, Points Points, double[] Start) Of(string name) => All.Single(s => s.Name == name);
}
