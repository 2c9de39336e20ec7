namespace Holdfast.Cli;

/// <summary>
/// What the command line sees of the world: where it prints, what time it is, who is typing. Tests hand in their own.
/// </summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Remarks, progress and messages.</param>
/// <param name="Clock">The time.</param>
/// <param name="Who">The author's name as it stands in the Daybook.</param>
/// <param name="Folder">The current folder.</param>
/// <param name="IsTerminal">True when results go to a person, not into a file or pipe.</param>
internal sealed record Door(TextWriter Out, TextWriter Error, TimeProvider Clock, string Who, string Folder, bool IsTerminal)
{
    /// <summary>True when remarks go to a person, who wants to see how far long work is.</summary>
    public bool IsWatched { get; init; }

    /// <summary>Why what the verb keeps is an amendment; null where it is none.</summary>
    public string? Amending { get; init; }

    /// <summary>Where answers come from.</summary>
    public TextReader In { get; init; } = TextReader.Null;

    /// <summary>True when a person answers at a terminal, who can choose with the arrow keys; false where answers come line by line from a file or pipe.</summary>
    public bool IsAnswered { get; init; }

    /// <summary>The door of this process.</summary>
    public static Door OfThisProcess()
    {
        // UTF-8 whatever the terminal's language: the same study gives the same bytes.
        Console.OutputEncoding = new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        var output = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true, NewLine = "\n" };
        var error = new StreamWriter(Console.OpenStandardError()) { AutoFlush = true, NewLine = "\n" };
        return new(output, error, TimeProvider.System, Author(Environment.GetEnvironmentVariable("HOLDFAST_AUTHOR"), () => Environment.UserName), Environment.CurrentDirectory, !Console.IsOutputRedirected)
        {
            IsWatched = !Console.IsErrorRedirected,
            In = Console.In,
            IsAnswered = !Console.IsInputRedirected && !Console.IsErrorRedirected,
        };
    }

    /// <summary>Who stands as the author of an entry: the name that was set, that of the login, or words that say that there is none.</summary>
    /// <param name="named">As set for this program; null or empty where it is not.</param>
    /// <param name="login">Asks the system.</param>
    public static string Author(string? named, Func<string> login)
    {
        const string none = "author not named";
        if (named is { Length: > 0 })
            return named;
        try
        {
            return login() is { Length: > 0 } name ? name : none;
        }
        catch (IOException)
        {
            // A system without a list of its users.
            return none;
        }
    }
}
