using Holdfast.Amounts;

namespace Holdfast.Composition;

/// <summary>Mass percent into atomic percent and back, over the elements that are given: a total of 100 % hides what was not measured.</summary>
public static class Percentages
{
    /// <summary>Atomic percent, a_i = 100·(w_i/A_i)/Σ(w_j/A_j).</summary>
    /// <param name="massPercent">Elements with their mass percent; any common scale, since the result is normalised.</param>
    /// <exception cref="ArgumentException">An element has no standard atomic weight, or everything is 0.</exception>
    public static IReadOnlyList<KeyValuePair<Element, Measured>> ToAtomic(IReadOnlyList<KeyValuePair<Element, Measured>> massPercent)
        => Normalise(massPercent, (value, weight) => value / weight);

    /// <summary>Mass percent, w_i = 100·a_i·A_i/Σ(a_j·A_j).</summary>
    /// <param name="atomicPercent">Elements with their atomic percent; any common scale, since the result is normalised.</param>
    /// <exception cref="ArgumentException">An element has no standard atomic weight, or everything is 0.</exception>
    public static IReadOnlyList<KeyValuePair<Element, Measured>> ToMass(IReadOnlyList<KeyValuePair<Element, Measured>> atomicPercent)
        => Normalise(atomicPercent, (value, weight) => value * weight);

    private static List<KeyValuePair<Element, Measured>> Normalise(
        IReadOnlyList<KeyValuePair<Element, Measured>> given, Func<Measured, Measured, Measured> scale)
    {
        ArgumentNullException.ThrowIfNull(given);
        var scaled = new List<KeyValuePair<Element, Measured>>();
        Measured total = 0;
        foreach (var (element, value) in given)
        {
            var weight = element.Weight ?? throw new ArgumentException($"{element.Name} has no standard atomic weight.", nameof(given));
            scaled.Add(new(element, scale(value, weight)));
            total += scaled[^1].Value;
        }

        if (!(total.Value > 0))
            throw new ArgumentException("The percentages add up to nothing.", nameof(given));
        return [.. scaled.Select(p => new KeyValuePair<Element, Measured>(p.Key, 100 * p.Value / total))];
    }
}
