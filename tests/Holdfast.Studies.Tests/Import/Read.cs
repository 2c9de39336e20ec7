using System.Text;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Understands a file given as text, against a study that has what the test says.</summary>
internal static class Read
{
    public static readonly Study Nothing = new() { Title = "ni-study", Analyte = "Ni" };

    public static Understanding Text(string text, string name = "run.csv", Study? study = null, Answers? answers = null)
        => Bytes(Encoding.UTF8.GetBytes(text), name, study, answers);

    public static Understanding Bytes(byte[] bytes, string name = "run.csv", Study? study = null, Answers? answers = null)
        => Take.Understand(study ?? Nothing, [new IncomingFile(name, bytes)], answers ?? Answers.None, TestContext.Current.CancellationToken)[0].Understanding;

    /// <summary>A study that holds these vessels.</summary>
    public static Study With(params string[] codes)
        => Nothing with { Samples = [.. codes.Select(c => new Sample(c, SampleRole.Vessel, System.Collections.Immutable.ImmutableSortedDictionary.Create<string, Fact>(StringComparer.Ordinal)))] };

    /// <summary>A study after it took a file in.</summary>
    public static Study After(Study study, Understanding understood)
    {
        var after = Fold.After(study, understood.Proposal!, study.Version + 1, new DateTimeOffset(2026, 5, 12, 9, 0, 0, TimeSpan.Zero), "Ada");
        return after with { ReadingsEver = study.ReadingsEver + understood.Proposal!.Readings.Length };
    }

    public static Answers Answer(string question, string answer) => Answers.None.With(question, answer);

    /// <summary>The value of a fact that the file brings, or null.</summary>
    public static double? Value(this Understanding understood, string code, string property)
        => understood.Proposal!.Samples.Single(s => s.Code == code).Facts.GetValueOrDefault(property)?.Value;
}
