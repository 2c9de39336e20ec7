using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Isotherms;
using Holdfast.Scaleup;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Claims.Tests;

/// <summary>
/// An invented study of temperature, rivals, exchange, reuse and a bed, done as it should be: five temperatures with controls and long kinetics, four named
/// portions weighed in each of five cycles, sorbent-only controls at the end pH, two beds packed anew. Truth: 20 kJ/mol, one calcium for one metal.
/// </summary>
internal static class StrongReuseStudy
{
    private const double Capacity = 14, Affinity = 0.35, Enthalpy = 20, Vessel = 0.003;
    private const double Nickel = 58.693, Calcium = 40.078;
    private static readonly Origin File = new("00", "strong.csv", null, 1, null);
    private static readonly Lazy<Dossier> Made = new(() => Dossier.Of(Build()));

    /// <summary>The study worked out.</summary>
    public static Dossier Dossier => Made.Value;

    /// <summary>The study with the claims that its author states.</summary>
    public static Study Build() => new Bench().Study();

    private sealed class Bench
    {
        private readonly SeededStream chance = new(31415, "strong reuse study");
        private readonly List<Sample> samples = [];
        private readonly List<Reading> readings = [];

        public Study Study()
        {
            foreach (var kelvin in new[] { 288.15, 298.15, 308.15, 318.15, 328.15 })
                Isotherm(kelvin);
            foreach (var time in new[] { 30.0, 60, 120, 360, 720, 1440, 2160, 2880 })
                Replicates("KIN", 60, time, 298.15, Uptake(60, 298.15) * (1 - Math.Exp(-0.02 * time)), 3);
            Cycles();
            foreach (var (rival, preference) in new[] { ("Zn", 3.0), ("Ca", 25) })
                Mixture(rival, preference);
            foreach (var bed in new[] { "BED-1", "BED-2" })
                Bed(bed);
            return new Study
            {
                Title = "strong reuse",
                Invented = true,
                Analyte = "Ni",
                Samples = [.. samples],
                Readings = [.. readings],
                Runs = [new Run("reported", SpectrometryProperties.ReportedConcentration.Name, ImmutableSortedDictionary<string, string>.Empty, File)],
                Originals = [new Original("00", "strong.csv", 1, 9, default)],
                Margins = [new("plateau", -5, 5, "%", 2), new("retention", 80, 100, "%", 2), new("exchange-ratio", -10, 10, "%", 2)],
                Claims =
                [
                    Claim("spontaneous-and-endothermic"),
                    Claim("stable-in-water", ("ph", "6"), ("fraction", "38 %")),
                    Claim("selective", ("over", "Zn, Ca"), ("factor", "2")),
                    Claim("ion-exchange", ("ion", "Ca"), ("ratio", "1")),
                    Claim("reusable", ("cycles", "5")),
                    Claim("regenerated-better", ("cycle", "2")),
                    Claim("outlet-meets-limit", ("run", "BED-1"), ("time", "4 h"), ("limit", "1 mg/L")),
                    Claim("low-cost", ("c0", "20 mg/L"), ("limit", "5 mg/L"), ("price", "20 to 30"), ("uses", "4 to 5"), ("disposal", "1 to 2"), ("energy", "0.01 to 0.02"), ("labour", "0.05 to 0.1"), ("rival", "2 to 3"), ("currency", "EUR 2026")),
                ],
            };
        }

        private static StatedClaim Claim(string rule, params (string Name, string Words)[] parameters)
            => new(rule, rule, parameters.ToImmutableSortedDictionary(p => p.Name, p => p.Words, StringComparer.Ordinal), null, 10, default);

        private static double Uptake(double c0, double kelvin)
            => (c0 - BatchEquilibrium.Langmuir<Number>(c0, 2, Capacity, Affinity * Math.Exp(-Enthalpy * 1000 / 8.314462618 * (1 / kelvin - 1 / 298.15))).Value) / 2;

        private void Isotherm(double kelvin)
        {
            foreach (var c0 in new[] { 5.0, 10, 20, 40, 60 })
                Replicates(Invariant($"TEMP-{Math.Floor(kelvin)}"), c0, 1440, kelvin, Uptake(c0, kelvin), 3);
            if (kelvin == 298.15)
            {
                for (var i = 1; i <= 3; i++)
                    Add(Invariant($"ALONE-{i}"), SampleRole.SorbentBlank, [(BatchProperties.StartPh, 6), (BatchProperties.EndPh, 6.5), (BatchProperties.Volume, 25), (BatchProperties.Mass, 50), (StabilityProperties.DissolvedCalcium, 5 * (1 + 0.01 * chance.Normal()))]);
            }
        }

        private void Replicates(string series, double c0, double time, double kelvin, double uptake, int count)
        {
            for (var i = 1; i <= count; i++)
            {
                var q = uptake * (1 + Vessel * chance.Normal());
                (Property, double)[] calcium = series == "TEMP-298" ? [(StabilityProperties.DissolvedCalcium, 5 + Calcium * 2 * q / Nickel * (1 + 0.01 * chance.Normal()))] : [];
                Vial(Invariant($"{series}-{c0}-{time}-{i}"), SampleRole.Vessel, series, c0, time, kelvin, c0 - 2 * q, calcium);
            }

            Vial(Invariant($"{series}-{c0}-{time}-C"), SampleRole.Control, series, c0, time, kelvin, c0 * (1 + 0.002 * chance.Normal()), []);
        }

        private void Cycles()
        {
            double[] uptake = [8.0, 8.5, 8.4, 8.3, 8.2], present = [50, 49.6, 49.2, 48.8, 48.4];
            for (var cycle = 1; cycle <= uptake.Length; cycle++)
            {
                for (var portion = 1; portion <= 4; portion++)
                {
                    var onFirst = uptake[cycle - 1] * (1 + 0.01 * chance.Normal()) * present[cycle - 1] / 50;
                    Vial(Invariant($"RE-{cycle}-{portion}"), SampleRole.Vessel, "REUSE", 20, 1440, 298.15, 20 - 2 * onFirst,
                        [(RegenerationProperties.Cycle, cycle), (CycleProperties.MassPresent, present[cycle - 1]), (RegenerationProperties.Eluted, 0.97 * onFirst)],
                        (CycleProperties.PowderPortion, Invariant($"P{portion}")));
                }

                Vial(Invariant($"RE-{cycle}-C"), SampleRole.Control, "REUSE", 20, 1440, 298.15, 20 * (1 + 0.002 * chance.Normal()), []);
            }
        }

        private void Mixture(string rival, double preference)
        {
            for (var i = 1; i <= 3; i++)
            {
                var other = 0.34 / (1 + (0.34 - 0.1) / 0.1 / preference * Math.Exp(0.03 * chance.Normal()));
                Add(Invariant($"MIX-{rival}-{i}"), SampleRole.Vessel,
                    [(BatchProperties.ContactTime, 1440), (CompetitionProperties.InitialOfEach, 0.34), (CompetitionProperties.AnalyteLeft, 0.1), (CompetitionProperties.RivalLeft, other)], (CompetitionProperties.Rival, rival));
            }
        }

        private void Bed(string name)
        {
            foreach (var t in new double[] { 0, 100, 150, 200, 230, 260, 300, 350, 400, 450, 500, 550, 600, 700 })
            {
                var ratio = BreakthroughLogistic.Value<Number>(t, [0.02, 400 * (1 + 0.002 * chance.Normal())]).Value;
                Add(Invariant($"{name}-{t:000}"), SampleRole.Outlet,
                    [
                        (ColumnProperties.TimeOnStream, t), (ColumnProperties.OutletConcentration, 20 * ratio), (BatchProperties.InitialConcentration, 20),
                        (ColumnProperties.BedDepth, 10), (ColumnProperties.Flow, 10), (ColumnProperties.BedMass, 5), (ColumnProperties.Velocity, 0.2),
                    ],
                    (SampleProperties.Series, name));
            }
        }

        private void Vial(string code, SampleRole role, string series, double c0, double time, double kelvin, double left, (Property, double)[] more, params (Property, string)[] words)
        {
            Add(code, role,
                [
                    (BatchProperties.InitialConcentration, c0), (BatchProperties.Volume, 25), (BatchProperties.Mass, role == SampleRole.Control ? 0 : 50), (BatchProperties.ContactTime, time),
                    (BatchProperties.StartPh, 6), (BatchProperties.EndPh, 6.5), (BatchProperties.Temperature, kelvin), .. more,
                ],
                [(SampleProperties.Series, series), (SampleProperties.Batch, "B1"), (SampleProperties.Matrix, "0.01 mol/L NaNO3"), .. words]);
            readings.Add(new(Invariant($"R-{readings.Count:0000}"), code, "reported", readings.Count + 1, SpectrometryProperties.ReportedConcentration.Name, left, null, 1, 1, "", File));
        }

        private void Add(string code, SampleRole role, (Property, double)[] numbers, params (Property, string)[] words)
            => samples.Add(new Sample(code, role, Holdfast.Claims.Tests.Made.Facts(numbers, words)));
    }
}
