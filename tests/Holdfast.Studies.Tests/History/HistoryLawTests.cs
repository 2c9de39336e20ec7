using System.Collections.Immutable;
using CsCheck;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Tests.History;

/// <summary>Laws of the history, over random histories; a failure prints the seed that repeats it.</summary>
public class HistoryLawTests
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 12, 12, 0, 0, TimeSpan.Zero);

    private static readonly Gen<string> Words = Gen.OneOf(Gen.Const("0.01 mol/L NaNO₃"), Gen.Const("=2+5"), Gen.Const("a\tb\n\"c\""), Gen.Const("µ'ß"), Gen.String[1, 8].Select(Whole));

    private static readonly Gen<double> Numbers = Gen.Double.Where(double.IsFinite);

    // What is done, as a choice that is made to fit the study it meets.
    private static readonly Gen<(int What, int Which, string Words, double Number)> Deeds = Gen.Select(Gen.Int[0, 22], Gen.Int[0, 1000], Words, Numbers);

    [Fact]
    public void Replay_OfAnyHistory_GivesTheStateThatGrewStepByStep()
        => Deeds.Array[0, 40].Sample(deeds =>
        {
            var grown = Grow(deeds);
            Same.Study(Fold.Of(grown.Entries), grown.Study);
            Assert.Equal((grown.Entries.Length, null), Sense.Of(grown.Entries));
            Assert.Equal(grown.Study.ReadingsEver, Fold.Of(grown.Entries).ReadingsEver);
            var reread = Reread(grown.Entries);
            Same.Study(grown.Study, reread.Study);
            Assert.Equal(grown.Fingerprint, reread.Fingerprint);
        }, iter: 300, seed: "0000holdfast1");

    [Fact]
    public void Undo_OfAnyChange_GivesTheStateBefore()
        => Gen.Select(Deeds.Array[0, 25], Deeds).Sample((deeds, last) =>
        {
            var before = Grow(deeds);
            var after = Do(before, last);
            if (after.Version == before.Version || !after.Entries[^1].Change.CanBeUndone)
                return;
            var undone = after.With(Noon, "Ada", new Undone(after.Version, after.Entries[^1].Change.Says()));
            Same.Study(before.Study, undone.Study);
            var redone = undone.With(Noon, "Ada", new Redone(after.Version, after.Entries[^1].Change.Says()));
            Same.Study(after.Study, redone.Study);
        }, iter: 300, seed: "0000holdfast2");

    [Fact]
    public void Prefix_OfAnyHistory_IsAStudy()
        => Deeds.Array[1, 25].Sample(deeds =>
        {
            var whole = Grow(deeds);
            for (var version = 1; version <= whole.Version; version++)
            {
                var prefix = whole.At(version);
                Assert.Equal(version, prefix.Study.Version);
                Assert.Equal(whole.Entries[version - 1].Hash, prefix.Fingerprint);
            }
        }, iter: 100, seed: "0000holdfast3");

    [Fact]
    public void Bytes_OfAnyEntry_WrittenAgainAreTheSame()
        => Deeds.Array[1, 25].Sample(deeds =>
        {
            foreach (var entry in Grow(deeds).Entries)
                Assert.Equal(entry.Bytes.AsSpan(), EntryText.Write(entry.Number, entry.When, entry.Who, entry.Change));
        }, iter: 100, seed: "0000holdfast4");

    [Fact]
    public void Number_ThroughAnEntry_IsExact()
        => Numbers.Sample(number =>
        {
            var bytes = EntryText.Write(2, Noon, "Ada", new MarginFixed("removal", number, number, "%"));
            var back = (MarginFixed)EntryText.Read(bytes, Chain.Start).Change;
            Assert.Equal(BitConverter.DoubleToInt64Bits(number), BitConverter.DoubleToInt64Bits(back.Low));
        }, iter: 100_000, seed: "0000holdfast5");

    /// <summary>Grows a history from deeds; those that do not fit are left out.</summary>
    internal static Daybook Grow((int What, int Which, string Words, double Number)[] deeds)
    {
        var daybook = new Daybook([]).With(Noon, "Ada", new StudyBegun("ni-study", "Ni", Invented: true));
        _ = daybook.Study;
        return deeds.Aggregate(daybook, Do);
    }

    private static Daybook Do(Daybook daybook, (int What, int Which, string Words, double Number) deed)
    {
        var study = daybook.Study;
        var sample = study.Samples.IsEmpty ? "V-0" : study.Samples[deed.Which % study.Samples.Length].Code;
        var reading = study.Readings.IsEmpty ? "R-0000" : study.Readings[deed.Which % study.Readings.Length].Id;
        Change change = deed.What switch
        {
            0 or 1 => Taken(daybook, deed.Which, deed.Words, deed.Number),
            2 => new Struck(sample, deed.Words),
            3 => new Struck(reading, deed.Words),
            4 => new Restored(study.Strikes.IsEmpty ? sample : study.Strikes[deed.Which % study.Strikes.Length].Target, deed.Words),
            5 => new FactCorrected(sample, Fact("mass", deed.Number, deed.Words), deed.Words),
            6 => new ClaimStated("claim-" + Text(deed.Which % 5), "rule", Dictionary("series", deed.Words), null),
            7 => new ClaimWithdrawn("claim-" + Text(deed.Which % 5), deed.Words),
            8 => new MarginFixed("margin-" + Text(deed.Which % 3), -deed.Number, deed.Number, "%"),
            9 => new DetailSet("key-" + Text(deed.Which % 3), deed.Which % 4 == 0 ? null : deed.Words),
            10 => new Undone(daybook.Undo.Next?.Number ?? 0, "something"),
            11 => new WorkPlanned(deed.Words, deed.Which % 2 == 0 ? null : "claim-" + Text(deed.Which % 5), deed.Which % 9, [deed.Words]),
            12 => new WorkDone(study.Plan.IsEmpty ? "P-0" : study.Plan[deed.Which % study.Plan.Length].Id),
            13 => new WorkWithdrawn(study.Plan.IsEmpty ? "P-0" : study.Plan[deed.Which % study.Plan.Length].Id, deed.Words),
            14 => new Marked(deed.Words),
            15 => new BlockTyped([new TypedCell(sample, Fact("mass", deed.Number, deed.Words)), new TypedCell(sample, Fact("volume", deed.Number, deed.Words))], deed.Words),
            16 => new StudyDescribed(Dictionary("key-" + Text(deed.Which % 3), deed.Which % 4 == 0 ? "" : deed.Words).SetItem("analyte", "Ni")),
            17 => new RunsDescribed([new RunDetail(Named(study, deed.Which), deed.Which % 2 == 0 ? "element" : "Instrument", deed.Words)], deed.Words),
            18 => new CalibrationChosen(Named(study, deed.Which), deed.Which % 3 == 0 ? null : Named(study, deed.Which + 1), deed.Words),
            19 => new RolesGiven([new RoleGiven(sample, (SampleRole)(deed.Which % 4))], [new TypedCell(sample, Fact("standard-concentration", deed.Number, deed.Words))], deed.Words),
            20 => new LayoutForgotten("layout"),
            21 => new PictureMarked(
                study.Measurements.IsEmpty ? "M-0000" : study.Measurements[deed.Which % study.Measurements.Length].Id, "line", [deed.Number, 1, 2, 3],
                deed.Which % 2 == 0 ? null : deed.Words, study.Marks.IsEmpty || deed.Which % 3 != 0 ? null : study.Marks[^1].Id),
            _ => new Redone(daybook.Undo.Back?.Number ?? 0, "something"),
        };
        try
        {
            Permitted.Check(daybook, change, amending: false);
        }
        catch (Exception e) when (e is StudyException or ArgumentException)
        {
            return daybook;
        }
        return daybook.With(Noon, "Ada", change);
    }

    private static string Named(Study study, int which) => study.Runs.IsEmpty ? "run" : study.Runs[which % study.Runs.Length].Id;

    private static TakenIn Taken(Daybook daybook, int which, string words, double number)
    {
        var code = "V-" + Text(which % 20);
        return new TakenIn
        {
            Files = [new TakenFile(Chain.Link(Chain.Start, BitConverter.GetBytes(which)), words, which)],
            Samples = [new Sample(code, SampleRole.Vessel, ImmutableSortedDictionary.Create<string, Fact>(StringComparer.Ordinal)
                .Add("mass", Fact("mass", number, words)).Add("remark", new Fact("remark", null, null, null, words, words, Origin(words))))],
            Runs = daybook.Study.Runs.Length > 4 ? [] : [new Run("run-" + Text(daybook.Study.Runs.Length), "absorbance", Dictionary("Element", words), Origin(words))],
            Readings = [new Reading(Bench.Id(daybook.Study.ReadingsEver + 1), code, "run", 1, "absorbance", number, null, 1, 1, words, Origin(words))],
            Measurements = which % 2 == 0 ? null : [new Measurement("M-" + Text(daybook.Study.MeasurementsEver + 1), "micrograph", words, [new MeasuredSetting("width", words, number, "px", 0)], [], Origin(words))],
            Layouts = [new LayoutAnswer("layout", "decimal", words)],
        };
    }

    private static Fact Fact(string property, double value, string written) => new(property, value, null, null, null, written, Origin(written));

    private static Origin Origin(string words) => new(null, words, null, 0, null);

    private static ImmutableSortedDictionary<string, string> Dictionary(string key, string value)
        => ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal).Add(key, value);

    private static Daybook Reread(ImmutableArray<Entry> entries)
    {
        var hash = Chain.Start;
        var reread = ImmutableArray.CreateBuilder<Entry>();
        foreach (var entry in entries)
        {
            reread.Add(EntryText.Read(entry.Bytes.AsSpan(), hash));
            hash = reread[^1].Hash;
        }
        return new Daybook(reread.ToImmutable());
    }

    // Half a surrogate pair is no text: what is written is the replacement character.
    private static string Whole(string text) => System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(text)) is { Length: > 0 } t && !string.IsNullOrWhiteSpace(t) ? t : "x";

    private static string Text(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
