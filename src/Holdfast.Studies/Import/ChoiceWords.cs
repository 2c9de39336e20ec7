using System.Collections.Frozen;

namespace Holdfast.Studies.Import;

/// <summary>The choices of a question in words of the bench, for pages and prompts; an answer is still given by the choice's own name.</summary>
public static class ChoiceWords
{
    private static readonly FrozenDictionary<string, string> Everywhere = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["add"] = "Add them as new samples",
        ["aimed-at"] = "What it was set to",
        ["as-it-is"] = "Take it as it is",
        ["as-stated"] = "What the sheet says",
        ["as-written"] = "Keep it as written",
        ["both"] = "Both together",
        ["choose"] = "Choose the mass myself",
        ["column"] = "The column holds",
        ["comma"] = "Comma: 1,5",
        ["day-first"] = "The day first",
        ["difference"] = "Take the difference",
        ["earlier"] = "The earlier file holds",
        ["first"] = "The first holds",
        ["first-alone"] = "For the first sheet alone",
        ["fraction"] = "A fraction of 1",
        ["holds-for-all"] = "It holds for all",
        ["ignore"] = "Do not use them",
        ["in-the-vessel"] = "In the vessel",
        ["keep"] = "Keep as written",
        ["last"] = "The last holds",
        ["later"] = "The later file holds",
        ["leave-out"] = "Leave out",
        ["line"] = "The line of text holds",
        ["made-up-to"] = "One part made up to so many",
        ["measured"] = "What was measured",
        ["month-first"] = "The month first",
        ["multiply"] = "Multiply by the dilution",
        ["other-vessels"] = "They are other vessels",
        ["parts-of-water"] = "One part and so many of water",
        ["per-gram"] = "Per gram of powder",
        ["percent"] = "Per cent",
        ["point"] = "Point: 1.5",
        ["read"] = "Read them so",
        ["remaining"] = "What remained",
        ["removed"] = "What was removed",
        ["second"] = "The second holds",
        ["separate"] = "Each is a vessel of its own",
        ["start-solution"] = "The start solution",
        ["swap"] = "Swap the two columns",
        ["swap-amounts"] = "Swap the two columns",
        ["take"] = "Take them",
        ["take-first"] = "Take the first cells only",
        ["ug/L"] = "µg/L",
        ["degC"] = "°C",
        ["one"] = "no unit",
        ["thousand-times"] = "A thousand times that",
        ["undiluted"] = "Nothing was diluted",
        ["use"] = "Use them",
        ["vessel"] = "A vessel",
        ["whole-sample"] = "For the whole sample",
        ["step-is-wrong"] = "The step is wrong",
        ["stop-is-wrong"] = "The stop is wrong",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> Special = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["differing|keep"] = "Keep the earlier",
        ["differing|take"] = "Take the new",
        ["match|add"] = "Add it as written",
        ["overlap|take"] = "They were read twice",
        ["read-again|earlier"] = "The earlier holds",
        ["sheet|take"] = "Read the sheet",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>What a question was about, in a few words: "decimal mark", "unit of C0".</summary>
    /// <param name="question">Id of the question.</param>
    public static string Asked(string question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var cut = question.IndexOf(':', StringComparison.Ordinal);
        var (kind, about) = cut < 0 ? (question, "") : (question[..cut], question[(cut + 1)..]);
        return kind switch
        {
            "decimal" => "decimal mark",
            "date" => "order of dates",
            "dilution" => "dilution",
            "codes" => "settings in the sample codes",
            "unit" => "unit of " + about,
            "technique" => "what was measured",
            "powder" => "name of the powder",
            "share" => about + ", per cent or fraction",
            "same" => "which column holds the " + (Studies.Property.Named(about)?.Title ?? about),
            _ => about.Length == 0 ? kind : about,
        };
    }

    /// <summary>The words for a choice.</summary>
    /// <param name="question">Id of the question.</param>
    /// <param name="choice">One of its choices, or any answer.</param>
    public static string Of(string question, string choice)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(choice);
        var kind = question.Split(':')[0];
        if (kind == "technique")
            return Techniques.TechniqueList.Named(choice) is { } technique ? "Read as " + technique.Title : choice == Techniques.TechniqueList.Table ? "Read as an ordinary table" : choice;
        if (kind == "column")
            return ColumnChoices.All.FirstOrDefault(c => string.Equals(c.Name, choice, StringComparison.OrdinalIgnoreCase))?.Title ?? choice;
        if (kind.StartsWith("role", StringComparison.Ordinal))
            return choice == "leave-out" ? "Leave out" : choice.Replace('-', ' ');
        return Special.GetValueOrDefault(kind + "|" + choice) ?? Everywhere.GetValueOrDefault(choice) ?? choice;
    }
}
