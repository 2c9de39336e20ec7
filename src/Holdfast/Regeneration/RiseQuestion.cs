namespace Holdfast.Regeneration;

/// <summary>One reason why uptake can rise after regeneration, with what would tell. They are asked in this order: the first is the likeliest error.</summary>
/// <param name="Reason">What may have happened.</param>
/// <param name="Tells">The measurement that tells.</param>
public sealed record RiseQuestion(string Reason, string Tells)
{
    /// <summary>Every reason, the likeliest error first and the real effect last; common practice.</summary>
    public static IReadOnlyList<RiseQuestion> InOrder { get; } =
    [
        new("Base left from the eluent precipitates the metal as hydroxide.", "pH at the start of each cycle, and a sorbent-free control at that pH"),
        new("Liquid held back dilutes the next start solution.", "the volume held back, by weighing, or a tracer that does not sorb"),
        new("Mass was lost, or the powder was weighed wet, while the first mass was used.", "dry mass in each cycle, or a blank carried through all steps"),
        new("pH or start concentration of later cycles differed.", "start pH and start concentration of each cycle, measured"),
        new("The first cycle had not reached equilibrium.", "a first cycle of twice the contact time"),
        new("It is real: pores opened, a blocking ion was washed out, an exchangeable form was renewed.", "a sorbent washed with eluent before cycle 1: it shows the high uptake at once"),
    ];
}
