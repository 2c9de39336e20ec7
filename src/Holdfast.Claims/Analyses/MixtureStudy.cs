using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Competition;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>What vessels with two metals say of preference. All by amount of substance, in one vessel.</summary>
/// <param name="Rivals">One for each second metal, in the order they came.</param>
/// <param name="Findings">Caveats.</param>
public sealed record MixtureStudy(ImmutableArray<RivalMetal> Rivals, ImmutableArray<Finding> Findings)
{
    private static readonly Analysis<MixtureStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static MixtureStudy Of(Evidence evidence) => Known.Of(evidence);

    private static MixtureStudy Work(Evidence evidence)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var rivals = evidence.Study.Samples
            .Where(s => !evidence.Study.IsStruck(s) && s.Words(CompetitionProperties.Rival) is { Length: > 0 })
            .GroupBy(s => s.Words(CompetitionProperties.Rival)!, StringComparer.OrdinalIgnoreCase)
            .Select(g => One(g.Key, [.. g], findings))
            .Where(r => r.Vessels.Length > 0)
            .ToImmutableArray();
        return new(rivals, findings.ToImmutable());
    }

    private static RivalMetal One(string metal, Sample[] samples, ImmutableArray<Finding>.Builder findings)
    {
        var vessels = samples.Select(s => One(s, findings)).OfType<MixtureVessel>().ToImmutableArray();
        return new(metal, vessels, vessels.Length == 0 ? null : Selectivity.Mean([.. vessels.Select(v => v.Preference)]));
    }

    private static MixtureVessel? One(Sample sample, ImmutableArray<Finding>.Builder findings)
    {
        if (sample.Number(CompetitionProperties.InitialOfEach) is not { } start
            || sample.Number(CompetitionProperties.AnalyteLeft) is not { } analyte
            || sample.Number(CompetitionProperties.RivalLeft) is not { } rival)
        {
            findings.Add(Finding.Of("HF-655", Weight.Caution, $"{sample.Code} lacks the start or one of the two metals left: no preference follows from it.", sample.Code));
            return null;
        }

        if (!(analyte > 0 && analyte < start && rival > 0 && rival < start))
        {
            findings.Add(Finding.Of("HF-656", Weight.Caution,
                $"{sample.Code}: one metal was not taken up, or nothing of it was left, so that a ratio of distribution coefficients has no value. Change the dose.", sample.Code));
            return null;
        }

        var each = Recorded(sample, CompetitionProperties.InitialOfEach);
        return new(sample, start, analyte, rival, Selectivity.Coefficient(
            each, Recorded(sample, CompetitionProperties.AnalyteLeft), each, Recorded(sample, CompetitionProperties.RivalLeft)));
    }

    // With its own uncertainty where it came with one; otherwise the scatter of vessels alone judges.
    private static Measured Recorded(Sample sample, Property property)
    {
        var fact = sample.Fact(property)!;
        return fact.U is { } u and > 0
            ? Measured.From(fact.Value!.Value, new Source($"{property.Name}:{sample.Code}", $"{property.Title} of {sample.Code}, as recorded", u, Unit: property.Unit, Trail: fact.Origin.ToString()))
            : fact.Value!.Value;
    }
}

/// <summary>One second metal.</summary>
/// <param name="Metal">Its symbol.</param>
/// <param name="Vessels">Vessels in which both metals have a distribution coefficient.</param>
/// <param name="Preference">Selectivity coefficient of the analyte over it, geometric mean; null with fewer than two vessels.</param>
public sealed record RivalMetal(string Metal, ImmutableArray<MixtureVessel> Vessels, Estimate? Preference);

/// <summary>One vessel with two metals.</summary>
/// <param name="Sample">The sample.</param>
/// <param name="Start">Each metal at the start, mmol/L.</param>
/// <param name="AnalyteLeft">Analyte left, mmol/L.</param>
/// <param name="RivalLeft">Second metal left, mmol/L.</param>
/// <param name="Preference">Selectivity coefficient of the analyte over the second metal, with the uncertainty that the concentrations came with; no unit.</param>
public sealed record MixtureVessel(Sample Sample, double Start, double AnalyteLeft, double RivalLeft, Measured Preference);
