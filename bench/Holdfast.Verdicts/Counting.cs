using Holdfast.Simulated;

namespace Holdfast.Verdicts;

/// <summary>Conditions and the ledger of their counts.</summary>
internal static class Counting
{
    /// <summary>Counts studies of a condition until there are so many.</summary>
    /// <param name="condition">The condition.</param>
    /// <param name="ledger">Where they are kept.</param>
    /// <param name="studies">How many.</param>
    public static void Fill(this Condition condition, Ledger ledger, int studies) => ledger.Fill(Key(condition), studies, seed => condition.Judge(seed) switch { Ruling.Holds => 0, Ruling.Contradicted => 2, _ => 1 });

    /// <summary>What was counted.</summary>
    /// <param name="condition">The condition.</param>
    /// <param name="ledger">Where it is kept.</param>
    public static Count In(this Condition condition, Ledger ledger) => ledger[Key(condition)] is [var holds, var open, var contradicted] ? new(holds, open, contradicted) : default;

    private static string Key(Condition condition) => $"{condition.Rule} | {condition.Name}";
}
