using System.Globalization;

namespace Holdfast.Cli;

/// <summary>What the command line says about itself.</summary>
internal static class Help
{
    /// <summary>The verbs in the order of the work, with what each does.</summary>
    /// <param name="door">Where it prints.</param>
    public static int Overview(Door door)
    {
        door.Out.WriteLine("Holdfast: from instrument readings to a defended sorption result.");
        door.Out.WriteLine();
        door.Out.WriteLine("  holdfast demo                       the worked example, invented");
        door.Out.WriteLine("  holdfast begin pb-study             a study of your own");
        door.Out.WriteLine("  holdfast take run1.csv vessels.csv  take in what the instrument and you wrote");
        door.Out.WriteLine("  holdfast defend                     what holds, and what would settle the rest");
        door.Out.WriteLine();
        foreach (var verb in CommandLine.Verbs)
        {
            var command = verb.Command(door);
            door.Out.WriteLine($"  {command.Name,-9} {command.Description}");
        }

        door.Out.WriteLine();
        door.Out.WriteLine("holdfast VERB -h shows examples, options and exit codes. The study is the current folder, or --study DIR.");
        return Exit.Done;
    }

    /// <summary>A verb's examples, options and exit codes.</summary>
    /// <param name="verb">The verb.</param>
    /// <param name="door">Where it prints.</param>
    public static int Of(IVerb verb, Door door)
    {
        var command = verb.Command(door);
        door.Out.WriteLine($"holdfast {command.Name}: {command.Description}");
        door.Out.WriteLine();
        foreach (var example in verb.Examples)
            door.Out.WriteLine("  " + example);
        door.Out.WriteLine();
        foreach (var argument in command.Arguments)
            door.Out.WriteLine($"  {argument.Name.ToUpperInvariant(),-18} {argument.Description}");
        foreach (var option in command.Options)
            door.Out.WriteLine($"  {option.Name,-18} {option.Description}");
        door.Out.WriteLine();
        door.Out.WriteLine("  exit 0 done, 2 not understood" + string.Concat(verb.Exits.Select(e =>
            string.Create(CultureInfo.InvariantCulture, $", {e.Code} {e.Meaning}"))));
        return Exit.Done;
    }

    /// <summary>A verb that does not exist, with the nearest one that does.</summary>
    /// <param name="word">As typed.</param>
    /// <param name="door">Where it prints.</param>
    public static int Unknown(string word, Door door)
    {
        var names = CommandLine.Verbs.Select(v => v.Command(door).Name).ToArray();
        var nearest = names.OrderBy(n => Distance(n, word)).ThenBy(n => n, StringComparer.Ordinal).First();
        door.Error.WriteLine(Distance(nearest, word) <= 2
            ? $"holdfast has no verb {word}. Did you mean {nearest}?"
            : $"holdfast has no verb {word}. Verbs: {string.Join(", ", names)}.");
        return Exit.NotUnderstood;
    }

    // Edit distance of Levenshtein, 1966: how many letters to change, add or drop.
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j] + 1, row[j - 1] + 1), diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[b.Length];
    }
}
