using System.Globalization;

namespace Holdfast.Statistics;

/// <summary>The refusal of every comparison that has no scatter to compare with (code HF-449).</summary>
internal static class NoScatter
{
    /// <summary>Says why a group of n values gives no standard error.</summary>
    /// <param name="n">How many values there are.</param>
    /// <param name="name">Name of the group, or empty.</param>
    public static Finding Of(int n, string name = "")
    {
        var of = name.Length == 0 ? "" : $" in {name}";
        var sentence = n < 2
            ? string.Create(CultureInfo.InvariantCulture, $"There is {n} value{of}: it has no scatter, so nothing can be compared. Repeat the vessel at least twice.")
            : string.Create(CultureInfo.InvariantCulture, $"All {n} values{of} are equal: rounding hides their scatter, so no comparison is possible. Record more digits.");
        return name.Length == 0 ? Finding.Of("HF-449", Weight.Stop, sentence) : Finding.Of("HF-449", Weight.Stop, sentence, name);
    }
}
