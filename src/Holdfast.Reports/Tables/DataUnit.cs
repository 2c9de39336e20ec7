using System.Globalization;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tables;

/// <summary>Units in names of data columns: letters, digits and underscores only, "mg g^-1" as "mg_per_g".</summary>
internal static class DataUnit
{
    /// <summary>The unit as part of a name.</summary>
    public static string Of(string unit)
    {
        var factors = UnitFactor.Read(unit);
        var parts = factors.Where(f => f.Power > 0).Select(f => Plain(f.Symbol, f.Power))
            .Concat(factors.Where(f => f.Power < 0).Select(f => "per_" + Plain(f.Symbol, -f.Power)));
        return string.Join('_', parts);
    }

    private static string Plain(string symbol, int power)
    {
        var name = symbol switch
        {
            "%" => "percent",
            "°C" => "degC",
            "°" => "deg",
            _ => string.Concat(symbol.Replace("µ", "u", StringComparison.Ordinal).Replace("μ", "u", StringComparison.Ordinal)
                .Where(c => char.IsAsciiLetterOrDigit(c))),
        };
        return power == 1 ? name : name + power.ToString(CultureInfo.InvariantCulture);
    }
}
