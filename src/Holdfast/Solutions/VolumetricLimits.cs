namespace Holdfast.Solutions;

/// <summary>Limits of glassware of class A and of piston pipettes, mL; each row says which standard and whether it was seen.</summary>
/// <remarks>ISO 1042, ISO 648, ISO 385, ISO 4788, ISO 8655-2; rows marked "from memory" are to be compared with the standard before they are relied on.</remarks>
internal static class VolumetricLimits
{
    /// <summary>The table, comma-separated with a header row.</summary>
    public const string Table =
        """
        kind,nominal_mL,tolerance_mL,repeatability_mL,standard,status
        flask,5,0.025,,ISO 1042,from memory
        flask,10,0.025,,ISO 1042,from memory
        flask,20,0.04,,ISO 1042,from memory
        flask,25,0.04,,ISO 1042,from memory
        flask,50,0.06,,ISO 1042,from memory
        flask,100,0.1,,ISO 1042,from memory; QUAM A1 uses 0.1
        flask,200,0.15,,ISO 1042,from memory
        flask,250,0.15,,ISO 1042,from memory
        flask,500,0.25,,ISO 1042,from memory
        flask,1000,0.4,,ISO 1042,from memory
        flask,2000,0.6,,ISO 1042,from memory
        pipette,0.5,0.005,,ISO 648,from memory
        pipette,1,0.008,,ISO 648,from memory
        pipette,2,0.01,,ISO 648,from memory
        pipette,5,0.015,,ISO 648,from memory
        pipette,10,0.02,,ISO 648,from memory
        pipette,20,0.03,,ISO 648,from memory
        pipette,25,0.03,,ISO 648,from memory
        pipette,50,0.05,,ISO 648,from memory
        pipette,100,0.08,,ISO 648,from memory
        burette,10,0.02,,ISO 385,from memory
        burette,25,0.03,,ISO 385,from memory
        burette,50,0.05,,ISO 385,from memory
        cylinder,10,0.1,,ISO 4788,from memory
        cylinder,25,0.25,,ISO 4788,from memory
        cylinder,50,0.5,,ISO 4788,from memory
        cylinder,100,0.5,,ISO 4788,from memory
        cylinder,250,1,,ISO 4788,from memory
        cylinder,500,2.5,,ISO 4788,from memory; QUAM A5 uses 2.5
        cylinder,1000,5,,ISO 4788,from memory
        piston pipette,0.01,0.00012,0.00008,ISO 8655-2,from memory
        piston pipette,0.02,0.0002,0.0001,ISO 8655-2,from memory
        piston pipette,0.05,0.0005,0.0002,ISO 8655-2,from memory
        piston pipette,0.1,0.0008,0.0003,ISO 8655-2,from memory
        piston pipette,0.2,0.0016,0.0006,ISO 8655-2,from memory
        piston pipette,0.5,0.004,0.0015,ISO 8655-2,from memory
        piston pipette,1,0.008,0.003,ISO 8655-2,checked in a journal note; the same absolute limits hold at 200 and 500 uL settings
        piston pipette,2,0.016,0.006,ISO 8655-2,from memory
        piston pipette,5,0.04,0.015,ISO 8655-2,from memory
        piston pipette,10,0.06,0.03,ISO 8655-2,from memory
        """;
}
