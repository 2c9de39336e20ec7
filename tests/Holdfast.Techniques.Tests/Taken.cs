using System.Text;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Tests;

/// <summary>Files taken into an empty study in memory, with answers.</summary>
internal sealed class Taken
{
    private Taken(IReadOnlyList<Understanding> files, Study study) => (Files, Study) = (files, study);

    public IReadOnlyList<Understanding> Files { get; }

    /// <summary>The study with everything that needs no further answer.</summary>
    public Study Study { get; }

    public Evidence Evidence => Evidence.Of(Study);

    public IEnumerable<Question> Open => Files.SelectMany(f => f.Questions).Where(q => q.IsOpen);

    public static Taken Text(string name, string text, params (string Question, string Answer)[] answers) => Of([new IncomingFile(name, Encoding.UTF8.GetBytes(text))], answers);

    public static Taken Paths(IEnumerable<string> paths, params (string Question, string Answer)[] answers)
        => Of([.. paths.Select(p => new IncomingFile(Path.GetFileName(p), File.ReadAllBytes(p)))], answers);

    private static Taken Of(IReadOnlyList<IncomingFile> files, (string Question, string Answer)[] answers)
    {
        var given = answers.Aggregate(Answers.None, (a, q) => a.With(q.Question, q.Answer));
        var empty = new Study { Title = "invented", Analyte = "Ni" };
        var understood = Take.Understand(empty, files, given);
        var study = understood.OrderBy(u => u.Turn).Select(u => u.Understanding).Where(u => u is { Proposal: not null, NeedsDecision: false })
            .Aggregate(empty, (s, u) => Fold.After(s, u.Proposal!, s.Version + 1, DateTimeOffset.UnixEpoch, "Ada"));
        return new([.. understood.Select(u => u.Understanding)], study);
    }
}
