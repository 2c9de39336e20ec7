namespace Holdfast.Infrared;

/// <summary>Where groups absorb: a correlation table with a source for each row.</summary>
/// <remarks>
/// Ranges merged from public tables and reworded. U: UCLA organic spectroscopy table; O: University of Massachusetts group frequencies; W: University of
/// the West Indies laboratory appendix; P: a widely copied sheet of typical absorption frequencies; K: KAIST and Virginia Tech table; FC: textbook summary
/// cards; E: Encyclopedia of Physical Science and Technology, infrared chapter, table IV; N: Instant Notes, analytical chemistry; H: hydroxyapatite
/// assignments (SCIRP paper); B: bone mineral assignments (PMC9613710); CA: abstract on carbonate apatites, Biomaterials 30 (2009) 1473; M: from memory
/// (Nakamoto; Socrates; Miller and Wilkins 1952). A note that calls a band broad asks for a broad band.
/// </remarks>
internal static class GroupTable
{
    /// <summary>The table, comma-separated with a header row; wavenumbers in cm⁻¹.</summary>
    public const string Table =
        """
        group,vibration,low,high,strength,broad,note,source
        "hydroxyl, alcohol or phenol, hydrogen bonded",O-H stretch,3200,3550,strong,yes,broad; also adsorbed water,U; P
        "hydroxyl, free",O-H stretch,3580,3650,variable,,sharp,P
        structural hydroxide (apatite OH),O-H stretch,3565,3575,weak,,sharp; 3572 in hydroxyapatite,H; B
        adsorbed or lattice water,H-O-H bend,1600,1660,medium,,with the broad 3000-3600 band; proves nothing about the material,M
        carboxylic acid,O-H stretch,2400,3300,strong,yes,"very broad, under C-H",O; U 2500-3000; W 2500-3300
        "amine, primary (two bands) or secondary (one)",N-H stretch,3280,3500,medium,,narrower than O-H; tertiary none,U 3300-3500; O 3280-3450
        "amine, primary",N-H bend,1550,1650,medium,,"overlaps water, amide II and carboxylate",P; W 1580-1650
        amide,N-H stretch,3380,3540,medium,,,O
        alkane,C-H stretch,2850,2980,medium to strong,,two or more bands; also grease and solvent residue,O; U 2850-2950
        alkane,C-H bend,1360,1470,medium,,,O
        aromatic and alkene,C-H stretch,3000,3100,weak to medium,,above 3000,O
        aromatic,C-H out-of-plane bend,680,900,strong,,pattern depends on substitution,U 680-860; P 690-900
        aromatic ring,C=C stretch,1480,1630,medium,,bands near 1600 and 1500,O 1480-1520 and 1590-1630; P
        alkene,C=C stretch,1620,1680,weak to medium,,,U; O; W
        nitrile,C#N stretch,2220,2260,weak to medium,,"sharp, little else here",U; O 2240-2260
        "isocyanate, isothiocyanate, azide",cumulated stretch,2100,2270,medium to strong,,,P
        carbon dioxide in the beam,O=C=O stretch,2300,2380,variable,,"atmosphere, not sample; also 668",M
        thiol,S-H stretch,2500,2600,weak,,,N
        aldehyde,C=O stretch,1690,1740,strong,,plus C-H pair 2690-2840,U; P
        ketone,C=O stretch,1680,1750,strong,,lower when conjugated,U; O 1705-1725
        carboxylic acid,C=O stretch,1680,1725,strong,,,O 1680-1710; W 1700-1725; E 1680-1720 (dimer)
        ester,C=O stretch,1730,1750,strong,,,O 1735-1750; W 1730-1750; U 1735-1750
        ester,C-O-C stretch,1180,1300,strong,,,O 1180-1290
        amide (amide I),C=O stretch,1630,1695,strong,,,U 1630-1690; P 1630-1695; O 1640-1680
        carboxylate anion,C-O antisymmetric stretch,1540,1650,strong,,moves on coordination: see separation rule,E
        carboxylate anion,C-O symmetric stretch,1360,1450,medium,,,E
        alcohol or phenol,C-O stretch,970,1250,strong,,,P; O 1030-1150
        ether,C-O-C stretch,1070,1150,strong,,,O 1100-1140; FC 1070-1150
        amine,C-N stretch,1000,1360,medium,,uncertain: crowded region,P 1000-1250; K 1180-1360
        carbonate ion,antisymmetric stretch (nu3),1355,1510,very strong,,1408-1423 and 1455-1459 in apatite of type B,B
        carbonate ion,out-of-plane bend (nu2),850,890,medium,,sharp; 870-872 and 878-880 in apatite,B; CA
        phosphate,P-O stretch (nu3),980,1200,very strong,,"1087, 1046, 1032 in hydroxyapatite",B; H
        phosphate,P-O stretch (nu1),950,970,weak,,962 in hydroxyapatite,B; H
        phosphate,O-P-O bend (nu4),555,610,strong,,"602, 574, 561 in hydroxyapatite",H
        hydrogen phosphate,P-OH stretch,865,880,weak,,overlaps carbonate 872,B
        structural hydroxide (apatite OH),O-H libration,625,640,medium,,631,H
        "silicate, silica",Si-O-Si antisymmetric stretch,1000,1250,very strong,,about 1080-1100 in silica,M
        "silicate, silica",Si-O-Si symmetric stretch,780,820,medium,,,M
        "silicate, silica",O-Si-O bend,440,490,strong,,,M
        sulfate,S-O stretch (nu3),1080,1140,very strong,,,M
        sulfate,O-S-O bend (nu4),600,680,medium,,,M
        nitrate,N-O stretch,1340,1400,very strong,,sharp; residue of nitrate salts,M
        nitrate,out-of-plane bend,810,840,weak to medium,,sharp,M
        ammonium,N-H stretch,3030,3300,very strong,yes,broad,M
        metal-oxygen lattice modes,stretch,400,750,strong,yes,broad and overlapping: no metal can be named from it,M
        sulfonate,S=O stretch,1120,1230,strong,,second band 1030-1070,M
        """;
}
