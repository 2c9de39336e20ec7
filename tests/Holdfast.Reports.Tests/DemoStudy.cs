using Holdfast.Claims;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Testing;

namespace Holdfast.Reports.Tests;

/// <summary>The invented demo study, taken in from its files and worked out once for all tests.</summary>
internal static class DemoStudy
{
    private static readonly Lazy<Dossier> Once = new(() => Dossier.Of(TakenIn()));

    /// <summary>The study worked out.</summary>
    public static Dossier Dossier => Once.Value;

    private static Study TakenIn()
    {
        var folder = Directory.CreateTempSubdirectory("holdfast-report-").FullName;
        try
        {
            using var study = StudyFolder.Begin(Path.Combine(folder, "demo"), "Ada", new Noon(), new StudyBegun("Nickel on EHA-2 (invented)", "Ni", Invented: true));
            Take.Files(study, [Repository.Path("samples", "demo")], new TakeOptions(), "Ada", default);
            return study.Study;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // Time that stands still, so that the study's fingerprint is the same in every run.
    private sealed class Noon : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(2026, 5, 12, 12, 0, 0, TimeSpan.Zero);
    }
}
