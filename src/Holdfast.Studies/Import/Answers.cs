using System.Collections.Concurrent;
using System.Collections.Immutable;
using Holdfast.Amounts;

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

    // Shared by all who look at the same answers: which of them somebody wanted to know.
    private readonly ConcurrentDictionary<string, bool> asked;

    private Answers(ImmutableDictionary<string, string> given, ImmutableSortedDictionary<string, string>? remembered, string? fileName, ConcurrentDictionary<string, bool> asked)
    {
        this.asked = asked;
        this.given = given;
        this.remembered = remembered;
        this.fileName = fileName;
    }

    /// <summary>No answers.</summary>
    public static Answers None { get; } = new(ImmutableDictionary.Create<string, string>(StringComparer.OrdinalIgnoreCase), null, null, new());

    /// <summary>These and one more; a later answer to the same question wins.</summary>
    /// <param name="question">Id of the question.</param>
    /// <param name="answer">The answer.</param>
    public Answers With(string question, string answer) => new(given.SetItem(question, answer), remembered, fileName, new(StringComparer.OrdinalIgnoreCase));

    /// <summary>How it is answered that a column has no unit.</summary>
    public const string NoUnit = "one";

    /// <summary>Seen from one file: its own answers first.</summary>
    /// <param name="name">The file's name.</param>
    public Answers For(string name) => new(given, remembered, name, asked);

    /// <summary>With answers remembered for the file's layout, which come last.</summary>
    /// <param name="layout">Answers by question, or null.</param>
    public Answers Remembering(ImmutableSortedDictionary<string, string>? layout) => new(given, layout, fileName, asked);

    /// <summary>True where nothing is answered: the usual case, in which nobody need spell out a question for each of many rows.</summary>
    public bool IsEmpty => given.IsEmpty && remembered is null or { IsEmpty: true };

    /// <summary>The answer, or null.</summary>
    /// <param name="question">Id of the question.</param>
    public string? To(string question) => Given(question) ?? Remembered(question);

    /// <summary>The answer given now, or null.</summary>
    /// <param name="question">Id of the question.</param>
    public string? Given(string question)
    {
        if (given.IsEmpty)
            return null;
        if (fileName is not null && given.TryGetValue(fileName + "|" + question, out var own))
        {
            asked[fileName + "|" + question] = true;
            return own;
        }

        if (!given.TryGetValue(question, out var answer))
            return null;
        asked[question] = true;
        return answer;
    }

    /// <summary>Questions that were answered and that nothing asked, as they were typed: a slip of the pen, which would otherwise pass unseen.</summary>
    public ImmutableArray<string> Unasked => [.. given.Keys.Where(k => !asked.ContainsKey(k)).Order(StringComparer.Ordinal)];

    /// <summary>A unit as answered; "one" stands for none.</summary>
    /// <param name="answer">The answer.</param>
    internal static UnitText Unit(string answer) => string.Equals(answer.Trim(), NoUnit, StringComparison.OrdinalIgnoreCase) ? new UnitText.Known(Amounts.Unit.One) : Amounts.Unit.Read(answer);

    /// <summary>The refusal of an answer that cannot be one.</summary>
    /// <param name="question">Id of the question.</param>
    /// <param name="answer">What was answered.</param>
    /// <param name="known">What can be answered.</param>
    internal static StudyException Unknown(string question, string answer, string known)
        => new(Codes.Ambiguous, $"“{answer}” is no answer to {question}, so nothing is kept. Answer with {known}.");

    /// <summary>The answer remembered from an earlier file of the same layout, or null when there is none or a new one was given.</summary>
    /// <param name="question">Id of the question.</param>
    public string? Remembered(string question) => Given(question) is null ? remembered?.GetValueOrDefault(question) : null;
}
