namespace Holdfast.Amounts;

/// <summary>
/// As what and per what a value is stated: 10 mg/L "as Ni" is not 10 mg/L "as NiCl2·6H2O", and an uptake per gram of dry sorbent is
/// not one per gram of wet sorbent. A unit alone does not tell these apart.
/// </summary>
/// <param name="As">The species whose mass or amount is counted: "Ni", "PO4", "NiCl2·6H2O"; null when not stated.</param>
/// <param name="Per">The state of the sorbent in the denominator.</param>
public sealed record Basis(string? As = null, SorbentState Per = SorbentState.NotStated)
{
    /// <summary>Nothing stated.</summary>
    public static Basis NotStated { get; } = new();

    /// <summary>Throws when two values rest on different bases; a basis that is not stated is not taken for any other.</summary>
    /// <param name="a">Basis of the first value.</param>
    /// <param name="b">Basis of the second.</param>
    /// <exception cref="ArgumentException">The bases differ.</exception>
    public static void RequireSame(Basis a, Basis b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        if (a != b)
            throw new ArgumentException($"One value is stated {a}, the other {b}.", nameof(b));
    }

    /// <summary>In words: "as Ni per dry sorbent".</summary>
    public override string ToString()
    {
        var per = Per switch { SorbentState.Dry => "per dry sorbent", SorbentState.Wet => "per wet sorbent", _ => "" };
        var species = As is null ? "" : $"as {As}";
        return species.Length + per.Length == 0 ? "without basis" : $"{species} {per}".Trim();
    }
}

/// <summary>State of the sorbent whose mass stands below the stroke.</summary>
public enum SorbentState
{
    /// <summary>Not stated.</summary>
    NotStated,

    /// <summary>Dry mass: moisture taken off.</summary>
    Dry,

    /// <summary>Mass as weighed, moisture included.</summary>
    Wet,
}
