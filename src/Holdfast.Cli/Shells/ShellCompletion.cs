using System.Text;

namespace Holdfast.Cli.Shells;

/// <summary>Scripts that let a shell complete verbs, options and the words these take. Where anything may be typed, the shell offers files.</summary>
internal static class ShellCompletion
{
    /// <summary>The shells there are scripts for.</summary>
    public static IReadOnlyList<string> Shells { get; } = ["bash", "zsh", "fish"];

    /// <summary>The script of a shell.</summary>
    /// <param name="shell">One of <see cref="Shells"/>.</param>
    /// <param name="verbs">The verbs.</param>
    public static string Script(string shell, IReadOnlyList<VerbWords> verbs) => shell switch
    {
        "bash" => Bash(verbs),
        "zsh" => Zsh(verbs),
        "fish" => Fish(verbs),
        _ => throw new ArgumentOutOfRangeException(nameof(shell), shell, $"A shell is one of {string.Join(", ", Shells)}."),
    };

    private static string Bash(IReadOnlyList<VerbWords> verbs)
    {
        var script = new StringBuilder("# Completion in bash. Written by \"holdfast complete bash\".\n_holdfast_words() {\n");
        script.Append("    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} verb=${COMP_WORDS[1]} words=\n    COMPREPLY=()\n");
        script.Append("    if [ \"$COMP_CWORD\" -eq 1 ]; then\n");
        script.Append($"        words=\"{string.Join(' ', verbs.Select(v => v.Name))} --help --version\"\n");
        script.Append("        COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n        return\n    fi\n");
        script.Append("    case \"$verb $before\" in\n");
        foreach (var (verb, option) in verbs.SelectMany(v => v.Options.Select(o => (v, o))).Where(p => !VerbWords.TakesNoWord(p.o)))
            script.Append($"        \"{verb.Name} {option.Name}\") COMPREPLY=($(compgen -W \"{string.Join(' ', VerbWords.Choices(option))}\" -- \"$word\")); return ;;\n");
        script.Append("    esac\n    case \"$verb $word\" in\n");
        foreach (var verb in verbs)
        {
            script.Append($"        \"{verb.Name} -\"*) words=\"{string.Join(' ', verb.Options.Select(o => o.Name).Append("-h"))}\" ;;\n");
            if (verb.Arguments.Count > 0)
                script.Append($"        \"{verb.Name} \"*) words=\"{string.Join(' ', verb.Arguments)}\" ;;\n");
        }

        return script.Append("    esac\n    COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n}\ncomplete -o default -F _holdfast_words holdfast\n").ToString();
    }

    private static string Zsh(IReadOnlyList<VerbWords> verbs)
    {
        var script = new StringBuilder("#compdef holdfast\n# Completion in zsh. Written by \"holdfast complete zsh\".\n_holdfast() {\n");
        script.Append("    if (( CURRENT == 2 )); then\n        local -a verbs=(\n");
        foreach (var verb in verbs)
            script.Append($"            {Quoted(verb.Name + ":" + verb.Description)}\n");
        script.Append("        )\n        _describe verb verbs\n        return\n    fi\n");
        script.Append("    local verb=$words[2]\n    shift words\n    (( CURRENT-- ))\n    case $verb in\n");
        foreach (var verb in verbs)
        {
            script.Append($"        {verb.Name}) _arguments");
            foreach (var option in verb.Options)
            {
                // Colons, brackets and backslashes part the pieces of what _arguments reads.
                var said = $"{option.Name}[{Plain(option.Description)}]";
                var repeats = option.Arity.MaximumNumberOfValues > 1 ? "*" : "";
                script.Append(" \\\n            " + Quoted(repeats + said + (VerbWords.TakesNoWord(option) ? "" : Taken(option.Name.TrimStart('-'), VerbWords.Choices(option)))));
            }

            script.Append(" \\\n            " + Quoted("*" + Taken("word", verb.Arguments)) + " ;;\n");
        }

        return script.Append("    esac\n}\n_holdfast \"$@\"\n").ToString();

        static string Taken(string name, IReadOnlyList<string> choices) => $":{name}:" + (choices.Count > 0 ? $"({string.Join(' ', choices)})" : "_files");
        static string Plain(string? text) => (text ?? "").Replace('[', '(').Replace(']', ')').Replace("\\", "", StringComparison.Ordinal).Replace(":", "\\:", StringComparison.Ordinal);
    }

    private static string Fish(IReadOnlyList<VerbWords> verbs)
    {
        var script = new StringBuilder("# Completion in fish. Written by \"holdfast complete fish\".\n");
        foreach (var verb in verbs)
            script.Append($"complete -c holdfast -f -n __fish_use_subcommand -a {verb.Name} -d {FishQuoted(verb.Description)}\n");
        foreach (var verb in verbs)
        {
            var there = $"complete -c holdfast -n '__fish_seen_subcommand_from {verb.Name}'";
            if (verb.Arguments.Count > 0)
                script.Append($"{there} -f -a {FishQuoted(string.Join(' ', verb.Arguments))}\n");
            foreach (var option in verb.Options.Where(o => o.Name.StartsWith("--", StringComparison.Ordinal)))
            {
                var choices = VerbWords.Choices(option);
                var taken = VerbWords.TakesNoWord(option) ? "" : choices.Count > 0 ? $" -x -a {FishQuoted(string.Join(' ', choices))}" : " -r";
                script.Append($"{there} -l {option.Name[2..]}{taken} -d {FishQuoted(option.Description ?? "")}\n");
            }
        }

        return script.ToString();
    }

    private static string Quoted(string text) => "'" + text.Replace("'", "'\\''", StringComparison.Ordinal) + "'";

    private static string FishQuoted(string text) => "'" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal) + "'";
}
