using System.Text;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Techniques.PowderDiffraction;

namespace Holdfast.Techniques.Tests.PowderDiffraction;

/// <summary>Takes files in as the doors do, without a folder.</summary>
internal static class Intake
{
    public static readonly Study Nothing = new() { Title = "a powder", Analyte = "Ni" };

    public static Understanding Understand(string name, byte[] bytes, Study? study = null, params (string Question, string Answer)[] answers)
        => Take.Understand(study ?? Nothing, [new IncomingFile(name, bytes)], answers.Aggregate(Answers.None, (a, q) => a.With(q.Question, q.Answer)), TestContext.Current.CancellationToken)[0].Understanding;

    public static Understanding Text(string name, string text, params (string Question, string Answer)[] answers) => Understand(name, Encoding.UTF8.GetBytes(text), null, answers);

    public static Study After(Study study, Understanding understood)
        => Fold.After(study, understood.Proposal!, study.Version + 1, new DateTimeOffset(2026, 5, 12, 9, 0, 0, TimeSpan.Zero), "Ada");

    public static DiffractionStudy Found(params IEnumerable<Understanding> files) => DiffractionStudy.Of(Evidence.Of(files.Aggregate(Nothing, After)));
}
