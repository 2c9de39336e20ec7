using Holdfast.Amounts;

namespace Holdfast.Composition;

/// <summary>A ratio of atoms: "Co/(Co+Zn)", "Ca/P", "(Ca+Tb)/P".</summary>
public sealed class ElementRatio
{
    private ElementRatio(IReadOnlyList<Element> above, IReadOnlyList<Element> below) => (Above, Below) = (above, below);

    /// <summary>Elements above the bar.</summary>
    public IReadOnlyList<Element> Above { get; }

    /// <summary>Elements below the bar.</summary>
    public IReadOnlyList<Element> Below { get; }

    /// <summary>True for a share of a site: what stands above stands below too.</summary>
    public bool IsShare => Above.All(Below.Contains) && Below.Count > Above.Count;

    /// <summary>Reads a ratio of element symbols.</summary>
    /// <param name="text">"Co/(Co+Zn)".</param>
    public static Outcome<ElementRatio> Read(string? text)
    {
        string[] sides = (text ?? "").Replace(" ", "", StringComparison.Ordinal).Split('/', ':');
        if (sides.Length == 2 && Sum(sides[0]) is { } above && Sum(sides[1]) is { } below)
            return new(new(above, below), []);
        return Outcome<ElementRatio>.None(Finding.Of("HF-499", Weight.Stop, $"'{text}' is no ratio of elements. Write Ca/P or Co/(Co+Zn)."));
    }

    /// <summary>The share of a dopant in what it replaces.</summary>
    /// <param name="dopant">The dopant.</param>
    /// <param name="host">What it replaces.</param>
    public static ElementRatio Share(Element dopant, Element host) => new([dopant], [dopant, host]);

    /// <summary>The ratio in a formula; null when it has nothing of what stands below. No unit.</summary>
    /// <param name="formula">The formula.</param>
    public double? In(Formula formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var below = Below.Sum(e => formula.Count(e.Symbol));
        return below > 0 ? Above.Sum(e => formula.Count(e.Symbol)) / below : null;
    }

    /// <summary>The ratio from amounts of atoms on any common scale (atomic percent, mmol/g); null when an element is missing below or its sum is 0. No unit.</summary>
    /// <param name="atoms">Elements with their amounts.</param>
    public Measured? Of(IReadOnlyList<KeyValuePair<Element, Measured>> atoms)
    {
        ArgumentNullException.ThrowIfNull(atoms);
        return Add(Above) is { } above && Add(Below) is { Value: > 0 } below ? above / below : null;

        Measured? Add(IReadOnlyList<Element> elements)
        {
            Measured sum = 0;
            foreach (var element in elements)
            {
                var found = atoms.Where(a => a.Key.Number == element.Number).ToList();
                if (found.Count == 0)
                    return null;
                sum += found[0].Value;
            }

            return sum;
        }
    }

    /// <inheritdoc/>
    public override string ToString() => $"{Written(Above)}/{Written(Below)}";

    private static string Written(IReadOnlyList<Element> side)
        => side.Count == 1 ? side[0].Symbol : $"({string.Join('+', side.Select(e => e.Symbol))})";

    private static List<Element>? Sum(string side)
    {
        if (side.StartsWith('(') != side.EndsWith(')'))
            return null;
        var elements = side.Trim('(', ')').Split('+').Select(Element.Find).ToList();
        return elements.Contains(null) ? null : [.. elements.OfType<Element>().Distinct()];
    }
}
