using System.Collections.Immutable;

namespace Holdfast.Claims;

/// <summary>The rivals that a claim names.</summary>
internal static class Rivals
{
    /// <summary>Names in the parameter "rival", separated by commas or semicolons; none means every other curve.</summary>
    /// <param name="claim">The claim.</param>
    public static ImmutableArray<string> Of(Claim claim)
        => [.. (claim.Words("rival") ?? "").Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
}
