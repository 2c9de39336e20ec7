using Holdfast.Fitting;
using Holdfast.Fluorescence;
using Holdfast.Testing;

namespace Holdfast.Tests.Fluorescence;

/// <summary>The made quenching series of reference/measurement/fluorescence-data.csv.</summary>
internal sealed record QuenchingSeries(double[] Q, double[] F)
{
    public static QuenchingSeries Named(string dataset)
    {
        var rows = ReferenceTable.Read("measurement", "fluorescence-data.csv").Where(r => r["dataset"] == dataset).ToArray();
        Assert.NotEmpty(rows);
        return new(Array.ConvertAll(rows, r => r.Number("Q")), Array.ConvertAll(rows, r => r.Number("F")));
    }

    public Points Points => Quenching.PointsOf(Q, F, "µmol/L", "counts").Value!;

    /// <summary>F0/F with the first reading as F0.</summary>
    public double[] Ratios => Array.ConvertAll(F, f => F[0] / f);

    public FitResult Fit(string law) => Quenching.Named(law)!.Fit(Points);
}
