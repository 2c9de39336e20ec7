using System.CommandLine;
using System.CommandLine.Completions;

namespace Holdfast.Cli.Shells;

/// <summary>What can be typed behind a verb, read from the verb's own definition: whoever adds a verb or an option adds nothing here.</summary>
/// <param name="Command">The definition.</param>
internal sealed record VerbWords(Command Command)
{
    /// <summary>The verb.</summary>
    public string Name => Command.Name;

    /// <summary>What it does, in a line.</summary>
    public string Description => Command.Description ?? "";

    /// <summary>Its options.</summary>
    public IEnumerable<Option> Options => Command.Options;

    /// <summary>Words that may stand as an argument where the verb takes only certain ones; empty where it takes a file, a sample or free words.</summary>
    public IReadOnlyList<string> Arguments => [.. Command.Arguments.SelectMany(Choices)];

    /// <summary>Every verb, in the order of the work.</summary>
    /// <param name="door">The world the definitions are made for.</param>
    public static IReadOnlyList<VerbWords> All(Door door) => [.. CommandLine.Verbs.Select(v => new VerbWords(v.Command(door)))];

    /// <summary>The only words that an option or argument takes; empty where it takes any.</summary>
    /// <param name="symbol">An option or argument.</param>
    public static IReadOnlyList<string> Choices(Symbol symbol)
        => TakesNoWord(symbol) ? [] : [.. symbol.GetCompletions(CompletionContext.Empty).Select(c => c.Label)];

    /// <summary>True for a switch: it is there or not, and no word belongs to it.</summary>
    /// <param name="symbol">An option or argument.</param>
    public static bool TakesNoWord(Symbol symbol) => symbol is Option option && option.ValueType == typeof(bool);
}
