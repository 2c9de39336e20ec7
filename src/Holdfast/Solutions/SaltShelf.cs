namespace Holdfast.Solutions;

/// <summary>Salts that a bench keeps for metal stocks, with the metal that is counted.</summary>
/// <remarks>Common practice; molar masses follow from the formulas.</remarks>
internal static class SaltShelf
{
    /// <summary>The table, comma-separated with a header row.</summary>
    public const string Table =
        """
        salt,metal
        CuCl2,Cu
        CuCl2.2H2O,Cu
        CuSO4,Cu
        CuSO4.5H2O,Cu
        Cu(NO3)2.3H2O,Cu
        Cu(NO3)2.2.5H2O,Cu
        Pb(NO3)2,Pb
        Pb(CH3COO)2.3H2O,Pb
        PbCl2,Pb
        CdCl2,Cd
        CdCl2.2.5H2O,Cd
        CdCl2.H2O,Cd
        Cd(NO3)2.4H2O,Cd
        3CdSO4.8H2O,Cd
        ZnCl2,Zn
        ZnSO4.7H2O,Zn
        ZnSO4.H2O,Zn
        Zn(NO3)2.6H2O,Zn
        NiCl2,Ni
        NiCl2.6H2O,Ni
        NiSO4.6H2O,Ni
        NiSO4.7H2O,Ni
        Ni(NO3)2.6H2O,Ni
        CoCl2,Co
        CoCl2.6H2O,Co
        Co(NO3)2.6H2O,Co
        CoSO4.7H2O,Co
        MnCl2.4H2O,Mn
        MnSO4.H2O,Mn
        Mn(NO3)2.4H2O,Mn
        FeCl3,Fe
        FeCl3.6H2O,Fe
        Fe(NO3)3.9H2O,Fe
        FeSO4.7H2O,Fe
        FeCl2.4H2O,Fe
        CrCl3.6H2O,Cr
        Cr(NO3)3.9H2O,Cr
        K2Cr2O7,Cr
        K2CrO4,Cr
        AlCl3,Al
        AlCl3.6H2O,Al
        Al(NO3)3.9H2O,Al
        HgCl2,Hg
        Hg(NO3)2.H2O,Hg
        AgNO3,Ag
        ZrCl4,Zr
        ZrOCl2.8H2O,Zr
        Ca(NO3)2.4H2O,Ca
        CaCl2,Ca
        CaCl2.2H2O,Ca
        """;
}
