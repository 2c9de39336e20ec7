using System.Globalization;
using Holdfast.Studies.Import;
using Spectre.Console;

namespace Holdfast.Cli;

/// <summary>Puts the open questions of files, one after the other: with the arrow keys at a terminal, line by line from a file or pipe.</summary>
internal static class Asking
{
    /// <summary>Asks until nothing is open or no answer comes.</summary>
    /// <param name="answers">Answers given already.</param>
    /// <param name="understand">What the files are understood to be with these answers.</param>
    /// <param name="door">The world.</param>
    /// <returns>All answers.</returns>
    public static Answers Until(Answers answers, Func<Answers, IEnumerable<Understanding>> understand, Door door)
    {
        while (understand(answers).SelectMany(u => u.Questions.Where(q => q.IsOpen).Select(q => (File: u.FileName, Question: q))).FirstOrDefault() is { Question: { } question } open)
        {
            if (Put(open.File, question, door) is not { } answer)
                return answers;
            var more = answers.With(open.File + "|" + question.Id, answer);
            try
            {
                if (understand(more).First(u => u.FileName == open.File).Questions.Any(q => q.Id == question.Id && q.IsOpen))
                    return answers;
                answers = more;
            }
            catch (Studies.StudyException e)
            {
                door.Error.WriteLine(e.Message);
                if (!door.IsAnswered)
                    return answers;
            }
        }

        return answers;
    }

    private static string? Put(string file, Question question, Door door) => door.IsAnswered && question.Choices.Length > 0 && !question.Id.StartsWith("value:", StringComparison.Ordinal) ? Chosen(file, question) : Typed(file, question, door);

    private static string? Chosen(string file, Question question)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) });
        var prompt = new SelectionPrompt<int>().Title(Markup.Escape($"{file}: {question.Text}")).UseConverter(i => Markup.Escape(i < 0 ? "Not now" : Line(question, i)));
        prompt.AddChoices([.. Enumerable.Range(0, question.Choices.Length), -1]);
        var picked = console.Prompt(prompt);
        return picked < 0 ? null : question.Choices[picked];
    }

    // A number names a choice; anything else is the answer itself, and the end of the input is none.
    private static string? Typed(string file, Question question, Door door)
    {
        door.Error.WriteLine($"{file}: {question.Text}");
        for (var i = 0; i < question.Choices.Length; i++)
            door.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {i + 1}  {Line(question, i)}"));
        if (door.In.ReadLine()?.Trim() is not { Length: > 0 } line)
            return null;
        return int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= question.Choices.Length ? question.Choices[number - 1] : line;
    }

    private static string Line(Question question, int i)
        => ChoiceWords.Of(question.Id, question.Choices[i]) + (i < question.Consequences.Length ? "  (" + question.Consequences[i] + ")" : "");
}
