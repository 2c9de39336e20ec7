using Holdfast.Fitting.Lines;
using Holdfast.Statistics;

namespace Holdfast.Competition;

/// <summary>
/// How much of an ion the solid gives for each of the metal it takes: the slope of released on sorbed, by amount, with errors in both. What the solid
/// releases without the metal is subtracted first; without that control a slope is dissolution and exchange together.
/// </summary>
/// <param name="Slope">Released per sorbed; no unit.</param>
/// <param name="Intercept">Released at nothing sorbed, in the unit of the amounts.</param>
/// <param name="InterceptError">Standard error of the intercept, in the unit of the amounts.</param>
public sealed record ExchangeRatio(Estimate Slope, double Intercept, double InterceptError)
{
    /// <summary>Loadings below which a slope is no evidence; common practice.</summary>
    public const int EnoughLoadings = 4;

    /// <summary>The slope, after D. York and co-workers; its standard error is widened where the scatter exceeds the stated uncertainties.</summary>
    /// <param name="sorbed">Metal sorbed, by amount (mmol/g or mmol/L).</param>
    /// <param name="released">Ion released less the control, same unit.</param>
    /// <param name="sorbedU">Standard uncertainty of each sorbed amount, above 0.</param>
    /// <param name="releasedU">Standard uncertainty of each released amount, above 0.</param>
    public static Outcome<ExchangeRatio> Of(
        IReadOnlyList<double> sorbed, IReadOnlyList<double> released, IReadOnlyList<double> sorbedU, IReadOnlyList<double> releasedU)
    {
        ArgumentNullException.ThrowIfNull(sorbed);
        ArgumentNullException.ThrowIfNull(released);
        if (sorbed.Count < 3 || sorbed.Distinct().Count() < 2)
        {
            return Outcome<ExchangeRatio>.None(Finding.Of("HF-634", Weight.Stop,
                "A ratio of exchange needs three vessels at two or more loadings. Add loadings."));
        }

        var line = York.Through(sorbed, released, sorbedU, releasedU);
        if (line.Value is not { ChiSquare: { } chi, SlopeError: { } slopeError, InterceptError: { } interceptError } found)
            return new(null, line.Findings);
        var freedom = sorbed.Count - 2;
        var widened = Math.Sqrt(Math.Max(1, chi / freedom));
        return new(
            new(new("line with errors in both", found.Slope, slopeError * widened, freedom, sorbed.Count), found.Intercept, interceptError * widened), line.Findings);
    }
}
