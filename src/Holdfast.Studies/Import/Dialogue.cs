using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>Questions raised and things noticed while one file is understood.</summary>
public sealed class Dialogue(string fileName, Answers answers)
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
        var answer = Chosen(id, choices);
        if (!questions.Any(q => string.Equals(q.Id, id, StringComparison.OrdinalIgnoreCase)))
        {
            questions.Add(new Question(id, code, text, choices, concerns, answer) { IsRemembered = answers.Remembered(id) is not null });
        }
        return answer;
    }

    /// <summary>Takes the likeliest reading and says so; an answer changes it.</summary>
    /// <param name="id">Id of the question.</param>
    /// <param name="code">Its code.</param>
    /// <param name="text">What is assumed and why, in words that stand alone.</param>
    /// <param name="choices">The readings, the assumed one first.</param>
    /// <param name="concerns">What it is about.</param>
    /// <returns>The answer, or the first choice.</returns>
    public string Assume(string id, string code, string text, ImmutableArray<string> choices, params ImmutableArray<string> concerns)
    {
        var answer = Chosen(id, choices);
        if (!questions.Any(q => string.Equals(q.Id, id, StringComparison.OrdinalIgnoreCase)))
        {
            questions.Add(new Question(id, code, text, choices, concerns, answer) { Assumed = choices[0], IsRemembered = answers.Remembered(id) is not null });
        }
        return answer ?? choices[0];
    }

    /// <summary>Adds what follows from each choice to a question that was raised.</summary>
    public void Explain(string id, ImmutableArray<string> consequences)
    {
        var at = questions.FindIndex(q => string.Equals(q.Id, id, StringComparison.OrdinalIgnoreCase));
        if (at >= 0)
            questions[at] = questions[at] with { Consequences = consequences };
    }

    private string? Chosen(string id, ImmutableArray<string> choices)
    {
        var answer = answers.To(id);
        return answer is null || IsOpenTo(id) ? answer
            : choices.FirstOrDefault(c => string.Equals(c, answer, StringComparison.OrdinalIgnoreCase)) ?? throw Answers.Unknown(id, answer, string.Join(" or ", choices));
    }

    // Samples, units, roles and decimal marks can be answered in other words than those that are offered; who asks reads them.
    private static bool IsOpenTo(string id)
        => id is "decimal" or "powder" || id.StartsWith("powder:", StringComparison.Ordinal) || id.StartsWith("value:", StringComparison.Ordinal) || id.StartsWith("match:", StringComparison.Ordinal) || id.StartsWith("unit:", StringComparison.Ordinal) || id.StartsWith("role:", StringComparison.Ordinal);

    /// <summary>Notes something.</summary>
    public void Note(string code, Weight weight, string sentence, params IEnumerable<string> concerns) => findings.Add(new Finding(code, weight, sentence, [.. concerns]));

    /// <summary>Notes what was noticed elsewhere.</summary>
    public void Note(IEnumerable<Finding> more) => findings.AddRange(more);
}
