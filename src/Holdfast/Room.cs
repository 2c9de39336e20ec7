using System.Diagnostics;

namespace Holdfast;

/// <summary>
/// Work that stands for itself: one rule, fit, figure, table or section. A fault inside becomes a finding at its place and takes nothing else down.
/// </summary>
/// <remarks>Data that cannot answer give findings of their own; what ends here is a fault of the program, and tests hold that there is none.</remarks>
public static class Room
{
    /// <summary>Code of the finding.</summary>
    public const string Code = "HF-451";

    /// <summary>Does the work in a room of its own.</summary>
    /// <typeparam name="T">What it gives.</typeparam>
    /// <param name="place">What is worked out, as a reader knows it: "the table of vessels".</param>
    /// <param name="work">The work; whatever it enumerates must be enumerated inside.</param>
    /// <param name="concerns">Series, samples or claims it is about.</param>
    /// <returns>What the work gave, or the finding that says where it fell. Being stopped is no fault and passes through.</returns>
    public static Outcome<T> Of<T>(string place, Func<T> work, params string[] concerns) where T : class
    {
        ArgumentNullException.ThrowIfNull(work);
        try
        {
            return new(work(), []);
        }
#pragma warning disable CA1031 // This is what a room is for: whatever went wrong inside is said, and the rest goes on.
        catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
#pragma warning restore CA1031
        {
            return Outcome<T>.None(Finding.Of(
                Code, Weight.Stop, $"{SentenceCase.Of(place)} could not be worked out: a fault in Holdfast, not in your data. The rest stands. Tell the maintainers: {Where(fault)}.", concerns));
        }
    }

    // The step of ours in which it fell, for those who mend it; a reader of the report needs no more than the code.
    private static string Where(Exception fault)
    {
        var cause = fault is AggregateException { InnerException: { } inner } ? inner : fault;
        var method = new StackTrace(cause).GetFrames().Select(f => f.GetMethod())
            .FirstOrDefault(m => m?.DeclaringType?.FullName?.StartsWith(nameof(Holdfast), StringComparison.Ordinal) == true);
        return method is null ? cause.GetType().Name : $"{cause.GetType().Name} in {method.DeclaringType!.Name}.{method.Name}";
    }
}
