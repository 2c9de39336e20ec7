namespace Holdfast.Reports.Markup;

/// <summary>A style sheet inside a standalone page. Pages of the local web app link a file instead, so that inline styles stay forbidden there.</summary>
public sealed record Stylesheet : Node
{
    /// <summary>A style sheet.</summary>
    /// <param name="css">The rules; no "&lt;", which could end the element.</param>
    /// <exception cref="ArgumentException">The rules hold a "&lt;".</exception>
    public Stylesheet(string css)
    {
        ArgumentNullException.ThrowIfNull(css);
        if (css.Contains('<', StringComparison.Ordinal))
            throw new ArgumentException("A style sheet may not hold '<'.", nameof(css));
        Css = css;
    }

    /// <summary>The rules.</summary>
    public string Css { get; }
}
