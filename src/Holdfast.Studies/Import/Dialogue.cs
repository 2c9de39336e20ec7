using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>Questions raised and things noticed while one file is understood.</summary>
internal sealed class Dialogue(string fileName, Answers answers)
{
    private readonly List<Question> questions = [];
    private readonly List<Finding> findings = [];

    /// <summary>The file it is about.</summary>
    public string FileName => fileName;

    /// <summary>Answers, the file's own first.</summary>
    public Answers Answers => answers;

    /// <summary>Questions so far, each once.</summary>
    public ImmutableArray<Question> Questions => [.. questions];

    /// <summary>Findings so far; three and more of a kind are for the door to gather.</summary>
    public ImmutableArray<Finding> Findings => [.. findings];

    /// <summary>Raises a question and returns its answer, or null while there is none.</summary>
    public string? Ask(string id, string code, string text, ImmutableArray<string> choices, params ImmutableArray<string> concerns)
    {
        var answer = answers.To(id);
        if (!questions.Any(q => string.Equals(q.Id, id, StringComparison.OrdinalIgnoreCase)))
        {
            questions.Add(new Question(id, code, text, choices, concerns, answer));
            if (answers.Remembered(id) is not null)
                Note(code, Weight.Note, $"{id} is taken as {answer}, as answered for an earlier file of this layout.", concerns);
        }
        return answer;
    }

    /// <summary>Notes something.</summary>
    public void Note(string code, Weight weight, string sentence, params IEnumerable<string> concerns) => findings.Add(new Finding(code, weight, sentence, [.. concerns]));

    /// <summary>Notes what was noticed elsewhere.</summary>
    public void Note(IEnumerable<Finding> more) => findings.AddRange(more);
}
