using System.Globalization;
using System.Text;

namespace Holdfast.Cli.Shells;

/// <summary>The page that "man holdfast" shows, in the macros of man(7), from the same definitions as the help of each verb.</summary>
internal static class ManualPage
{
    /// <summary>The page.</summary>
    /// <param name="version">The program's version.</param>
    /// <param name="door">The world the definitions are made for.</param>
    public static string Of(string version, Door door)
    {
        var page = new StringBuilder();
        // No date: the same program gives the same bytes.
        page.Append($".TH HOLDFAST 1 \"\" \"Holdfast {version}\" \"Holdfast\"\n");
        page.Append(".SH NAME\nholdfast \\- from instrument readings to a defended sorption result\n");
        page.Append(".SH SYNOPSIS\n.B holdfast\n.I verb\n.RI [ words ]\n.RI [ options ]\n");
        page.Append(".SH DESCRIPTION\n");
        Line(page, "Takes in files of instruments and bench sheets, works out quantities with their uncertainty, and judges each claim: it holds, is not shown yet, or is contradicted. "
            + "The study is the current folder, or the one that --study names. Everything stays on this computer.");
        page.Append(".SH VERBS\n");
        foreach (var verb in CommandLine.Verbs)
            Verb(page, verb, door);
        page.Append(".SH EXIT STATUS\n");
        Line(page, "0 done; for defend, all claims that were asked for hold. 2 not understood. 9 stopped by the user, nothing was kept. 70 a fault in Holdfast itself. "
            + "Other codes stand with their verb. A code never changes its meaning.");
        page.Append(".SH ENVIRONMENT\n.TP\n.B HOLDFAST_AUTHOR\n");
        Line(page, "The author's name as it stands in the Daybook; the name of the login when it is not set.");
        page.Append(".SH FILES\n.TP\n.I study.db\n");
        Line(page, "The history of a study, one entry after another.");
        page.Append(".TP\n.I originals/\n");
        Line(page, "Every file taken in, byte for byte.");
        page.Append(".TP\n.I plain/\n");
        Line(page, "The same content as CSV, which can be read without Holdfast.");
        return page.ToString();
    }

    private static void Verb(StringBuilder page, IVerb verb, Door door)
    {
        var command = verb.Command(door);
        page.Append($".SS {Escaped(command.Name)}\n");
        Line(page, $"{command.Description}.");
        foreach (var argument in command.Arguments)
            Term(page, "I", argument.Name, argument.Description);
        foreach (var option in command.Options)
            Term(page, "B", option.Name, option.Description);
        page.Append(".PP\nExamples:\n.PP\n.nf\n");
        foreach (var example in verb.Examples)
            Line(page, example);
        page.Append(".fi\n");
        if (verb.Exits.Count > 0)
        {
            page.Append(".PP\n");
            Line(page, "Exit: " + string.Join(", ", verb.Exits.Select(e => string.Create(CultureInfo.InvariantCulture, $"{e.Code} {e.Meaning}"))) + ".");
        }
    }

    private static void Term(StringBuilder page, string face, string name, string? description)
    {
        page.Append($".TP\n.{face} \"{Escaped(name)}\"\n");
        Line(page, description ?? "");
    }

    // A line that begins with a point or an apostrophe would be a request to the formatter.
    private static void Line(StringBuilder page, string text)
        => page.Append(text.StartsWith('.') || text.StartsWith('\'') ? "\\&" : "").Append(Escaped(text)).Append('\n');

    private static string Escaped(string text) => text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal);
}
