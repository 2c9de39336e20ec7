using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Holdfast.Studies;
using Holdfast.Studies.History;

namespace Holdfast.Claims.Plans;

/// <summary>Freezing a plan: every margin that its claims are judged by is fixed, then plan and margins get a fingerprint.</summary>
public static class PlanFreezing
{
    /// <summary>The changes that freeze the plan of a study, to be kept together.</summary>
    /// <param name="study">The study.</param>
    /// <param name="answers">Warnings accepted as they are: reason by name.</param>
    public static Change[] Of(Study study, IReadOnlyDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(answers);
        MarginFixed[] margins = [.. study.Designs.SelectMany(d => d.Questions).Select(q => q.Margin).OfType<string>().Distinct(StringComparer.Ordinal)
            .Where(name => study.Margins.All(m => m.Name != name)).Select(name => MarginKind.Named(name)!).Select(k => new MarginFixed(k.Name, k.Low, k.High, k.Unit))];
        var all = study.Margins.Select(m => new MarginFixed(m.Name, m.Low, m.High, m.Unit)).Concat(margins);
        return [.. margins, new PlanFrozen(Fingerprint(study, all), [.. answers.Select(a => new PlanWarning(a.Key, "", a.Value))])];
    }

    // One line a margin, a claim and a vessel, in the order they were kept: anyone can repeat it from the plain tables.
    private static string Fingerprint(Study study, IEnumerable<MarginFixed> margins)
    {
        var text = new StringBuilder();
        foreach (var m in margins)
            text.Append(CultureInfo.InvariantCulture, $"margin {m.Name} {m.Low:R} {m.High:R} {m.Unit}\n");
        foreach (var plan in study.Designs)
        {
            foreach (var q in plan.Questions)
                text.Append(CultureInfo.InvariantCulture, $"claim {q.Rule} {string.Join(' ', q.Series)}\n");
            foreach (var v in plan.Vessels)
            {
                text.Append(CultureInfo.InvariantCulture,
                    $"vessel {v.Code} {v.Series} {v.Role} {v.Replicate} {v.Block} {v.InitialConcentration:R} {v.Volume:R} {v.Mass:R} {v.Ph:R} {v.Temperature:R} {v.ContactTime:R} {v.Batch}\n");
            }
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
