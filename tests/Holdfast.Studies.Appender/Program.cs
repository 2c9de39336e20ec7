using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

// appender FOLDER COUNT: opens the study and takes files in until COUNT entries are added or it is killed. It says "kept NUMBER HASH" for
// each entry after the store has returned, and ends with 8 and the code when the store refuses.
var most = int.Parse(args[1], CultureInfo.InvariantCulture);
try
{
    using var study = StudyFolder.Open(args[0], TimeProvider.System);
    Say("ready");
    for (var n = 0; n < most; n++)
    {
        var entry = study.Append(study.Daybook.Version, "appender", Take(study, study.Daybook.Version + 1))[0];
        Say(string.Create(CultureInfo.InvariantCulture, $"kept {entry.Number} {entry.Hash}"));
    }
    study.Close();
    Say("closed");
    return 0;
}
catch (StudyException e)
{
    Say(e.Code + " " + e.Message);
    return 8;
}

static void Say(string line)
{
    Console.Out.WriteLine(line);
    Console.Out.Flush();
}

static TakenIn Take(StudyFolder study, long number)
{
    var text = string.Create(CultureInfo.InvariantCulture, $"sample,Abs\nV-{number},0.1\n") + new string('x', 3000);
    var bytes = Encoding.UTF8.GetBytes(text);
    var sha256 = study.KeepOriginal(bytes);
    var code = string.Create(CultureInfo.InvariantCulture, $"V-{number}");
    var origin = new Origin(sha256, code + ".csv", null, 2, "Abs");
    return new TakenIn
    {
        Files = [new TakenFile(sha256, code + ".csv", bytes.Length)],
        Samples = [new Sample(code, SampleRole.Vessel, ImmutableSortedDictionary.Create<string, Fact>(StringComparer.Ordinal))],
        Runs = study.Study.Runs.Any(r => r.Id == "run") ? [] : [new Run("run", "absorbance", ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal), origin)],
        Readings = [new Reading("R-" + (study.Study.ReadingsEver + 1).ToString("0000", CultureInfo.InvariantCulture), code, "run", 1, "absorbance", 0.1, null, 1, 1, "0.1", origin)],
    };
}
