using System.Collections.Immutable;
using Holdfast.Isotherms;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Claims.Tests;

/// <summary>
/// An invented study done as it should be: a straight calibration with check standards, controls at every level, end pH in every vessel, kinetics
/// up to the highest concentration with times long after the plateau, an isotherm to coverage 0.9, three batches, margins fixed before
/// the first file. The seed is one of the many in which no level lies off by chance beyond one time in twenty: with 2718 the three vessels at 10 mg/L do
/// (2.5 standard deviations), and the lack-of-fit test says so. Truth: Langmuir 14 mg/g and 0.35 L/mg, first order 0.08/min; vessels scatter by 0.6 %.
/// </summary>
internal static class StrongStudy
{
    private const double Capacity = 14, Affinity = 0.35, Rate = 0.08, Slope = 0.06, Intercept = 0.001, Vessel = 0.006;
    private static readonly Origin File = new("00", "strong.csv", null, 1, null);
    private static readonly Lazy<Dossier> Made = new(() => Dossier.Of(Build()));

    /// <summary>The study worked out.</summary>
    public static Dossier Dossier => Made.Value;

    /// <summary>The study with the claims that its author states.</summary>
    public static Study Build() => new Bench().Study();

    private sealed class Bench
    {
        private readonly SeededStream chance = new(1618, "strong study");
        private readonly List<Sample> samples = [];
        private readonly List<Reading> readings = [];

        public Study Study()
        {
            for (var i = 0; i < 10; i++)
                Read(Add(Invariant($"B-{i}"), SampleRole.Blank), 0, 1);
            foreach (var level in new[] { 0, 0.25, 0.5, 1, 1.5, 2, 3 })
                Read(Add(Invariant($"S-{level}"), SampleRole.Standard, (SpectrometryProperties.StandardConcentration, level)), level, 3);
            Read(Add("Q-1", SampleRole.CheckStandard, (SpectrometryProperties.StandardConcentration, 1.5)), 1.5, 3);
            foreach (var c0 in new[] { 2.0, 5, 10, 15, 20, 30, 40, 60 })
                Replicates("ISO", Invariant($"{c0}"), c0, 2, 1440, "B1", control: true);
            foreach (var c0 in new[] { 5.0, 60 })
            {
                foreach (var time in new[] { 1.5, 3, 5, 8, 12, 18, 25, 35, 60, 90, 135, 200 })
                    Replicates(Invariant($"KIN-{c0}"), Invariant($"{time}"), c0, 2, time, "B1", control: time > 199);
            }

            foreach (var dose in new[] { 0.5, 1, 2, 4, 12, 16 })
                Replicates("DOSE", Invariant($"{dose}"), 20, dose, 1440, "B1", control: true);
            foreach (var batch in new[] { "B1", "B2", "B3" })
                Replicates("BATCH", batch, 20, 2, 1440, batch, control: batch == "B1");
            Replicates("WATER", "tap", 1.0, 4, 1440, "B1", control: true);
            for (var i = 0; i < 3; i++)
                Add(Invariant($"D-{i}"), SampleRole.Digest, (BatchProperties.UptakeBySolid, Uptake(20, 2, 1440) * (1 + Vessel * chance.Normal())), (BatchProperties.InitialConcentration, 20));
            for (var i = 0; i < 3; i++)
            {
                Add(Invariant($"POWDER-{i}"), SampleRole.SorbentBlank, (BatchProperties.StartPh, 6), (BatchProperties.Volume, 25), (BatchProperties.Mass, 50),
                    (StabilityProperties.DissolvedCalcium, 3 * (1 + 0.02 * chance.Normal())), (StabilityProperties.MassLoss, 0.3 * (1 + 0.05 * chance.Normal())));
            }

            Read(Add("Q-2", SampleRole.CheckStandard, (SpectrometryProperties.StandardConcentration, 1.5)), 1.5, 3);
            return new Study
            {
                Title = "strong",
                Invented = true,
                Analyte = "Ni",
                Samples = [.. samples, .. StrongSensor.Samples],
                Readings = [.. readings, .. StrongSensor.Readings],
                Runs = [new Run("run", SpectrometryProperties.Absorbance.Name, ImmutableSortedDictionary<string, string>.Empty, File), .. StrongSensor.Runs],
                Originals = [new Original("00", "strong.csv", 1, 9, default)],
                Margins =
                [
                    new("plateau", -5, 5, "%", 2), new("removal", -2, 2, "percentage points", 2), new("capacity", -10, 10, "%", 2),
                    new("mass-balance", 90, 110, "%", 2), new("check-standard", 90, 110, "%", 2), .. StrongSensor.Margins,
                ],
                Apparatus = [new("flask", BatchProperties.InitialConcentration.Name, null, 0.002, true, "certificate", null)],
                Claims = [.. Claims(), .. StrongSensor.Claims],
            };
        }

        private static IEnumerable<StatedClaim> Claims()
        {
            yield return Claim("linear-calibration", ("run", "run"), ("to", "3 mg/L"));
            yield return Claim("calibration-fit", ("run", "run"));
            yield return Claim("readings-inside-range", ("run", "run"));
            yield return Claim("detection-limit", ("run", "run"), ("limit", "0.1 mg/L"));
            yield return Claim("controls-clean", ("series", "ISO"));
            yield return Claim("ph-recorded", ("series", "ISO"));
            yield return Claim("not-precipitation", ("series", "ISO"), ("ksp", "5.48e-16"));
            yield return Claim("equilibrium-reached", ("series", "KIN-60"), ("time", "60 min"));
            yield return Claim("removal-falls-with-concentration", ("series", "ISO"));
            yield return Claim("capacity", ("series", "ISO"), ("capacity", "14 mg/g"));
            yield return Claim("best-kinetic-model", ("series", "KIN-60"), ("model", "PFO"));
            yield return Claim("best-isotherm", ("series", "ISO"), ("model", "Langmuir"), ("rival", "Freundlich, Temkin"));
            yield return Claim("monolayer", ("series", "ISO"), ("surface-area", "73.4 m2/g"), ("ion-radius", "0.40 nm"));
            yield return Claim("favourable", ("series", "ISO"));
            yield return Claim("smallest-sufficient-dose", ("series", "DOSE"), ("dose", "12 g/L"));
            yield return Claim("mass-balance", ("against", "ISO"), ("c0", "20 mg/L"));
            yield return Claim("stable-in-water", ("ph", "6"), ("fraction", "38 %"));
            yield return Claim("meets-limit", ("series", "WATER"), ("limit", "2.38 mg/L"));
            yield return Claim("reproducible", ("series", "BATCH"));
            yield return Claim("better-than-published", ("series", "ISO"), ("published", "7 mg/g"), ("published-u", "0.3 mg/g"), ("at", "5 mg/L"),
                ("published-ph", "6.5"), ("published-temperature", "298 K"), ("published-water", "0.01 mol/L NaNO3"));
        }

        private static StatedClaim Claim(string rule, params (string Name, string Words)[] parameters)
            => new(rule, rule, parameters.ToImmutableSortedDictionary(p => p.Name, p => p.Words, StringComparer.Ordinal), null, 10, default);

        private static double Uptake(double c0, double dose, double time)
            => (c0 - BatchEquilibrium.Langmuir<Amounts.Number>(c0, dose, Capacity, Affinity).Value) / dose * (1 - Math.Exp(-Rate * time));

        private void Replicates(string series, string level, double c0, double dose, double time, string batch, bool control)
        {
            for (var i = 1; i <= 3; i++)
                Vial(SampleRole.Vessel, Invariant($"{series}-{level}-{i}"), series, c0, dose, time, batch, c0 - dose * Uptake(c0, dose, time) * (1 + Vessel * chance.Normal()));
            if (control)
                Vial(SampleRole.Control, Invariant($"{series}-{level}-C"), series, c0, dose, time, batch, c0);
        }

        private void Vial(SampleRole role, string code, string series, double c0, double dose, double time, string batch, double left)
        {
            var sample = Add(
                code, role, (BatchProperties.InitialConcentration, c0), (BatchProperties.Volume, 25), (BatchProperties.Mass, role == SampleRole.Control ? 0 : 25 * dose),
                (BatchProperties.ContactTime, time), (BatchProperties.StartPh, 6), (BatchProperties.EndPh, 6.5), (BatchProperties.Temperature, 298.15));
            samples[^1] = sample with { Facts = sample.Facts.AddRange(Holdfast.Claims.Tests.Made.Facts([], (SampleProperties.Series, series), (SampleProperties.Batch, batch), (SampleProperties.Matrix, "0.01 mol/L NaNO3"))) };
            Read(samples[^1], left, 3);
        }

        private Sample Add(string code, SampleRole role, params (Property, double)[] numbers)
        {
            samples.Add(new Sample(code, role, Holdfast.Claims.Tests.Made.Facts(numbers)));
            return samples[^1];
        }

        // Diluted so that the reading stays inside the standards; one dilution error for all readings of the portion.
        private void Read(Sample sample, double concentration, int times)
        {
            var dilution = sample.Role is SampleRole.Vessel or SampleRole.Control ? new[] { 1.0, 2, 5, 10, 20, 25, 50 }.First(d => concentration / d <= 2.7) : 1;
            var portion = concentration / dilution * (dilution > 1 ? 1 + 0.003 * chance.Normal() : 1);
            for (var i = 0; i < times; i++)
            {
                var signal = Intercept + Slope * portion;
                signal += Math.Sqrt(0.0003 * 0.0003 + 0.003 * 0.003 * signal * signal) * chance.Normal();
                readings.Add(new(Invariant($"R-{readings.Count:0000}"), sample.Code, "run", readings.Count + 1, SpectrometryProperties.Absorbance.Name, signal, null, dilution, 1, "", File));
            }
        }
    }
}
