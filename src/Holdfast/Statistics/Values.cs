using System.Globalization;
using System.Runtime.CompilerServices;

namespace Holdfast.Statistics;

/// <summary>What a list of values must be before anything is computed from it.</summary>
internal static class Values
{
    /// <summary>Refuses an empty list and values that are not finite.</summary>
    /// <param name="values">The values.</param>
    /// <param name="name">The argument's name.</param>
    public static void Require(IReadOnlyList<double> values, [CallerArgumentExpression(nameof(values))] string name = "")
    {
        ArgumentNullException.ThrowIfNull(values, name);
        if (values.Count == 0)
            throw new ArgumentException($"{name} is empty; at least one value is needed.", name);
        foreach (var v in values)
        {
            if (!double.IsFinite(v))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} holds {v}; only finite values are allowed."), name);
        }
    }
}
