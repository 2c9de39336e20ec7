using Holdfast.Studies.History;
using Holdfast.Studies.Package;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Tests.History;

public class MeasurementTests
{
    [Fact]
    public void Measurement_KeptAndOpenedAgain_IsTheSameToTheLastBit()
    {
        using var bench = new Bench();
        using (var study = bench.Begin())
            study.Append(study.Daybook.Version, "Ada", Take(study, "ZF-3"));
        using var again = bench.Open();
        var one = Assert.Single(again.Study.Measurements);
        Assert.Equal(["M-0001", "nitrogen-sorption", "ZF-3"], [one.Id, one.Technique, one.Sample]);
        Assert.Equal([0.1 + 0.2, null, 1e-7], one.Column("p/p0")!.Numbers!.Value);
        Assert.Equal(["up", "", "down"], one.Column("branch")!.Words!.Value);
        Assert.Equal(new MeasuredSetting("mass", "0,1032 g", 0.1032, "g", 3), one.Setting("mass"));
    }

    [Fact]
    public void Measurement_UndoneWithItsTake_KeepsItsIdForItself()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var taken = study.Append(study.Daybook.Version, "Ada", Take(study, "A"))[0];
        study.Append(study.Daybook.Version, "Ada", new Undone(taken.Number, taken.Change.Says()));
        Assert.Empty(study.Study.Measurements);
        Assert.Equal(1, study.Study.MeasurementsEver);
        study.Append(study.Daybook.Version, "Ada", Take(study, "B"));
        Assert.Equal("M-0002", Assert.Single(study.Study.Measurements).Id);
    }

    [Fact]
    public void Strike_OfAMeasurement_HoldsUntilItIsRestored()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(study.Daybook.Version, "Ada", Take(study, "ZF-3"));
        study.Append(study.Daybook.Version, "Ada", new Struck("M-0001", "cell leaked"));
        Assert.Equal("cell leaked", study.Study.StrikeOf(study.Study.Measurements[0])?.Reason);
        Assert.Equal(Codes.NothingChanges, Assert.Throws<StudyException>(() => study.Append(study.Daybook.Version, "Ada", new Struck("M-0001", "again"))).Code);
        Assert.Equal(Codes.UnknownSample, Assert.Throws<StudyException>(() => study.Append(study.Daybook.Version, "Ada", new Struck("M-0002", "not there"))).Code);
        study.Append(study.Daybook.Version, "Ada", new Restored("M-0001", null));
        Assert.False(study.Study.IsStruck(study.Study.Measurements[0]));
    }

    [Fact]
    public void PlainForm_OfAStudyWithAMeasurement_GivesTheSameStudyBack()
    {
        using var bench = new Bench();
        using (var study = bench.Begin())
        {
            study.Append(study.Daybook.Version, "Ada", Take(study, "ZF-3"));
            study.Append(study.Daybook.Version, "Ada", new Struck("M-0001", "cell leaked"));
            PlainPackage.Write(study.Files, study.Daybook);
        }

        var points = File.ReadAllLines(Path.Combine(bench.Folder, "plain", "measurement_points.csv"));
        Assert.Equal(["M-0001,p/p0,\"p/p0, relative\",,1,0.30000000000000004,", "M-0001,p/p0,\"p/p0, relative\",,2,,"], points[1..3]);
        Assert.Contains(",true,", File.ReadAllLines(Path.Combine(bench.Folder, "plain", "measurements.csv"))[1], StringComparison.Ordinal);
        var (returned, findings) = PlainPackage.Return(Path.Combine(bench.Folder, "plain"), Path.Combine(bench.Root, "again"), bench.Clock);
        using (returned)
        {
            Assert.Empty(findings);
            Assert.Equal("ZF-3", Assert.Single(returned.Study.Measurements).Sample);
            Assert.True(returned.Study.IsStruck(returned.Study.Measurements[0]));
        }
    }

    // Columns of unequal length: a history made by another hand.
    [Fact]
    public void Sense_ColumnsOfUnequalLength_AreToldApart()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var taken = Take(study, "ZF-3");
        var one = taken.Measurements!.Value[0];
        var odd = taken with { Measurements = [one with { Columns = one.Columns.Add(new MeasuredColumn("amount", "amount", "mmol/g") { Numbers = [1.0] }) }] };
        Assert.Null(Sense.Of(study.Daybook.With(DateTimeOffset.UnixEpoch, "Ada", taken).Entries).Trouble);
        Assert.Contains("unequal length", Sense.Of(study.Daybook.With(DateTimeOffset.UnixEpoch, "Ada", odd).Entries).Trouble, StringComparison.Ordinal);
    }

    private static TakenIn Take(StudyFolder study, string powder)
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes("invented isotherm of " + powder);
        var sha = study.KeepOriginal(bytes);
        var id = "M-" + (study.Study.MeasurementsEver + 1).ToString("0000", System.Globalization.CultureInfo.InvariantCulture);
        return new TakenIn
        {
            Files = [new TakenFile(sha, powder + ".csv", bytes.Length)],
            Measurements =
            [
                new Measurement(id, "nitrogen-sorption", powder, [new MeasuredSetting("mass", "0,1032 g", 0.1032, "g", 3), new MeasuredSetting("operator", "Ada", null, "", 4)],
                [
                    new MeasuredColumn("p/p0", "p/p0, relative", "") { Numbers = [0.1 + 0.2, null, 1e-7] },
                    new MeasuredColumn("branch", "branch", "") { Words = ["up", "", "down"] },
                ], new Origin(sha, powder + ".csv", null, 0, null)),
            ],
        };
    }
}
