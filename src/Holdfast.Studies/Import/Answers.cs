using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>
/// Answers to the questions that files raise, by the question's id: "decimal" = "comma", "unit:C0" = "mg/L". An id with a file's name before it,
/// "aas-run1.csv|decimal", is for that file alone and comes first.
/// </summary>
public sealed class Answers
{
    private readonly ImmutableDictionary<string, string> given;
    private readonly ImmutableSortedDictionary<string, string>? remembered;
    private readonly string? fileName;

    private Answers(ImmutableDictionary<string, string> given, ImmutableSortedDictionary<string, string>? remembered, string? fileName)
    {
        this.given = given;
        this.remembered = remembered;
        this.fileName = fileName;
    }

    /// <summary>No answers.</summary>
    public static Answers None { get; } = new(ImmutableDictionary.Create<string, string>(StringComparer.OrdinalIgnoreCase), null, null);

    /// <summary>These and one more; a later answer to the same question wins.</summary>
    /// <param name="question">Id of the question.</param>
    /// <param name="answer">The answer.</param>
    public Answers With(string question, string answer) => new(given.SetItem(question, answer), remembered, fileName);

    /// <summary>Seen from one file: its own answers first.</summary>
    /// <param name="name">The file's name.</param>
    public Answers For(string name) => new(given, remembered, name);

    /// <summary>With answers remembered for the file's layout, which come last.</summary>
    /// <param name="layout">Answers by question, or null.</param>
    public Answers Remembering(ImmutableSortedDictionary<string, string>? layout) => new(given, layout, fileName);

    /// <summary>The answer, or null.</summary>
    /// <param name="question">Id of the question.</param>
    public string? To(string question) => Given(question) ?? Remembered(question);

    /// <summary>The answer given now, or null.</summary>
    /// <param name="question">Id of the question.</param>
    public string? Given(string question)
    {
        if (fileName is not null && given.TryGetValue(fileName + "|" + question, out var own))
            return own;
        return given.GetValueOrDefault(question);
    }

    /// <summary>The answer remembered from an earlier file of the same layout, or null when there is none or a new one was given.</summary>
    /// <param name="question">Id of the question.</param>
    public string? Remembered(string question) => Given(question) is null ? remembered?.GetValueOrDefault(question) : null;
}
