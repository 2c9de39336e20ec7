using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Web.Live;

namespace Holdfast.Web.Tests;

/// <summary>The clocks of the bench card over three hours of a fake clock: starts are kept in the study, so that nothing runs away while no screen is open.</summary>
public class BenchClockTests
{
    private static readonly DateTimeOffset Nine = new(2026, 5, 12, 9, 0, 0, TimeSpan.FromHours(2));

    [Fact]
    public void Running_OverThreeHours_IsExactAndNextFirst()
    {
        // Twelve vials started every two minutes, to be in contact for 180, 175 ... 125 min.
        var study = Started([.. Enumerable.Range(0, 12).Select(i => ($"V-{i:00}", Nine.AddMinutes(2 * i), (double)(180 - 5 * i)))]);
        foreach (var seconds in new[] { 0, 1, 59, 3600, 7199, 10_799, 10_800 })
        {
            var now = Nine.AddMinutes(22).AddSeconds(seconds);
            var running = BenchCard.Running(study, now);
            Assert.Equal(12, running.Length);
            for (var i = 0; i < 12; i++)
            {
                var (_, since, left) = running.Single(r => r.Vial.Code == $"V-{i:00}");
                Assert.Equal(TimeSpan.FromMinutes(22 - 2 * i) + TimeSpan.FromSeconds(seconds), since);
                Assert.Equal(TimeSpan.FromMinutes(180 - 5 * i) - since, left);
            }

            // Due at 180 − 3 i min after nine: the last started is the next to be separated.
            Assert.Equal(Enumerable.Range(0, 12).Reverse().Select(i => $"V-{i:00}"), running.Select(r => r.Vial.Code));
        }

        // The hour that a phone shows does not matter: an instant is an instant.
        Assert.Equal(BenchCard.Running(study, Nine.AddHours(1)).Select(r => r.Since), BenchCard.Running(study, Nine.AddHours(1).ToUniversalTime()).Select(r => r.Since));
    }

    [Fact]
    public void Running_StoppedOrNotStarted_IsLeftOut()
    {
        var study = Started([("V-1", Nine, 60), ("V-2", Nine, 30)]);
        study = study with { Samples = [.. study.Samples.Select(s => s.Code == "V-2" ? s with { Facts = s.Facts.SetItem("contact-time", Number("contact-time", 31)) } : s), new Sample("V-3", SampleRole.Vessel, study.Samples[0].Facts.Clear())] };
        Assert.Equal("V-1", Assert.Single(BenchCard.Running(study, Nine.AddMinutes(5))).Vial.Code);
        Assert.Equal(TimeSpan.FromMinutes(-5), BenchCard.Running(study, Nine.AddMinutes(65))[0].Left);
        Assert.Empty(BenchCard.Running(study, Nine.AddMinutes(-1)));
    }

    private static Fact Number(string name, double value) => new(name, value, null, null, null, "", new Origin(null, "typed", null, 0, null));

    private static Study Started((string Code, DateTimeOffset At, double Minutes)[] vials)
    {
        PlannedVessel[] planned = [.. vials.Select((v, i) => new PlannedVessel(v.Code, "KIN", SampleRole.Vessel, 1, 1, i + 1, i + 1)
        {
            InitialConcentration = 20, Volume = 25, Mass = 50, ContactTime = v.Minutes, StartsAt = 2 * i, Expected = 5, Dilution = 1,
        })];
        var begun = new Daybook([]).With(Nine, "Ada", new StudyBegun("invented", "Ni", true)).With(Nine, "Ada", new SeriesDesigned([], "1589", System.Collections.Immutable.ImmutableSortedDictionary<string, string>.Empty, [.. planned], [])).Study;
        return begun with
        {
            Samples = [.. begun.Samples.Select(s =>
            {
                var at = vials.Single(v => v.Code == s.Code).At.ToString("o", CultureInfo.InvariantCulture);
                return s with { Facts = s.Facts.SetItem("started", new Fact("started", null, null, null, at, at, new Origin(null, "typed", null, 0, null))) };
            })],
        };
    }
}
