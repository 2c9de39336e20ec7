namespace Holdfast.Speciation;

/// <summary>
/// Solids at 25 °C and zero ionic strength: solid + n H+ = M + water (+ carbonate). Aged solids form in days to years, fresh ones in minutes; the two
/// differ by orders. Each row says where it is from and whether it was seen.
/// </summary>
internal static class SolidTable
{
    /// <summary>The table, comma-separated with a header row; u is a standard uncertainty of the lg.</summary>
    public const string Table =
        """
        metal,solid,kind,n_M,n_H,n_CO3,lg_star_Ks,u,source,status
        Cu,CuO tenorite,aged,1,2,0,7.64,0.06,Powell et al. 2007 (IUPAC),from memory
        Cu,Cu(OH)2 fresh,fresh,1,2,0,8.67,0.05,Powell et al. 2007 (IUPAC); Martell & Smith pKs 19.32 gives 8.68,value from memory; 8.68 checked (open textbook appendix quoting Martell & Smith)
        Cu,Cu2(OH)2CO3 malachite,carbonate,2,2,1,-5.16,0.08,Powell et al. 2007 (IUPAC): lg Ks -33.16,from memory
        Pb,PbO red,aged,1,2,0,12.62,0.07,Powell et al. 2009 (IUPAC),from memory
        Pb,PbO yellow,fresh,1,2,0,12.9,0.08,Powell et al. 2009 (IUPAC); Baes & Mesmer 12.91,from memory
        Pb,PbCO3 cerussite,carbonate,1,0,1,-13.18,0.07,Powell et al. 2009 (IUPAC); Martell & Smith -13.13,value from memory; -13.13 checked (open textbook appendix quoting Martell & Smith)
        Pb,Pb3(CO3)2(OH)2 hydrocerussite,carbonate,3,2,2,-17.64,0.16,Powell et al. 2009 (IUPAC),from memory
        Cd,Cd(OH)2 beta,aged,1,2,0,13.72,0.12,Powell et al. 2011 (IUPAC); Baes & Mesmer 13.65,from memory
        Cd,CdCO3 otavite,carbonate,1,0,1,-12.06,0.04,Powell et al. 2011 (IUPAC); the older Martell & Smith value -13.74 is 1.7 units away,value from memory; -13.74 checked (open textbook appendix quoting Martell & Smith)
        Zn,ZnO zincite,aged,1,2,0,11.12,0.05,Powell et al. 2013 (IUPAC); Baes & Mesmer 11.14,from memory
        Zn,Zn(OH)2 epsilon,intermediate,1,2,0,11.38,0.2,Powell et al. 2013 (IUPAC),from memory
        Zn,Zn(OH)2 amorphous,fresh,1,2,0,12.45,0.2,Baes & Mesmer 1976; Martell & Smith pKs 15.52 gives 12.48,from memory
        Zn,ZnCO3 smithsonite,carbonate,1,0,1,-10.0,0.5,"Martell & Smith 1976, Critical Stability Constants 4",checked (open textbook appendix quoting Martell & Smith)
        Ni,Ni(OH)2 beta,aged,1,2,0,11.02,0.2,Gamsjager et al. 2005 (NEA); Baes & Mesmer 10.8,from memory
        Ni,Ni(OH)2 fresh,fresh,1,2,0,12.8,0.3,"Martell & Smith 1976, Critical Stability Constants 4: pKs 15.2",checked (open textbook appendix quoting Martell & Smith)
        Ni,"NiCO3 (hydrated, fresh)",carbonate,1,0,1,-6.87,0.5,"Martell & Smith 1976, Critical Stability Constants 4",checked (open textbook appendix quoting Martell & Smith)
        Co,Co(OH)2 aged,aged,1,2,0,12.3,0.2,Baes & Mesmer 1976,from memory
        Co,Co(OH)2 fresh,fresh,1,2,0,13.1,0.3,"Martell & Smith 1976, Critical Stability Constants 4: pKs 14.9",checked (open textbook appendix quoting Martell & Smith)
        Co,CoCO3,carbonate,1,0,1,-9.98,0.3,"Martell & Smith 1976, Critical Stability Constants 4",checked (open textbook appendix quoting Martell & Smith)
        Mn,Mn(OH)2,fresh,1,2,0,15.2,0.2,"Martell & Smith 1976, Critical Stability Constants 4: pKs 12.8; Baes & Mesmer 15.2",checked (open textbook appendix quoting Martell & Smith)
        Mn,MnCO3,carbonate,1,0,1,-9.3,0.5,"Martell & Smith 1976, Critical Stability Constants 4",checked (open textbook appendix quoting Martell & Smith)
        Fe(II),Fe(OH)2,fresh,1,2,0,12.9,0.3,"Martell & Smith 1976, Critical Stability Constants 4: pKs 15.1; Baes & Mesmer 12.85",checked (open textbook appendix quoting Martell & Smith)
        Fe(II),FeCO3 siderite,carbonate,1,0,1,-10.68,0.2,"Martell & Smith 1976, Critical Stability Constants 4",checked (open textbook appendix quoting Martell & Smith)
        Fe(III),FeOOH goethite,aged,1,3,0,0.5,0.8,Baes & Mesmer 1976,from memory
        Fe(III),Fe(OH)3 amorphous,fresh,1,3,0,3.2,1.0,"Martell & Smith 1976, Critical Stability Constants 4: pKs 38.8; other amorphous values 2.5 to 5",checked (open textbook appendix quoting Martell & Smith)
        Cr(III),Cr(OH)3,aged,1,3,0,12.0,1.5,Baes & Mesmer 1976; fresh-solid studies near 9.4 exist: treat as uncertain,from memory
        Al,Al(OH)3 gibbsite,aged,1,3,0,7.75,0.08,Brown & Ekberg 2016; Baes & Mesmer 8.5,checked (encyclopaedia table quoting the book)
        Al,Al(OH)3 amorphous,fresh,1,3,0,10.0,0.7,between two textbook tables: Ks 1.3e-33 (9.1) and 2e-32 (10.3),checked (two open textbook appendices)
        Hg,HgO,aged,1,2,0,2.37,0.08,Powell et al. 2005 (IUPAC); Baes & Mesmer 2.56,from memory
        Ag,Ag2O (per Ag),aged,1,1,0,6.29,0.05,Baes & Mesmer 1976,from memory
        Ag,Ag2CO3,carbonate,2,0,1,-11.09,0.1,"Martell & Smith 1976, Critical Stability Constants 4",checked (open textbook appendix quoting Martell & Smith)
        """;
}
