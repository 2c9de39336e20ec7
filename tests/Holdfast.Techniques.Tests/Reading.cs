using System.Collections.Immutable;
using System.Text;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Tests;

/// <summary>Files as they would be taken in: what they are understood to be, and the study with them.</summary>
internal static class Reading
{
    /// <summary>An empty study.</summary>
    public static Study Empty { get; } = new() { Title = "invented" };

    /// <summary>What one text file is understood to be.</summary>
    public static Understanding Of(string name, string text, Answers? answers = null) => Of(name, Encoding.UTF8.GetBytes(text), answers);

    /// <summary>What one file is understood to be.</summary>
    public static Understanding Of(string name, byte[] bytes, Answers? answers = null)
        => Take.Understand(Empty, [new IncomingFile(name, bytes)], answers ?? Answers.None, TestContext.Current.CancellationToken)[0].Understanding;

    /// <summary>The study after files that need no answer.</summary>
    public static Study Taken(Answers? answers, params IEnumerable<(string Name, string Text)> files)
        => Taken(answers, files.Select(f => (f.Name, Encoding.UTF8.GetBytes(f.Text))));

    /// <summary>The study after files that need no answer.</summary>
    public static Study Taken(Answers? answers, IEnumerable<(string Name, byte[] Bytes)> files)
    {
        var study = Empty;
        foreach (var understood in Take.Understand(Empty, [.. files.Select(f => new IncomingFile(f.Name, f.Bytes))], answers ?? Answers.None, TestContext.Current.CancellationToken).OrderBy(u => u.Turn))
        {
            Assert.DoesNotContain(understood.Understanding.Questions, q => q.IsOpen);
            study = Fold.After(study, understood.Understanding.Proposal! with { Files = [] }, study.Version + 1, default, "");
        }

        return study;
    }

    /// <summary>The measurements that a file would bring; none while a question is open.</summary>
    public static ImmutableArray<Measurement> Measurements(this Understanding understanding)
        => understanding.NeedsDecision ? [] : understanding.Proposal?.Measurements ?? [];

    /// <summary>Everything that is said of a file, for looking words up.</summary>
    public static string Said(this Understanding understanding)
        => string.Join('\n', understanding.Questions.Select(q => q.Text + " " + string.Join(" | ", q.Choices) + " " + string.Join(" | ", q.Consequences)).Concat(understanding.Findings.Select(f => f.Sentence)));
}
