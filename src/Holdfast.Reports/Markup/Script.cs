namespace Holdfast.Reports.Markup;

/// <summary>A script of ours inside a standalone page. Only what lies in this assembly can be one: nothing of a study ever becomes a script.</summary>
public sealed record Script : Node
{
    private Script(string code) => Code = code;

    /// <summary>The code.</summary>
    public string Code { get; }

    /// <summary>A script that lies in this assembly.</summary>
    /// <param name="name">Its name: "review.js".</param>
    /// <exception cref="InvalidOperationException">The assembly lacks it, or it holds "&lt;/", which could end the element.</exception>
    internal static Script Of(string name)
    {
        using var stream = typeof(Script).Assembly.GetManifestResourceStream("Holdfast.Reports." + name) ?? throw new InvalidOperationException($"The assembly lacks {name}.");
        using var reader = new StreamReader(stream);
        var code = reader.ReadToEnd().ReplaceLineEndings("\n");
        return code.Contains("</", StringComparison.Ordinal) ? throw new InvalidOperationException($"{name} may not hold \"</\".") : new(code);
    }
}
