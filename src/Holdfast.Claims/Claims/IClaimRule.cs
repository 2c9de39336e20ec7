using System.Collections.Immutable;
using Holdfast.Claims.Analyses;

namespace Holdfast.Claims;

/// <summary>
/// One kind of claim, in one file: what it says, what the data must show for it, and how it is judged. Rules are found by
/// <see cref="Studies.Catalogue"/> and need a constructor without parameters; a snapshot of their ids makes an addition visible.
/// </summary>
public interface IClaimRule
{
    /// <summary>Stable id: "equilibrium-reached".</summary>
    string Id { get; }

    /// <summary>The wording, with parameters in braces: "Equilibrium was reached by {time} in {series}."</summary>
    string Wording { get; }

    /// <summary>Names of parameters that the rule also reads and its wording has no place for; each is known to <see cref="ClaimParameter"/>.</summary>
    ImmutableArray<string> AlsoReads => [];

    /// <summary>Parameters of this rule's own, with their hints; one of a known name stands in for it.</summary>
    ImmutableArray<ClaimParameter> Own => [];

    /// <summary>
    /// Whether a claim of this kind, when contradicted, caps those that stand on it; false leaves them as they are and warns. It caps unless
    /// a rule says otherwise.
    /// </summary>
    bool CapsDependents => true;

    /// <summary>Claims of this kind that the data invite, for a study whose author stated none.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    IEnumerable<Claim> Invited(Evidence evidence);

    /// <summary>Claims this one stands on; one that is contradicted caps it, one that is not shown yet adds a warning.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence);

    /// <summary>Judges the claim. Missing data give a verdict "not shown yet" that says what is missing; nothing is thrown.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    Verdict Judge(Claim claim, Evidence evidence);
}
