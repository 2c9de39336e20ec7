namespace Holdfast.Solutions;

/// <summary>Typical balances, g; the certificate of the real one wins.</summary>
/// <remarks>Linearity of the 0.1 mg balance after Eurachem/CITAC QUAM, example A2; the rest is common practice.</remarks>
internal static class BalanceLimits
{
    /// <summary>The table, comma-separated with a header row.</summary>
    public const string Table =
        """
        name,resolution_g,linearity_g,repeatability_g,source,status
        analytical balance 0.1 mg,0.0001,0.00015,0.0001,typical linearity and repeatability; QUAM A2 uses 0.15 mg linearity,value of A2 checked through its 0.13 mg result
        analytical balance 0.01 mg,0.00001,0.00003,0.00002,typical,common practice
        top-pan balance 0.01 g,0.01,0.02,0.01,typical,common practice
        """;
}
