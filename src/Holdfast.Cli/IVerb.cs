using System.CommandLine;

namespace Holdfast.Cli;

/// <summary>One verb of the command line, in one file under Verbs/. Verbs are found by <see cref="Studies.Catalogue"/> and need a constructor without parameters.</summary>
internal interface IVerb
{
    /// <summary>The verb's place in the list of verbs: verbs are listed in the order of the work.</summary>
    int Place { get; }

    /// <summary>Two examples, shown by <c>-h</c>.</summary>
    IReadOnlyList<string> Examples { get; }

    /// <summary>Exit codes this verb can end with beside 0 and 2.</summary>
    IReadOnlyList<(int Code, string Meaning)> Exits { get; }

    /// <summary>The command with its arguments, options and action.</summary>
    /// <param name="door">What it sees of the world.</param>
    Command Command(Door door);
}
