using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests;

/// <summary>The invented demo study, taken in from its files in samples/demo and worked out once for all tests.</summary>
internal static class DemoStudy
{
    private static readonly Lazy<Study> Taken = new(TakeIn);
    private static readonly Lazy<Dossier> Worked = new(() => Dossier.Of(Taken.Value));

    /// <summary>The study as taken in.</summary>
    public static Study Study => Taken.Value;

    /// <summary>
    /// The same study read as the reference computed it: calibration lines with equal weights, curves by plain least squares of q. It checks the chain of
    /// formulas against numbers from outside; what the program says by itself is in <see cref="Dossier"/>.
    /// </summary>
    public static Evidence Textbook => Plain.Value;

    /// <summary>Its quantities, findings and verdicts.</summary>
    public static Dossier Dossier => Worked.Value;

    private static readonly Lazy<Evidence> Plain = new(() =>
    {
        var evidence = Evidence.Of(Study with { Runs = [.. Study.Runs.Select(r => r with { Details = r.Details.SetItem("Calibration weights", "equal") })] });
        return evidence with
        {
            Kinetics = [.. evidence.Kinetics.Select(f => ByLeastSquares(f, Kinetic.All))],
            Isotherms = [.. evidence.Isotherms.Select(f => ByLeastSquares(f, Isotherm.All))],
        };

        static FittedSeries ByLeastSquares(FittedSeries fitted, IReadOnlyList<Model> curves) => fitted with { Fits = [.. curves.Select(c => c.Fit(fitted.Fits[0].Points))] };
    });

    private static Study TakeIn()
    {
        var root = Directory.CreateTempSubdirectory("holdfast-claims-").FullName;
        try
        {
            using var folder = StudyFolder.Begin(Path.Combine(root, "demo"), "the author", TimeProvider.System, new StudyBegun("demo", "Ni", Invented: true));
            Take.Files(folder, [Repository.Path("samples", "demo")], new TakeOptions(), "the author");
            return folder.Study;
        }
        finally
        {
            foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
                File.SetAttributes(file, FileAttributes.Normal);
            Directory.Delete(root, recursive: true);
        }
    }
}
