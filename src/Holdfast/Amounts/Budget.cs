using System.Globalization;
using System.Text;

namespace Holdfast.Amounts;

/// <summary>Where a result's uncertainty comes from: one row for each source, or for each fit, sorted by its share of the variance.</summary>
/// <param name="Result">The result.</param>
/// <param name="Rows">Rows from the largest share down; the shares add up to 100 %, but for an exact number, which has none.</param>
public sealed record Budget(Measured Result, IReadOnlyList<BudgetRow> Rows)
{
    /// <summary>The budget with every source on its own row.</summary>
    public static Budget BySource(Measured result)
        => Of(result, Live(result).Select(c => new[] { c }));

    /// <summary>The budget with the sources of one fit on one row, as they only mean something together.</summary>
    public static Budget ByGroup(Measured result)
        => Of(result, Live(result).GroupBy(c => c.Source.GroupOrSelf, StringComparer.Ordinal).Select(g => g.ToArray()));

    /// <summary>The largest rows, the rest summed into one row "other n".</summary>
    /// <param name="count">How many rows to keep, at least 1.</param>
    public Budget Top(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        if (Rows.Count <= count + 1)
            return this;
        var rest = Rows.Skip(count).ToArray();
        var name = string.Create(CultureInfo.InvariantCulture, $"other {rest.Length}");
        var variance = rest.Sum(r => r.Contribution * r.Contribution);
        return this with
        {
            Rows = [.. Rows.Take(count), new(name, null, null, Math.Sqrt(variance), rest.Sum(r => r.Share), null)],
        };
    }

    /// <summary>What to improve next, in one line: "64 % of the variance is calibration line of run 2"; null for an exact number.</summary>
    public string? Headline
        => Rows.Count == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{Rows[0].Share:0} % of the variance is {Rows[0].Name}");

    /// <summary>The budget as lines of text: share, source, its uncertainty, where it is recorded.</summary>
    /// <param name="most">Rows to print before the rest is summed.</param>
    public string Trail(int most = 8)
    {
        var text = new StringBuilder();
        var rows = Top(most).Rows;
        var width = rows.Count == 0 ? 0 : rows.Max(r => r.Name.Length);
        foreach (var row in rows)
        {
            text.Append(CultureInfo.InvariantCulture, $"{row.Share,6:0.0} %  {row.Name.PadRight(width)}");
            if (row.Source is { } source)
            {
                text.Append(CultureInfo.InvariantCulture, $"  u {source.U:G3}{(source.Unit is null ? "" : " " + source.Unit)}");
                if (!double.IsPositiveInfinity(source.DegreesOfFreedom))
                    text.Append(CultureInfo.InvariantCulture, $", {source.DegreesOfFreedom:0.#} degrees of freedom");
            }

            if (row.RecordedIn is { } where)
                text.Append("  <- ").Append(where);
            text.Append('\n');
        }

        return text.ToString();
    }

    // A source that cancelled, as in x − x, is still listed with a contribution of 0.
    private static IEnumerable<Contribution> Live(Measured result) => result.Contributions.ToArray().Where(c => c.D != 0);

    private static Budget Of(Measured result, IEnumerable<Contribution[]> parts)
    {
        var total = result.Variance;
        var rows = parts.Select(part =>
        {
            var variance = part.Sum(c => c.D * c.D);
            var single = part.Length == 1 ? part[0].Source : null;
            var name = single?.Name ?? NameOf(part);
            var where = part.Select(c => c.Source.Trail).Where(t => t is not null).Distinct(StringComparer.Ordinal).ToArray();
            return new BudgetRow(
                name,
                single,
                single is null ? null : part[0].D / single.U,
                Math.Sqrt(variance),
                100 * variance / total,
                where.Length == 0 ? null : string.Join(", ", where));
        });
        return new(result, [.. rows.OrderByDescending(r => r.Share).ThenBy(r => r.Name, StringComparer.Ordinal)]);
    }

    // Sources of one fit are named "calibration line of run 2, direction 1": what they have in common names the fit.
    private static string NameOf(Contribution[] part)
    {
        var first = part[0].Source.Name;
        var common = part.Min(c => first.Zip(c.Source.Name).TakeWhile(p => p.First == p.Second).Count());
        var name = first[..common];
        var cut = name.LastIndexOf(", ", StringComparison.Ordinal);
        name = (cut > 0 ? name[..cut] : name).Trim();
        return name.Length == 0 ? part[0].Source.GroupOrSelf : name;
    }
}

/// <summary>One row of a budget.</summary>
/// <param name="Name">The source or fit, in words.</param>
/// <param name="Source">The single source, or null for a fit or for "other n".</param>
/// <param name="Sensitivity">∂f/∂s in result unit over source unit; null where the row is not a single source.</param>
/// <param name="Contribution">|∂f/∂s|·u(s), in the unit of the result.</param>
/// <param name="Share">Share of the variance, percent.</param>
/// <param name="RecordedIn">Where it is recorded, or null.</param>
public sealed record BudgetRow(string Name, Source? Source, double? Sensitivity, double Contribution, double Share, string? RecordedIn);
