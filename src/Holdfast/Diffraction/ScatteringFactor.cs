using System.Collections.Frozen;

namespace Holdfast.Diffraction;

/// <summary>How strongly an atom scatters X-rays: f0(s) + f′ + if″, in electrons.</summary>
/// <remarks>f0: D. Waasmaier, A. Kirfel, Acta Cryst. A51 (1995) 416; f′ and f″ after D. T. Cromer and D. Liberman. The tables name their source.</remarks>
internal sealed class ScatteringFactor
{
    // The table ends here, per ångström; no radiation of a laboratory comes near.
    private const double MostS = 6;

    private static readonly string[] Columns = ["a1", "a2", "a3", "a4", "a5", "c", "b1", "b2", "b3", "b4", "b5"];

    private static readonly FrozenDictionary<string, double[]> Table =
        TradeTable.Read(ScatteringTable.Table).ToFrozenDictionary(r => r["species"], r => Columns.Select(c => r.Number(c)!.Value).ToArray(), StringComparer.Ordinal);

    private static readonly FrozenDictionary<(string Element, string Radiation), (double Real, double Imaginary)> Dispersion =
        TradeTable.Read(DispersionTable.Table).SelectMany(r => r.Header.Where(h => h.EndsWith(" real", StringComparison.Ordinal)).Select(h => h[..^5])
            .Where(line => r.Number(line + " real") is not null).Select(line => (Row: r, Line: line)))
            .ToFrozenDictionary(x => (x.Row["element"], x.Line), x => (x.Row.Number(x.Line + " real")!.Value, x.Row.Number(x.Line + " imaginary")!.Value));

    private readonly double[] row;

    private ScatteringFactor(double[] row) => this.row = row;

    /// <summary>The neutral atom of an element, or null when the table does not hold it.</summary>
    /// <param name="element">Symbol: "Fe".</param>
    public static ScatteringFactor? Of(string element) => Table.GetValueOrDefault(element == "D" ? "H" : element) is { } row ? new(row) : null;

    /// <summary>f′ and f″ in electrons; null when the table has no such element or radiation.</summary>
    /// <param name="element">Symbol.</param>
    /// <param name="radiation">Radiation; its anode is looked up.</param>
    public static (double Real, double Imaginary)? Correction(string element, Radiation radiation)
        => Dispersion.TryGetValue((element, $"{radiation.Anode}Ka1"), out var found) ? found : null;

    /// <summary>f0 in electrons.</summary>
    /// <param name="s">sin θ/λ, per ångström, up to 6.</param>
    public double At(double s)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(s, MostS);
        var f = row[5];
        for (var i = 0; i < 5; i++)
            f += row[i] * Math.Exp(-row[6 + i] * s * s);
        return f;
    }
}
