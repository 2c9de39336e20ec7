namespace Holdfast.Speciation;

/// <summary>
/// Hydrolysis constants at 25 °C and zero ionic strength: p M + q H2O = Mp(OH)q + q H+. Each row says where it is from and whether it was seen; those
/// from memory are to be compared with the named review before they are relied on.
/// </summary>
/// <remarks>Preferred: IUPAC reviews (Cu, Pb, Cd, Zn, Hg), NEA (Ni), Brown and Ekberg (Al), Baes and Mesmer (Co, Mn, Fe, Cr, Ag). The others are a second opinion.</remarks>
internal static class HydrolysisTable
{
    /// <summary>The table, comma-separated with a header row; u is a standard uncertainty of the lg.</summary>
    public const string Table =
        """
        metal,charge,p,q,lg_star_beta,u,source,status,preferred
        Cu,2,1,1,-7.95,0.16,"Powell et al. 2007, Pure Appl. Chem. 79, 895 (IUPAC)",from memory,yes
        Cu,2,1,2,-16.2,0.2,"Powell et al. 2007, Pure Appl. Chem. 79, 895 (IUPAC)",from memory,yes
        Cu,2,1,3,-26.6,0.09,"Powell et al. 2007, Pure Appl. Chem. 79, 895 (IUPAC)",from memory,yes
        Cu,2,1,4,-39.74,0.18,"Powell et al. 2007, Pure Appl. Chem. 79, 895 (IUPAC)",from memory,yes
        Cu,2,2,1,-6.4,0.12,"Powell et al. 2007, Pure Appl. Chem. 79, 895 (IUPAC)",from memory,yes
        Cu,2,2,2,-10.43,0.07,"Powell et al. 2007, Pure Appl. Chem. 79, 895 (IUPAC)",from memory,yes
        Cu,2,3,4,-21.1,0.2,"Powell et al. 2007, Pure Appl. Chem. 79, 895 (IUPAC)",from memory,yes
        Pb,2,1,1,-7.46,0.06,"Powell et al. 2009, Pure Appl. Chem. 81, 2425 (IUPAC)",from memory,yes
        Pb,2,1,2,-16.94,0.09,"Powell et al. 2009, Pure Appl. Chem. 81, 2425 (IUPAC)",from memory,yes
        Pb,2,1,3,-28.03,0.06,"Powell et al. 2009, Pure Appl. Chem. 81, 2425 (IUPAC)",from memory,yes
        Pb,2,3,4,-23.01,0.07,"Powell et al. 2009, Pure Appl. Chem. 81, 2425 (IUPAC)",from memory,yes
        Pb,2,4,4,-20.57,0.06,"Powell et al. 2009, Pure Appl. Chem. 81, 2425 (IUPAC)",from memory,yes
        Pb,2,6,8,-42.89,0.07,"Powell et al. 2009, Pure Appl. Chem. 81, 2425 (IUPAC)",from memory,yes
        Cd,2,1,1,-9.81,0.1,"Powell et al. 2011, Pure Appl. Chem. 83, 1163 (IUPAC)",from memory,yes
        Cd,2,1,2,-20.19,0.13,"Powell et al. 2011, Pure Appl. Chem. 83, 1163 (IUPAC)",from memory,yes
        Cd,2,1,3,-33.5,0.5,"Powell et al. 2011, Pure Appl. Chem. 83, 1163 (IUPAC)",from memory,yes
        Cd,2,1,4,-47.28,0.15,"Powell et al. 2011, Pure Appl. Chem. 83, 1163 (IUPAC)",from memory,yes
        Cd,2,2,1,-8.73,0.3,"Powell et al. 2011, Pure Appl. Chem. 83, 1163 (IUPAC)",from memory,yes
        Zn,2,1,1,-8.96,0.05,"Powell et al. 2013, Pure Appl. Chem. 85, 2249 (IUPAC)",from memory,yes
        Zn,2,1,2,-17.82,0.08,"Powell et al. 2013, Pure Appl. Chem. 85, 2249 (IUPAC)",from memory,yes
        Zn,2,1,3,-28.05,0.05,"Powell et al. 2013, Pure Appl. Chem. 85, 2249 (IUPAC)",from memory,yes
        Zn,2,1,4,-40.41,0.12,"Powell et al. 2013, Pure Appl. Chem. 85, 2249 (IUPAC)",from memory,yes
        Zn,2,2,1,-7.9,0.2,"Powell et al. 2013, Pure Appl. Chem. 85, 2249 (IUPAC)",from memory,yes
        Hg,2,1,1,-3.4,0.08,"Powell et al. 2005, Pure Appl. Chem. 77, 739 (IUPAC)",from memory,yes
        Hg,2,1,2,-5.98,0.06,"Powell et al. 2005, Pure Appl. Chem. 77, 739 (IUPAC)",from memory,yes
        Hg,2,1,3,-21.1,0.3,"Powell et al. 2005, Pure Appl. Chem. 77, 739 (IUPAC)",from memory,yes
        Ni,2,1,1,-9.54,0.14,"Gamsjager et al. 2005, NEA Chemical Thermodynamics 6",from memory,yes
        Ni,2,1,3,-29.2,1.7,"Gamsjager et al. 2005, NEA Chemical Thermodynamics 6",from memory,yes
        Ni,2,2,1,-10.6,1.0,"Gamsjager et al. 2005, NEA Chemical Thermodynamics 6",from memory,yes
        Ni,2,4,4,-27.52,0.15,"Gamsjager et al. 2005, NEA Chemical Thermodynamics 6",from memory,yes
        Al,3,1,1,-4.98,0.02,Brown & Ekberg 2016,checked (encyclopaedia table quoting the book),yes
        Al,3,1,2,-10.63,0.09,Brown & Ekberg 2016,checked (encyclopaedia table quoting the book),yes
        Al,3,1,3,-15.66,0.23,Brown & Ekberg 2016,checked (encyclopaedia table quoting the book),yes
        Al,3,1,4,-22.91,0.1,Brown & Ekberg 2016,checked (encyclopaedia table quoting the book),yes
        Al,3,2,2,-7.62,0.11,Brown & Ekberg 2016,checked (encyclopaedia table quoting the book),yes
        Al,3,3,4,-14.06,0.22,Brown & Ekberg 2016,checked (encyclopaedia table quoting the book),yes
        Cu,2,1,1,-8.0,0.3,Baes & Mesmer 1976,from memory,no
        Cu,2,1,4,-39.6,0.3,Baes & Mesmer 1976,from memory,no
        Cu,2,2,2,-10.36,0.05,Baes & Mesmer 1976,from memory,no
        Pb,2,1,1,-7.71,0.1,Baes & Mesmer 1976,from memory,no
        Pb,2,1,2,-17.12,0.1,Baes & Mesmer 1976,from memory,no
        Pb,2,1,3,-28.06,0.05,Baes & Mesmer 1976,from memory,no
        Pb,2,2,1,-6.36,0.1,Baes & Mesmer 1976,from memory,no
        Pb,2,3,4,-23.88,0.1,Baes & Mesmer 1976,from memory,no
        Pb,2,4,4,-20.88,0.1,Baes & Mesmer 1976,from memory,no
        Pb,2,6,8,-43.61,0.1,Baes & Mesmer 1976,from memory,no
        Cd,2,1,1,-10.08,0.1,Baes & Mesmer 1976,from memory,no
        Cd,2,1,2,-20.35,0.2,Baes & Mesmer 1976,from memory,no
        Cd,2,1,4,-47.35,0.3,Baes & Mesmer 1976,from memory,no
        Cd,2,2,1,-9.39,0.1,Baes & Mesmer 1976,from memory,no
        Cd,2,4,4,-32.85,0.1,Baes & Mesmer 1976,from memory,no
        Zn,2,1,1,-8.96,0.05,Baes & Mesmer 1976,from memory,no
        Zn,2,1,2,-16.9,0.5,Baes & Mesmer 1976,from memory,no
        Zn,2,1,3,-28.4,0.3,Baes & Mesmer 1976,from memory,no
        Zn,2,1,4,-41.2,0.3,Baes & Mesmer 1976,from memory,no
        Zn,2,2,1,-9.0,0.1,Baes & Mesmer 1976,from memory,no
        Ni,2,1,1,-9.86,0.03,Baes & Mesmer 1976,from memory,no
        Ni,2,1,2,-19.0,1,Baes & Mesmer 1976,from memory,no
        Ni,2,1,3,-30.0,0.5,Baes & Mesmer 1976,from memory,no
        Ni,2,2,1,-10.7,0.5,Baes & Mesmer 1976,from memory,no
        Ni,2,4,4,-27.74,0.03,Baes & Mesmer 1976,from memory,no
        Co,2,1,1,-9.65,0.05,Baes & Mesmer 1976,from memory,yes
        Co,2,1,2,-18.8,0.5,Baes & Mesmer 1976,from memory,yes
        Co,2,1,3,-31.5,0.5,Baes & Mesmer 1976,from memory,yes
        Co,2,1,4,-46.3,0.5,Baes & Mesmer 1976,from memory,yes
        Co,2,2,1,-11.2,0.5,Baes & Mesmer 1976,from memory,yes
        Co,2,4,4,-30.53,0.05,Baes & Mesmer 1976,from memory,yes
        Mn,2,1,1,-10.59,0.04,Baes & Mesmer 1976,from memory,yes
        Mn,2,1,4,-48.3,0.5,Baes & Mesmer 1976,from memory,yes
        Mn,2,2,1,-10.56,0.1,Baes & Mesmer 1976,from memory,yes
        Mn,2,2,3,-23.9,0.1,Baes & Mesmer 1976,from memory,yes
        Fe(II),2,1,1,-9.5,0.1,Baes & Mesmer 1976,from memory,yes
        Fe(II),2,1,2,-20.6,1,Baes & Mesmer 1976,from memory,yes
        Fe(II),2,1,3,-31.0,1,Baes & Mesmer 1976,from memory,yes
        Fe(II),2,1,4,-46.0,1,Baes & Mesmer 1976,from memory,yes
        Fe(III),3,1,1,-2.19,0.02,Baes & Mesmer 1976,from memory,yes
        Fe(III),3,1,2,-5.67,0.1,Baes & Mesmer 1976,from memory,yes
        Fe(III),3,1,4,-21.6,0.2,Baes & Mesmer 1976,from memory,yes
        Fe(III),3,2,2,-2.95,0.05,Baes & Mesmer 1976,from memory,yes
        Fe(III),3,3,4,-6.3,0.1,Baes & Mesmer 1976,from memory,yes
        Cr(III),3,1,1,-4.0,0.2,Baes & Mesmer 1976,from memory,yes
        Cr(III),3,1,2,-9.7,0.5,Baes & Mesmer 1976,from memory,yes
        Cr(III),3,1,3,-18.0,1,Baes & Mesmer 1976,from memory,yes
        Cr(III),3,1,4,-27.4,0.3,Baes & Mesmer 1976,from memory,yes
        Cr(III),3,2,2,-5.06,0.2,Baes & Mesmer 1976,from memory,yes
        Cr(III),3,3,4,-8.15,0.3,Baes & Mesmer 1976,from memory,yes
        Hg,2,1,1,-3.4,0.05,Baes & Mesmer 1976,from memory,no
        Hg,2,1,2,-6.17,0.05,Baes & Mesmer 1976,from memory,no
        Hg,2,1,3,-21.1,0.3,Baes & Mesmer 1976,from memory,no
        Ag,1,1,1,-12.0,0.3,Baes & Mesmer 1976,from memory,yes
        Ag,1,1,2,-24.0,0.1,Baes & Mesmer 1976,from memory,yes
        Al,3,1,1,-4.97,0.02,Baes & Mesmer 1976,checked (encyclopaedia table quoting the book),no
        Al,3,1,2,-9.3,0.1,Baes & Mesmer 1976,checked (encyclopaedia table quoting the book),no
        Al,3,1,3,-15.0,0.2,Baes & Mesmer 1976,checked (encyclopaedia table quoting the book),no
        Al,3,1,4,-23.0,0.1,Baes & Mesmer 1976,checked (encyclopaedia table quoting the book),no
        Al,3,2,2,-7.7,0.1,Baes & Mesmer 1976,checked (encyclopaedia table quoting the book),no
        Al,3,3,4,-13.94,0.1,Baes & Mesmer 1976,checked (encyclopaedia table quoting the book),no
        Al,3,13,32,-98.73,0.1,Baes & Mesmer 1976,checked (encyclopaedia table quoting the book),no
        """;
}
