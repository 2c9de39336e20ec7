using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Acts;

/// <summary>Samples given another role, before it is kept: who changes, and the known concentrations that go with a standard.</summary>
/// <param name="Roles">Samples that change.</param>
/// <param name="Cells">Known concentrations that come with it.</param>
/// <param name="WithoutConcentration">Standards whose concentration is still not known, by code.</param>
/// <param name="Corrects">True when a known concentration that was recorded is replaced: that asks for a reason.</param>
public sealed record RoleChange(ImmutableArray<RoleGiven> Roles, ImmutableArray<TypedCell> Cells, ImmutableArray<string> WithoutConcentration, bool Corrects)
{
    /// <summary>The role a word names, or null: "standard", "blank", "check", "vessel".</summary>
    /// <param name="word">As typed.</param>
    public static SampleRole? Named(string word) => RoleWords.Read(word ?? "");

    /// <summary>Works out what would change. Nothing changes for a sample that has the role already, unless its concentration does.</summary>
    /// <param name="study">The study.</param>
    /// <param name="samples">The samples.</param>
    /// <param name="role">What they are for.</param>
    /// <param name="known">Known concentrations as typed: one for all, or one for each in order; empty takes what is recorded as their concentration.</param>
    /// <param name="trouble">What is wrong; "" when nothing is.</param>
    public static RoleChange? Of(Study study, ImmutableArray<Sample> samples, SampleRole role, ImmutableArray<string> known, out string trouble)
    {
        ArgumentNullException.ThrowIfNull(study);
        trouble = "";
        var isStandard = role is SampleRole.Standard or SampleRole.CheckStandard;
        if (known.Length > 0 && !isStandard)
        {
            trouble = "Only standards and check standards have a known concentration. Leave it out, or choose one of these.";
            return null;
        }
        if (known.Length > 1 && known.Length != samples.Length)
        {
            trouble = FormattableString.Invariant($"{samples.Length} samples and {known.Length} concentrations: give one for each, in order, or one for all.");
            return null;
        }

        var (cells, without, corrects) = (ImmutableArray.CreateBuilder<TypedCell>(), ImmutableArray.CreateBuilder<string>(), false);
        for (var i = 0; isStandard && i < samples.Length; i++)
        {
            var sample = samples[i];
            var recorded = sample.Fact(SpectrometryProperties.StandardConcentration);
            if (known.Length == 0)
            {
                // Whatever column its concentration stood in, it serves; the cell it was read from stays its origin.
                if (recorded is null && sample.Fact(BatchProperties.InitialConcentration) is { Value: not null } made)
                    cells.Add(new TypedCell(sample.Code, made with { Property = SpectrometryProperties.StandardConcentration.Name }));
                else if (recorded is null)
                    without.Add(sample.Code);
                continue;
            }

            if (TypedFact.Read(sample.Code, SpectrometryProperties.StandardConcentration, known.Length == 1 ? known[0] : known[i], out trouble, study.Analyte) is not { } fact)
                return null;
            if (recorded is not null && TypedFact.Shown(recorded) == TypedFact.Shown(fact))
                continue;
            cells.Add(new TypedCell(sample.Code, fact));
            corrects |= recorded is not null;
        }

        var kept = cells.ToImmutable();
        return new RoleChange([.. samples.Where(s => s.Role != role || kept.Any(c => c.Sample == s.Code)).Select(s => new RoleGiven(s.Code, role))], kept, without.ToImmutable(), corrects);
    }
}
