namespace Holdfast.Reports.Markup;

/// <summary>A named element with attributes and content. Elements that run or load something, and attributes that do, are refused.</summary>
public sealed record Element : Node
{
    private static readonly HashSet<string> Refused = new(StringComparer.OrdinalIgnoreCase)
    {
        "script", "style", "iframe", "object", "embed", "foreignObject", "base", "frame", "applet",
    };

    /// <summary>An element.</summary>
    /// <param name="name">Its name: letters, digits and hyphens.</param>
    /// <param name="attributes">Its attributes; those with a null value are left out.</param>
    /// <param name="content">What it holds, in order.</param>
    /// <exception cref="ArgumentException">The name or an attribute is not allowed.</exception>
    public Element(string name, IEnumerable<(string Name, string? Value)> attributes, IEnumerable<Node> content)
    {
        ArgumentNullException.ThrowIfNull(attributes);
        ArgumentNullException.ThrowIfNull(content);
        if (!IsName(name) || Refused.Contains(name))
            throw new ArgumentException($"'{name}' is no element that a page of ours may hold.", nameof(name));
        Name = name;
        var kept = new List<(string, string)>();
        foreach (var (key, value) in attributes)
        {
            if (value is null)
                continue;
            Check(key, value);
            kept.Add((key, value));
        }

        Attributes = kept;
        Content = content.ToArray();
    }

    /// <summary>The element's name.</summary>
    public string Name { get; }

    /// <summary>Its attributes, in order.</summary>
    public IReadOnlyList<(string Name, string Value)> Attributes { get; }

    /// <summary>What it holds, in order.</summary>
    public IReadOnlyList<Node> Content { get; }

    /// <summary>The value of an attribute, or null.</summary>
    /// <param name="name">Its name.</param>
    public string? Attribute(string name) => Attributes.FirstOrDefault(a => a.Name == name).Value;

    private static void Check(string key, string value)
    {
        if (!IsName(key.Replace(":", "", StringComparison.Ordinal)) || key.StartsWith("on", StringComparison.OrdinalIgnoreCase)
            || key.Equals("style", StringComparison.OrdinalIgnoreCase))
        {
            throw new ArgumentException($"'{key}' is no attribute that a page of ours may hold.", nameof(key));
        }

        if (key is not ("href" or "src" or "xlink:href" or "action"))
            return;
        var address = value.TrimStart();
        var scheme = address.IndexOf(':', StringComparison.Ordinal);
        var path = address.IndexOfAny(['/', '?', '#']);
        if (scheme < 0 || (path >= 0 && path < scheme))
            return;
        if (!(address.StartsWith("https:", StringComparison.OrdinalIgnoreCase) || address.StartsWith("http:", StringComparison.OrdinalIgnoreCase)
            || address.StartsWith("data:image/", StringComparison.OrdinalIgnoreCase)))
        {
            throw new ArgumentException($"The address '{value}' has a scheme that a page of ours may not hold.", nameof(value));
        }
    }

    private static bool IsName(string name)
        => !string.IsNullOrEmpty(name) && char.IsAsciiLetter(name[0]) && name.All(c => char.IsAsciiLetterOrDigit(c) || c == '-');
}
