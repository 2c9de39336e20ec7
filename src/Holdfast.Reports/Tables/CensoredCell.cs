using Holdfast.Amounts;

namespace Holdfast.Reports.Tables;

/// <summary>A value known only to lie beyond a limit. It is never written as a number.</summary>
/// <param name="Side">On which side.</param>
/// <param name="Limit">The limit, in the unit of the column; finite.</param>
/// <param name="LimitName">"LOD", "LOQ"; null for none.</param>
public sealed record CensoredCell(CensoredSide Side, double Limit, string? LimitName = null) : Cell
{
    /// <summary>As shown.</summary>
    internal string Shown(DecimalMark mark) => RoundedNumber.Censored(Side, Limit, LimitName, mark);
}
